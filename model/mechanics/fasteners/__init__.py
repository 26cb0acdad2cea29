"""What fasteners hold, in wood: screws drawn out or pushed sideways, bolts, nuts, glue lines.

Kinds of strength, never mixed: `Ultimate` is what a test breaks at, `Yield` where it begins to
give, `Design` what may be used, for the normal (ten-year) load duration. Each function gives one
of them and says so in its name, and the type checker keeps them apart. Lengths mm, forces N,
stresses MPa; `gravity` is the specific gravity G of the wood: oven-dry mass on volume at 12 %
moisture.
"""
