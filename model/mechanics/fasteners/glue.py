"""What glue holds: long-grain faces as well as the wood, end grain not at all.

A well-made glue line on long grain is as strong as the wood beside it, in shear along the grain
(Wood Handbook 2021, FPL-GTR-282, chapter 10, from memory); so the weaker wood's allowable shear is
what it may bear. End grain butted and glued is not counted: the same chapter calls it unreliable.
"""

from __future__ import annotations

from math import pi

from model.mechanics.fasteners.strengths import Design, DesignStress, above_zero
from model.units import Mm, Mm2

END_GRAIN = 0.0


def design_glue_shear(weaker: DesignStress, area: Mm2, *, in_end_grain: bool = False) -> Design:
    """What a glue line may bear in shear, by the allowable shear of its weaker wood."""
    above_zero(allowable_shear=weaker, glued_area=area)
    return Design(END_GRAIN if in_end_grain else weaker * area)


def design_dowel_withdrawal(weaker: DesignStress, diameter: Mm, depth: Mm) -> Design:
    """What a glued dowel may bear in withdrawal: its skin, `depth` deep, in shear."""
    above_zero(allowable_shear=weaker, dowel_diameter=diameter, depth=depth)
    return Design(weaker * pi * diameter * depth)
