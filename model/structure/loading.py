"""What lies on the pieces of the frame, load case by load case."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any, NamedTuple

import numpy as np

from model.mechanics.line_loads import EVERY, LineLoads
from model.parts.pieces import Bools, Floats, Ints
from model.structure.lattice import Lattice
from model.structure.skeleton import DECK
from model.units import Mm, Newton

GRAVITY = 9.80665  # m/s2: standard acceleration of free fall, CGPM 1901

# How a person's weight lies: share, and length from the head down, mm. Shares from memory (body
# segments); a body 1.8 m long and 0.6 m wide on the deck: common practice, no source.
BODY = ((0.08, 250.0), (0.33, 500.0), (0.44, 400.0), (0.15, 650.0))
BODY_WIDTH: Mm = 600.0
PILLOW: Mm = 100.0  # from the mattress's end to the head; common practice, no source


class Loading:
    """Loads on pieces of the frame, gathered case by case."""

    def __init__(self, frame: Lattice) -> None:
        self._frame = frame
        self._rows: list[tuple[Ints, Ints, Floats, Floats, Floats]] = []

    def on(
        self,
        case: int | Ints,
        piece: int | Ints,
        start: float | Floats,
        end: float | Floats,
        force: Sequence[float] | Floats,
    ) -> None:
        """Loads along pieces, mm from their near ends; `force` (3,) or (l, 3), N on the bed's axes.

        What is given once holds for all. `case` may be EVERY.
        """
        total = np.atleast_2d(np.asarray(force, float))
        count = max(len(total), *(np.size(each) for each in (case, piece, start, end)))
        each = np.empty((count, 3))
        each[:] = total
        self._rows.append(
            (
                _filled(case, count, np.intp),
                _filled(piece, count, np.intp),
                _filled(start, count, np.float64),
                _filled(end, count, np.float64),
                each,
            )
        )

    def always(self) -> Newton:
        """What weighs on the bed in every case, N."""
        return -sum(float(row[4][:, 2].sum()) for row in self._rows if row[0][0] == EVERY)

    def line_loads(self) -> LineLoads:
        """All of them as loads along members."""
        columns = zip(*self._rows, strict=True)
        case, piece, start, end, force = (np.concatenate(column) for column in columns)
        return self._frame.spread(case, piece, start, end, force)


def _filled(value: Any, count: int, kind: Any) -> Any:
    found = np.empty(count, kind)
    found[:] = value
    return found


class Deck:
    """The slats or panels, and how a load spread over the mattress comes to lie on them.

    `piece` (d,) of the frame, from foot to head; `low`, `high` (d, 2): x and y of each, mm; `reach`
    (d, 2): the stretch of y whose load it takes, half way to its neighbours.
    """

    def __init__(self, frame: Lattice, low: Floats, high: Floats) -> None:
        bones = frame.bones
        piece = bones.of_role(*DECK)
        order = np.argsort(low[bones.piece[piece], 1], kind="stable")
        self.piece = piece[order]
        self.low, self.high = (each[bones.piece[self.piece], :2] for each in (low, high))
        between = (self.high[:-1, 1] + self.low[1:, 1]) / 2
        self.reach = np.stack(
            [np.concatenate([[-np.inf], between]), np.concatenate([between, [np.inf]])], 1
        )

    def spread(self, areas: Floats, force: Floats, *, touching: bool = False) -> Spread:
        """Even loads (k,), N down, over rectangles `areas` (k, 4): x from, to, y from, to.

        A mattress hands them to all pieces by the stretch that each takes; a hard pad (`touching`)
        bears only on the wood under it.
        """
        edges = np.stack([self.low[:, 1], self.high[:, 1]], 1) if touching else self.reach
        stretch = np.minimum(edges[:, 1], areas[:, 3:]) - np.maximum(edges[:, 0], areas[:, 2:3])
        stretch = np.maximum(stretch, 0.0)
        share = stretch / np.maximum(stretch.sum(axis=1, keepdims=True), 1e-9)
        area, at = np.nonzero(share)
        start = np.maximum(areas[area, 0] - self.low[at, 0], 0.0)
        end = np.minimum(areas[area, 1], self.high[at, 0]) - self.low[at, 0]
        down = np.zeros((len(area), 3))
        down[:, 2] = -share[area, at] * force[area]
        return Spread(area, self.piece[at], start, np.maximum(end, start), down)


class Spread(NamedTuple):
    """Loads on pieces: which of the given loads, piece, start, end, force (3)."""

    load: Ints
    piece: Ints
    start: Floats
    end: Floats
    force: Floats

    def only(self, kept: Bools) -> Spread:
        """Some of these loads."""
        return Spread(
            self.load[kept], self.piece[kept], self.start[kept], self.end[kept], self.force[kept]
        )


def bodies(lying: Sequence[float], well: Sequence[float]) -> tuple[Ints, Floats, Floats]:
    """How sleepers press on the mattress: (b,) who, (b, 4) rectangles, (b,) N on each."""
    x0, x1, _, head = well
    lane = (x1 - x0) / len(lying)
    who, areas, force = [], [], []
    for i, mass in enumerate(lying):
        middle, half = x0 + lane * (i + 0.5), min(BODY_WIDTH, lane) / 2
        top = head - PILLOW
        for share, long in BODY:
            who.append(i)
            areas.append((middle - half, middle + half, top - long, top))
            force.append(share * mass * GRAVITY)
            top -= long
    return np.array(who, np.intp), np.array(areas), np.array(force)
