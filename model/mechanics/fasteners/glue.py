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
# Shear across the grain (rolling) as a share of that along it: 18 to 28 % in the few tests made.
# Source: Wood Handbook 2021, chapter 5, from memory
ROLLING = 0.23


def cheek_shear(weaker: DesignStress, *, is_solid: bool) -> DesignStress:
    """What glue may bear between boards whose grains cross, as a tenon's cheeks and its mortise's:
    whichever way it is pushed, one of the two is sheared across its grain. A sheet's figure is
    already that of its crossed layers.
    """
    above_zero(allowable_shear=weaker)
    return DesignStress(weaker * ROLLING) if is_solid else weaker


def hole_across(weaker: DesignStress) -> DesignStress:
    """What the wall of a hole across the grain may bear in shear: round the hole from along the
    grain to rolling, their mean. Tests of dowelled frames gave two thirds of the shear along the
    grain (furniture research, from memory).
    """
    above_zero(allowable_shear=weaker)
    return DesignStress(weaker * (1 + ROLLING) / 2)


def design_glue_shear(weaker: DesignStress, area: Mm2, *, in_end_grain: bool = False) -> Design:
    """What a glue line may bear in shear, by the allowable shear of its weaker wood."""
    above_zero(allowable_shear=weaker, glued_area=area)
    return Design(END_GRAIN if in_end_grain else weaker * area)


def design_dowel_withdrawal(weaker: DesignStress, diameter: Mm, depth: Mm) -> Design:
    """What a glued dowel may bear in withdrawal: its skin, `depth` deep, in shear."""
    above_zero(allowable_shear=weaker, dowel_diameter=diameter, depth=depth)
    return Design(weaker * pi * diameter * depth)
