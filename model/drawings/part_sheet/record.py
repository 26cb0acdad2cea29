"""The work in a part as records: what is cut and drilled, gathered as a maker does it."""

from __future__ import annotations

from typing import Literal, NamedTuple

from model.part import Face, Point
from model.units import Mm

HAIR: Mm = 1e-4

Span = tuple[Mm, Mm]


class Spot(NamedTuple):
    """Where one of several alike cuts or holes lies: the box that it fills, in the part's axes."""

    low: Point
    high: Point

    @property
    def middle(self) -> Point:
        x, y, z = ((a + b) / 2 for a, b in zip(self.low, self.high, strict=True))
        return (x, y, z)

    def extent(self, axis: int) -> Mm:
        return self.high[axis] - self.low[axis]


class Group(NamedTuple):
    """Alike cuts or holes in one face; `words` tell kind and sizes, `count` how many there are.

    `shape`: a `slot` is let in between walls, a `step` runs along a corner, a `hole` is round. The
    places of holes are their centres, of slots their near walls. `spots` lie where they begin at
    the face.
    """

    shape: Literal["slot", "step", "hole"]
    kind: str
    face: Face
    words: str
    spots: tuple[Spot, ...]

    def places(self, axis: int, size: Point) -> list[Mm]:
        """From the low side of an axis to each of them; none where they begin at a side of it."""
        found = set()
        for spot in self.spots:
            low, high = spot.low[axis], spot.high[axis]
            if self.shape == "hole":
                found.add(round((low + high) / 2, 6))
            elif low > HAIR and high < size[axis] - HAIR:
                found.add(round(low, 6))
        return sorted(found)

    def is_through(self, axis: int, size: Point) -> bool:
        """Whether they run from side to side."""
        spot = self.spots[0]
        return spot.low[axis] <= HAIR and spot.high[axis] >= size[axis] - HAIR


class Stub(NamedTuple):
    """What cheeks and shoulders leave of an end or an edge: a tenon or a tongue."""

    kind: Literal["tenon", "tongue"]
    face: Face
    length: Mm
    width: Span  # on the width of the part, or its length for a tongue along an edge
    thickness: Span


class PartWork(NamedTuple):
    """All of it."""

    groups: tuple[Group, ...]
    stubs: tuple[Stub, ...]


def steps(mm: Mm) -> int:
    """Sizes are alike within about 3 µm; the odd factor keeps 1/64 in off the edge of a step."""
    return round(mm * 317.159)


def counted(count: int, words: str) -> str:
    """`2 × bolt hole`; one is not counted."""
    return f"{count} × {words}" if count > 1 else words
