"""What a router cuts of a sheet part that lies flat: its outline, openings, pockets and holes.

Read from the part's cells of wood: wherever a straight tool from above or from below meets air, it
meets a pocket, an opening or a bore. What only a tool from the side can reach is named, not drawn.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from typing import NamedTuple

import numpy as np

from model.drawings.cell_loops import Loop, loops
from model.drawings.flat_bores import Bore, Bored
from model.drawings.paper import Point
from model.part import Cut, Face, Part
from model.parts.pieces import Floats
from model.parts.wood import SNAP, cells
from model.units import Mm


class Pocket(NamedTuple):
    """Ground at one depth below a face: loops around it, and around islands in it."""

    face: Face
    depth: Mm
    loops: tuple[Loop, ...]


@dataclass(frozen=True, kw_only=True)
class FlatProfile:
    """A part as it lies on the machine, mm from its lower left corner, the face `up` above.

    Length runs to the right. Work on the other face is told where it lies below, as if the sheet
    were glass. `left_out` names the work that no tool from above or below can do.
    """

    up: Face
    outline: tuple[Loop, ...]
    openings: tuple[Loop, ...]
    pockets: tuple[Pocket, ...]
    bores: tuple[Bore, ...]
    left_out: tuple[str, ...]

    @property
    def works_below(self) -> bool:
        """Whether the other face has work of its own."""
        faces = [each.face for each in self.pockets]
        faces += [each.face for each in self.bores if each.depth is not None]
        return any(face is not self.up for face in faces)


def flat_profile(part: Part) -> FlatProfile:
    """The profile of a part, that face up on which more is done; the face where it is alike."""
    return _Reader(part).profile()


class _Reader:
    def __init__(self, part: Part) -> None:
        self._part = part
        lines, self._wood = cells(part.size, tuple((cut.low, cut.high) for cut in part.cuts))
        self._x, self._y, self._z = lines
        self._thick = float(self._z[-1])
        bored = Bored(part.holes, (self._x, self._y, self._z), self._wood)
        self._bores = [bored.bore(hole) for hole in part.holes]
        self._is_gone = np.asarray(~self._wood.any(axis=2))

    def profile(self) -> FlatProfile:
        pockets = [each for face in (Face.FACE, Face.BACK) for each in self._pockets(face)]
        bores = [bore for bore in self._bores if bore is not None]
        up = _busier(pockets, bores)
        outline = self._drawn_in(loops(~self._is_gone, self._x, self._y))
        outer = tuple(loop for loop in outline if _is_left_turning(loop))
        inner = tuple(loop for loop in outline if not _is_left_turning(loop))
        return FlatProfile(
            up=up, outline=self._all_seen(outer, up), openings=self._all_seen(inner, up),
            pockets=tuple(
                each._replace(loops=self._all_seen(each.loops, up)) for each in pockets
            ),
            bores=tuple(bore._replace(at=self._seen(bore.at, up)) for bore in _distinct(bores)),
            left_out=tuple(dict.fromkeys(self._left_out())),
        )  # fmt: skip

    # ------------------------------------------------------------ ground below a face

    @cached_property
    def _depths(self) -> dict[Face, Floats]:
        """From a face to the first wood below it, by column of cells; 0 where there is none."""
        count = len(self._z) - 1
        low = self._wood.argmax(axis=2)
        high = count - self._wood[:, :, ::-1].argmax(axis=2)
        return {
            Face.FACE: np.where(self._is_gone, 0.0, self._thick - self._z[high]),
            Face.BACK: np.where(self._is_gone, 0.0, self._z[low]),
        }

    def _pockets(self, face: Face) -> Iterator[Pocket]:
        depths = np.round(self._depths[face], SNAP)
        for depth in sorted({*depths.ravel().tolist()} - {0.0}):
            yield Pocket(face, depth, loops(depths == depth, self._x, self._y))

    # ------------------------------------------------------------ what is out of reach

    def _left_out(self) -> Iterator[str]:
        for cut in self._part.cuts:
            if self._is_covered(cut):
                yield f"{cut.kind} in the {cut.face}"
        for hole, bore in zip(self._part.holes, self._bores, strict=True):
            if bore is None:
                yield f"{hole.kind}s in the {hole.face}"
        if self._part.taper:
            yield "taper of the thickness"
        if self._part.eased:
            yield "eased edges"

    def _is_covered(self, cut: Cut) -> bool:
        """Whether air of a cut lies between wood above and wood below."""
        i, j, k = (
            slice(*np.searchsorted(lines, (round(low, SNAP), round(high, SNAP))))
            for lines, low, high in zip(
                (self._x, self._y, self._z), cut.low, cut.high, strict=True
            )
        )  # fmt: skip
        above = np.flip(np.logical_or.accumulate(np.flip(self._wood, 2), axis=2), 2)
        below = np.logical_or.accumulate(self._wood, axis=2)
        return bool((above & below & ~self._wood)[i, j, k].any())

    # ------------------------------------------------------------ as it lies

    def _seen(self, point: Point, up: Face) -> Point:
        """Rolled over about its length where the back is up."""
        return point if up is Face.FACE else (point[0], float(self._y[-1]) - point[1])

    def _all_seen(self, some: tuple[Loop, ...], up: Face) -> tuple[Loop, ...]:
        return tuple(tuple(self._seen(point, up) for point in loop) for loop in some)

    def _drawn_in(self, some: tuple[Loop, ...]) -> tuple[Loop, ...]:
        """Loops of a part that narrows towards its near end."""
        part = self._part
        if not part.taper:
            return some
        bend, middle = part.taper_length, float(self._y[-1]) / 2
        return tuple(
            tuple(
                (x, middle + (y - middle) * (1 - max(0.0, 1 - x / bend) * part.taper / middle))
                for x, y in _bent(loop, bend)
            )
            for loop in some
        )


def _bent(loop: Loop, at: Mm) -> Iterator[Point]:
    """The points of a loop, and those where its sides pass a length."""
    for here, there in zip(loop, (*loop[1:], loop[0]), strict=True):
        yield here
        if (here[0] - at) * (there[0] - at) < 0:
            yield (at, here[1])


def _is_left_turning(loop: Loop) -> bool:
    """Whether a loop runs around wood; those around openings turn right."""
    ends = zip(loop, (*loop[1:], loop[0]), strict=True)
    return sum(a[0] * b[1] - b[0] * a[1] for a, b in ends) > 0


def _busier(pockets: list[Pocket], bores: list[Bore]) -> Face:
    """The face on which more is done; one side alone spares turning the sheet."""
    faces = [each.face for each in pockets]
    faces += [each.face for each in bores if each.depth is not None]
    return Face.BACK if faces.count(Face.BACK) > faces.count(Face.FACE) else Face.FACE


def _distinct(bores: list[Bore]) -> list[Bore]:
    """In order, each once."""
    return list(dict.fromkeys(bores))
