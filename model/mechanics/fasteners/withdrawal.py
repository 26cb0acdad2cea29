"""What a screw bears when it is drawn straight out of side grain.

Out of end grain nothing is allowed for a wood screw, and three quarters for a lag screw.
"""

from __future__ import annotations

import math

from model.mechanics.fasteners.strengths import (
    INCH,
    MPA_PER_PSI,
    N_PER_LBF,
    Design,
    Ultimate,
    above_zero,
    wood_gravity,
)
from model.units import Mm

THREAD_SHARE = 2 / 3  # of a wood screw's length; Source: NDS 2018, appendix L, from memory
END_GRAIN_WOOD_SCREW = 0.0  # Source: NDS 2018, 12.2.2.3, from memory: not allowed
END_GRAIN_LAG_SCREW = 0.75  # Source: NDS 2018, 12.5.2.1, from memory


def ultimate_screw_withdrawal(gravity: float, shank: Mm, thread: Mm) -> Ultimate:
    """Force that draws a wood screw out of side grain: 108.25 G^2 D L.

    `thread` is the threaded length in the member that holds the point.
    Source: Wood Handbook 2021 (FPL-GTR-282), equation 8-10
    """
    _checked(gravity, shank, thread)
    return Ultimate(108.25 * gravity**2 * shank * thread)


def ultimate_lag_withdrawal(gravity: float, shank: Mm, thread: Mm) -> Ultimate:
    """Force that draws a lag screw out of side grain: 125.4 G^1.5 D^0.75 L.

    Source: Wood Handbook 2021 (FPL-GTR-282), equation 8-14
    """
    _checked(gravity, shank, thread)
    return Ultimate(125.4 * gravity**1.5 * shank**0.75 * thread)


def design_screw_withdrawal(
    gravity: float, shank: Mm, thread: Mm, *, in_end_grain: bool = False
) -> Design:
    """What a wood screw may bear in withdrawal: 2850 G^2 D for each inch of thread, in pounds.

    Source: NDS 2018 (National Design Specification for Wood Construction), equation 12.2-2, from
    memory
    """
    _checked(gravity, shank, thread)
    per_inch = 2850 * gravity**2 * (shank / INCH)
    share = END_GRAIN_WOOD_SCREW if in_end_grain else 1.0
    return Design(per_inch * N_PER_LBF * (thread / INCH) * share)


def design_lag_withdrawal(
    gravity: float, shank: Mm, thread: Mm, *, in_end_grain: bool = False
) -> Design:
    """What a lag screw may bear in withdrawal: 1800 G^1.5 D^0.75 for each inch of thread.

    Source: NDS 2018, equation 12.2-1; checked on cells of its table 12.2A
    """
    _checked(gravity, shank, thread)
    per_inch = 1800 * gravity**1.5 * (shank / INCH) ** 0.75
    share = END_GRAIN_LAG_SCREW if in_end_grain else 1.0
    return Design(per_inch * N_PER_LBF * (thread / INCH) * share)


def design_head_pull_through(gravity: float, head: Mm, side: Mm) -> Design:
    """What the wood under a head of diameter `head` may bear before it is pulled through a side
    member `side` thick: 690 pi D G^2 t, and no more for t above 2.5 D (lbf/in2).

    Left out: a cone under the head. Source: NDS 2018, equations 12.2-6a and b, from memory
    """
    wood_gravity(gravity)
    above_zero(head_diameter=head, side_member=side)
    thick = min(side, 2.5 * head)
    return Design(690 * MPA_PER_PSI * math.pi * head * gravity**2 * thick)


def threaded_in(bite: Mm, length: Mm) -> Mm:
    """How much of a wood screw's thread lies in the member that holds its point, where `bite` of
    its `length` does: no more than two thirds of the screw are threaded.
    """
    return min(bite, length * THREAD_SHARE)


def _checked(gravity: float, shank: Mm, thread: Mm) -> None:
    wood_gravity(gravity)
    above_zero(shank_diameter=shank, threaded_length=thread)
