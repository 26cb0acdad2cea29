"""Dimensions, notes and marks around a view: in rows outside it, clear of each other."""
