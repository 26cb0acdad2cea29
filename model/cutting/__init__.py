"""How plain pieces are cut from plain sheets, boards and lengths. Knows no beds.

A `Task` holds the pieces and the stock of one material in one thickness; `model.cutting.plan`
answers it with a `Plan`: every sheet and board as a tree of cuts, and a bound that no plan beats.
"""
