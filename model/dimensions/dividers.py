"""Dividers where bearers meet no frame, and their legs. Read for left, right and foot."""

import math

from model.rules import rule
from model.units import Mm, Places, ShopGrid

LEAST_LEG: Mm = 1.0  # a shorter one is no leg: the divider then stands on the floor itself


@rule
def divider_height(bearer_rise: Mm, bracket_drop: Mm, bearer_top: Mm, grid: ShopGrid) -> Mm:
    """A divider is as high as the bearers, and lower by the brackets under their ends."""
    return min(grid.up(bearer_rise + bracket_drop), bearer_top)


@rule
def divider_bottom(bearer_top: Mm, divider_height: Mm) -> Mm:
    """The divider's lower edge, and so the length of its legs."""
    return bearer_top - divider_height


@rule
def divider_leg_width(bearer_height: Mm) -> Mm:
    """Legs under a divider are cut from the bearers' stock."""
    return bearer_height


@rule
def divider_leg_places(
    needs_divider: bool,
    divider_bottom: Mm,
    divider_from: Mm,
    divider_length: Mm,
    divider_leg_width: Mm,
    bearer_leg_span: Mm,
) -> Places:
    """Legs stand at both ends of a divider, and between so that it cannot sag."""
    if not needs_divider or divider_bottom < LEAST_LEG:
        return ()
    run = divider_length - divider_leg_width
    gaps = max(1, math.ceil(run / bearer_leg_span - 1e-9))
    return tuple(divider_from + run * i / gaps for i in range(gaps + 1))
