"""A door, a corner, a flight of stairs, a landing: what stands in the way of what is carried in."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Any, ClassVar, cast

from model.mechanics.carry import Floats, Passage, round_corner, through_door, up_stair
from model.units import Mm

_WIDEST: Mm = 6000.0  # nobody's way is wider: what needs more does not go through at all
_FINE: Mm = 0.5  # a tape reads no finer on a door


@dataclass(frozen=True, kw_only=True)
class Door:
    """A clear opening, upright."""

    passed: ClassVar[str] = "through the door"
    grows: ClassVar[tuple[tuple[str, str], ...]] = (
        ("width", "a clear width"),
        ("height", "a clear height"),
    )
    width: Mm
    height: Mm

    def passage(self, sizes: Floats) -> Passage:
        """See `through_door`."""
        return through_door(sizes, self.width, self.height)

    def told(self) -> str:
        """As it stands in a sentence."""
        return f"the door of {self.width:.0f} mm by {self.height:.0f} mm"


@dataclass(frozen=True, kw_only=True)
class Corner:
    """A square corner between two clear widths, under a ceiling."""

    passed: ClassVar[str] = "round the corner"
    grows: ClassVar[tuple[tuple[str, str], ...]] = (
        ("after", "a clear width after it"),
        ("before", "a clear width before it"),
        ("ceiling", "a ceiling"),
    )
    before: Mm
    after: Mm
    ceiling: Mm

    def passage(self, sizes: Floats) -> Passage:
        """See `round_corner`."""
        return round_corner(sizes, self.before, self.after, self.ceiling)

    def told(self) -> str:
        """As it stands in a sentence."""
        return f"the corner from {self.before:.0f} mm into {self.after:.0f} mm"


@dataclass(frozen=True, kw_only=True)
class Flight:
    """A straight flight of stairs."""

    passed: ClassVar[str] = "up the stairs"
    grows: ClassVar[tuple[tuple[str, str], ...]] = (
        ("headroom", "a headroom"),
        ("width", "a clear width"),
    )
    width: Mm
    headroom: Mm
    riser: Mm
    tread: Mm

    def passage(self, sizes: Floats) -> Passage:
        """See `up_stair`."""
        return up_stair(sizes, self.width, self.headroom, self.riser, self.tread)

    def told(self) -> str:
        """As it stands in a sentence."""
        return f"the stairs, {self.width:.0f} mm wide under {self.headroom:.0f} mm"


@dataclass(frozen=True, kw_only=True)
class Landing:
    """A square turn of the stairs on a landing; its ceiling is taken as low as over the steps."""

    passed: ClassVar[str] = "round the landing"
    grows: ClassVar[tuple[tuple[str, str], ...]] = (
        ("depth", "a landing depth"),
        ("headroom", "a ceiling"),
    )
    width: Mm
    depth: Mm
    headroom: Mm

    def passage(self, sizes: Floats) -> Passage:
        """See `round_corner`."""
        return round_corner(sizes, self.width, self.depth, self.headroom)

    def told(self) -> str:
        """As it stands in a sentence."""
        return f"the landing of {self.width:.0f} mm by {self.depth:.0f} mm"


Obstacle = Door | Corner | Flight | Landing


def would_do(obstacle: Obstacle, sizes: Floats) -> Iterator[tuple[str, int]]:
    """What a thing (1, 3) needs of an obstacle, one size at a time: in words, and how many mm.

    Sizes that would not do it alone are left out.
    """
    for name, words in obstacle.grows:
        low, high = float(getattr(obstacle, name)), _WIDEST
        if not _passes(obstacle, name, high, sizes):
            continue
        while high - low > _FINE:
            middle = (low + high) / 2
            passes = _passes(obstacle, name, middle, sizes)
            low, high = (low, middle) if passes else (middle, high)
        # To the whole millimetre, and such that it does pass.
        need = math.floor(high)
        yield words, need if _passes(obstacle, name, need, sizes) else need + 1


def _passes(obstacle: Obstacle, name: str, size: Mm, sizes: Floats) -> bool:
    """Whether a thing passes once this one size of the obstacle is changed."""
    changed = replace(cast(Any, obstacle), **{name: size})
    return float(changed.passage(sizes).room.min()) >= 0
