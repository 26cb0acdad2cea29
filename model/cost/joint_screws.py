"""Screws of joints that say "screwed" and whose screws nobody has placed: counted by practice.

The pieces themselves tell how long each joint is and how thick what is screwed; how many screws
that takes is common practice, no source, and is said so on the buying list.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import NamedTuple

from model.bed import Bed
from model.cost.tables import JointFasteners, joint_fasteners
from model.dimensions.fasteners import COVER, Fastener, longest_screw
from model.errors import CannotBuild
from model.materials import pocket_screw_for
from model.units import Mm

_GRIP = 3.0  # a screw is no longer than three times what it holds; common practice, no source
_LONGEST: Mm = 63.5  # 2 1/2 in, slanting, where a piece is too thick to be screwed through
_PIN: Mm = 25.4  # 1 in: pins through thin panels; common practice, no source
_UNDER_BACK = "groove, or screwed up into the back"  # screws only with the bottom under the back


@dataclass(frozen=True, kw_only=True)
class Driven:
    """Screws or pins alike: `kind` is "wood screw", "pocket screw" or "pin"; `gauge` of the first.

    `placed` have a place in the bed, `reckoned` are counted by common practice; `through` names the
    parts that they are driven through.
    """

    kind: str
    gauge: str
    length: Mm
    placed: int = 0
    reckoned: int = 0
    through: tuple[str, ...] = ()

    @property
    def count(self) -> int:
        """All of them."""
        return self.placed + self.reckoned


class Reckoned(NamedTuple):
    """What one joint takes: piece `one` is held by piece `other`."""

    one: int
    other: int
    joint: str
    driven: Driven


def reckoned(bed: Bed) -> Iterator[Driven]:
    """What all such joints of the bed take."""
    return (joint.driven for joint in reckoned_joints(bed))


def reckoned_joints(bed: Bed) -> Iterator[Reckoned]:
    """What each such joint of the bed takes, in the order of its joints, each pair once."""
    holding, rows = bed.proof.holding, joint_fasteners()
    seen: set[tuple[int, int]] = set()
    met = zip(holding.one.tolist(), holding.other.tolist(), holding.hold.tolist(), strict=True)
    for one, other, hold in met:
        joint = holding.holds[hold].joint
        pair = (min(one, other), max(one, other))
        if joint in rows and pair not in seen and _has_none(bed, one) and _is_meant(bed, joint):
            seen.add(pair)
            found = _driven(bed, one, other, rows[joint])
            yield Reckoned(one, other, joint, replace(found, through=(bed.pieces.form(one).name,)))


def _has_none(bed: Bed, piece: int) -> bool:
    return not bed.pieces.form(piece).screws


def _is_meant(bed: Bed, joint: str) -> bool:
    return joint != _UNDER_BACK or bool(bed["bottom_fit"] == "under back")


def _driven(bed: Bed, one: int, other: int, row: JointFasteners) -> Driven:
    along, first, second = _extent(bed, one, other)
    count = max(row.least, round(along // row.apart_mm) + 1)
    if row.driven == "pin":
        return Driven(kind="pin", gauge="", length=_PIN, reckoned=count)
    if row.driven == "pocket screw":
        thickness = float(bed.pieces.form(one).thickness)
        return Driven(
            kind="pocket screw", gauge="", length=_pocket(thickness), reckoned=count
        )  # fmt: skip
    fastener = screw_through(min(first, second), max(first, second))
    return Driven(
        kind="wood screw", gauge=fastener.screw.key, length=fastener.length, reckoned=count
    )


def screw_through(held: Mm, into: Mm) -> Fastener:
    """The screw that holds a piece of a thickness to another, its point inside.

    Source: common practice, no source
    """
    return longest_screw(min(held + into - COVER, _GRIP * held, _LONGEST))


def _pocket(thickness: Mm) -> Mm:
    try:
        return pocket_screw_for(thickness)
    except CannotBuild:
        return _LONGEST


def _extent(bed: Bed, one: int, other: int) -> tuple[Mm, Mm, Mm]:
    """How long two pieces meet, and how thick each is square to where they meet."""
    low, high = bed.pieces.bounds
    shared = [
        float(min(high[one, k], high[other, k]) - max(low[one, k], low[other, k])) for k in range(3)
    ]
    across = min(range(3), key=shared.__getitem__)  # they touch here: next to nothing is shared
    along = max(shared[k] for k in range(3) if k != across)
    first, second = (float(high[k, across] - low[k, across]) for k in (one, other))
    return along, first, second
