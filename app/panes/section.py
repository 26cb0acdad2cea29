"""Sections through the bed: the rectangles of wood that a plane cuts, as seen along its axis."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, Any, NamedTuple

import numpy as np

if TYPE_CHECKING:
    from model.bed import Bed
    from model.frame import Frame

Flat = tuple[float, float]
U, V, Z = range(3)  # along a side, into the bed, up
PLANES = {U: (V, Z), V: (U, Z), Z: (U, V)}


class Patch(NamedTuple):
    """A rectangle of one piece: lower and upper corner, mm; `is_cut`: the plane goes through."""

    low: Flat
    high: Flat
    kind: str
    piece: int
    is_cut: bool = True


class Gap(NamedTuple):
    """A numbered measure between two points, mm, and the dimension that it shows.

    `ring` is the share of the line, from its start, at which the number stands.
    """

    number: int
    start: Flat
    end: Flat
    name: str
    ring: float = 0.5


class Drawing(NamedTuple):
    """What is drawn to scale: patches from back to front, gaps on top, within two corners."""

    title: str
    patches: tuple[Patch, ...]
    gaps: tuple[Gap, ...]
    low: Flat
    high: Flat
    is_mirrored: bool = False  # larger numbers lie at the left, as one stands there


class Laid(NamedTuple):
    """All boxes of a bed in the axes of one side: (b, 3) each, mm, and whose they are."""

    lo: Any
    hi: Any
    piece: Any
    kinds: tuple[str, ...]  # of each piece

    def cut(self, axis: int, at: float) -> tuple[Patch, ...]:
        """What a plane across `axis` goes through."""
        return self._patches(axis, (self.lo[:, axis] < at) & (at < self.hi[:, axis]), True)

    def seen(self, axis: int, wanted: Callable[[int], bool]) -> tuple[Patch, ...]:
        """The outlines of chosen pieces, wherever they lie along `axis`."""
        chosen = np.array([wanted(piece) for piece in range(len(self.kinds))], bool)
        return self._patches(axis, chosen[self.piece], False)

    def bounds(self, wanted: Callable[[int], bool]) -> tuple[Any, Any]:
        """Lower and upper corner of what chosen pieces fill together."""
        rows = np.array([wanted(int(piece)) for piece in self.piece], bool)
        return self.lo[rows].min(axis=0), self.hi[rows].max(axis=0)

    def _patches(self, axis: int, rows: Any, is_cut: bool) -> tuple[Patch, ...]:
        across, up = PLANES[axis]
        return tuple(
            Patch(
                (float(lo[across]), float(lo[up])), (float(hi[across]), float(hi[up])),
                self.kinds[piece], int(piece), is_cut,
            )
            for lo, hi, piece in zip(self.lo[rows], self.hi[rows], self.piece[rows], strict=True)
        )  # fmt: skip


def laid(bed: Bed, frame: Frame, drawer: str = "") -> Laid:
    """The boxes of a bed as one who stands before a side sees them; `drawer` is drawn as such."""
    pieces = bed.pieces
    turn, origin = frame.matrix[:3, :3], frame.matrix[:3, 3]
    one, other = (pieces.lo - origin) @ turn, (pieces.hi - origin) @ turn
    groups = (pieces.groups[group] for group in pieces.group)
    parts = (pieces.parts[part] for part in pieces.part)
    kinds = tuple(_kind(part, group, drawer) for part, group in zip(parts, groups, strict=True))
    return Laid(np.minimum(one, other), np.maximum(one, other), pieces.piece, kinds)


def _kind(part: Any, group: str, drawer: str) -> str:
    if part.name == "mattress":
        return "mattress"
    if part.hardware:
        return "hardware"
    if group:
        own = "" if group == drawer else "other "
        return own + ("front" if part.assembly == "fronts" else "box")
    return {"deck": "deck", "under the bed": "bearer"}.get(part.assembly, "frame")
