"""The bed itself: what is chosen, what follows from it, what is made, and whether it holds.

Knows no window and no screen, so that every size can be asked for, tested and explained from the
command line, a script or a test alike. Lengths are millimetres everywhere inside.
"""
