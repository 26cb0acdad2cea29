"""Parts that stay long until they are mortised: a horn beyond the end keeps it from splitting.

A mortise near an end leaves little wood that holds against mallet and clamp. Source: common
practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from model.bed import Bed
from model.part import Face
from model.parts.marks import Mark
from model.shop.order import say
from model.shop.order.jobs import HAIR, jobs
from model.shop.order.operations import KNOWN, operation
from model.shop.order.record import Spot
from model.shop.wood_source import allowances
from model.units import Mm

NEAR_END: Mm = 20.0  # 3/4 in: less wood than that beyond a mortise splits off; common practice
SHORTEST_HORN: Mm = 12.0  # 1/2 in, squaring off; common practice
LAST = KNOWN["mortise"].rank  # what comes up to it is done while the horn is on


def horned(bed: Bed) -> frozenset[str]:
    """The solid marks that are cut to length after their mortises: one begins near the far end, and
    all that is cut before lies along them, or can be measured from the near end.
    """
    if allowances(bed.design).length < SHORTEST_HORN:
        return frozenset()
    return frozenset(mark.mark for mark in bed.marks if _is_horned(mark))


def _is_horned(mark: Mark) -> bool:
    if mark.made_of is None or mark.made_of.kind != "solid":
        return False
    size = mark.part.size
    own = [job for job in jobs(mark.part) if operation(job, size).rank <= LAST]
    if any(Face.FAR in (job.spot.face, job.spot.against) for job in own):
        return False
    ends = (_beyond(job.spot, size[0]) for job in own if job.kind == "mortise")
    return any(HAIR < room < NEAR_END for room in ends)


def _beyond(spot: Spot, length: Mm) -> Mm:
    """The wood between a slot and the far end."""
    if spot.end.axis != Face.FAR.axis:
        return length
    return spot.start if spot.end is Face.FAR else length - spot.stop


def from_near(spots: Iterable[Spot], length: Mm) -> list[Spot]:
    """The same places, all of them measured from the near end."""
    return [_turned(spot, length) if spot.end is Face.FAR else spot for spot in spots]


def _turned(spot: Spot, length: Mm) -> Spot:
    return spot._replace(end=Face.NEAR, start=length - spot.stop, stop=length - spot.start)


def with_horns(
    spots: Mapping[str, list[Spot]], rank: int, marks: Mapping[str, Mark], long: frozenset[str]
) -> dict[str, list[Spot]]:
    """The places of a setting; those of parts that are still too long, from their near end."""
    return {
        name: from_near(own, marks[name].part.size[0]) if name in long and rank <= LAST else own
        for name, own in spots.items()
    }


def squared_first(names: Iterable[str]) -> tuple[str, ...]:
    """What to do before the first place is measured on a part that is still too long."""
    told = list(names)
    if not told:
        return ()
    return (
        f"Square the near end of {say.listed(told)} and measure from there; leave the far end too "
        "long until the mortises are cut.",
    )
