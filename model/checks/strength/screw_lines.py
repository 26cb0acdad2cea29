"""Screws in a line through steel into wood: what each bears, and how many would do."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache

from model.mechanics.duration import LoadTime, duration_factor
from model.mechanics.fasteners.dowel_bearing import STEEL_PLATE
from model.mechanics.fasteners.lateral import ScrewJoint, design_screw_lateral
from model.mechanics.fasteners.strengths import Design
from model.mechanics.fasteners.together import screws_in_line
from model.units import Count, Mm, Newton

MOST_SCREWS = 12


@lru_cache(maxsize=512)
def steel_to_wood(
    shank: Mm, bite: Mm, plate: Mm, gravity: float, time: LoadTime, *, in_end_grain: bool = False
) -> Design:
    """What a screw through a steel plate bears sideways for that time; nothing by its mere tip."""
    if bite <= shank:
        return Design(0.0)
    joint = ScrewJoint(
        shank=shank, side=plate, side_bearing=STEEL_PLATE, main_gravity=gravity, bite=bite
    )
    held = design_screw_lateral(joint, in_end_grain=in_end_grain)
    return Design(held * duration_factor(time, "solid"))


def evenly(first: Mm, last: Mm, count: Count) -> tuple[Mm, ...]:
    """Places of screws spread evenly from the first to the last."""
    return tuple(first + (last - first) * i / (count - 1) for i in range(count))


def enough_screws(
    across: Newton, moment: float, places: Sequence[Mm], allowed: Design
) -> Count | None:
    """The least number of screws, spread from the first place to the last, that would bear this;
    None where none up to a dozen would. The moment is about the middle of the places.
    """
    if allowed <= 0:
        return None
    for count in range(max(len(places), 2), MOST_SCREWS + 1):
        forces = screws_in_line(across, 0.0, moment, evenly(places[0], places[-1], count))
        if max(forces) <= allowed:
            return count
    return None
