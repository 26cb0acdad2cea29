"""From where a joint is looked at: cut open along it, in a window that holds what belongs to it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import NamedTuple

import numpy as np

from model.building.joined import Joined
from model.cutting.record import Box
from model.drawings.paper import grown
from model.drawings.views.cropped import cropped
from model.drawings.views.gaze import FRONT, PLAN, RIGHT, Gaze
from model.drawings.views.scene import bed_scene
from model.drawings.views.section import plane_across
from model.drawings.views.view import View, seen
from model.parts.pieces import Floats
from model.planset.details.alike import Shot
from model.planset.details.fasteners import Bar, bars
from model.planset.details.kinds import BRACKETS, HOOKED, LONG, TWICE, Kind, brackets
from model.planset.details.works import works
from model.units import Mm

AROUND: Mm = 26.0  # wood on each side of a joint
WHOLE: Mm = 40.0  # a piece that ends so near beyond that is shown to its end
EDGE: Mm = 3.0  # of paper beyond an end
TOUCHES: Mm = 3.0  # a cut so near to where two pieces meet is work for the joint
HAIR: Mm = 0.1
BESIDE: Mm = 12.0  # bought things so near belong to the joint
GAZES: tuple[Gaze, ...] = (RIGHT, FRONT, PLAN)  # along x, y, z


class Work(NamedTuple):
    """What of a piece counts at a joint, on the paper: its stock, its cuts there, all its holes."""

    stock: Box
    cuts: tuple[Box, ...]
    holes: tuple[Box, ...]


@dataclass(frozen=True, kw_only=True)
class Shown:
    """A joint as it is seen: its pieces by row of the view, which of them are bought `helpers`, the
    screws and holes that lie in the plane of the cut, and those that go slanting through or to it,
    `crossing`; the plane stands `at` a place on an `axis`.

    `both` are the rows of the two that are joined, `rest` all others, `is_bought` says of which
    rows they are; `told` gives the work of the two by row.
    """

    view: View
    pieces: tuple[int, ...]
    helpers: tuple[int, ...]
    bars: tuple[Bar, ...]
    crossing: tuple[Bar, ...]
    at: Mm
    axis: int
    both: tuple[int, int]
    rest: tuple[int, ...]
    is_bought: tuple[bool, ...]
    told: dict[int, Work]


def shown(all_of: Joined, shot: Shot) -> Shown:
    """The joint cut open, with what holds it together."""
    kind, axis = shot.kind, shot.axis
    helpers = _helpers(all_of, kind)
    lines = tuple(bars(all_of, (kind.one, kind.other), helpers, (kind.low, kind.high)))
    low, high = window(all_of, kind, axis, helpers, lines)
    at = _plane(all_of, kind, axis, helpers, lines)
    pieces = tuple(sorted(set(_pieces(all_of, kind, axis, at, helpers, low, high))))
    middle = ((low + high) / 2).tolist()
    point = (*middle[:axis], at, *middle[axis + 1 :])
    gaze = GAZES[axis]
    scene = bed_scene(all_of.bed, pieces)
    view = seen(scene, gaze, cut=plane_across(gaze, point), hidden=False)
    both = (pieces.index(kind.one), pieces.index(kind.other))
    return Shown(
        both=both, rest=tuple(row for row in range(len(pieces)) if row not in both),
        is_bought=tuple(not all_of.is_wood(piece) for piece in pieces),
        told={row: _work(all_of, pieces[row], gaze, kind) for row in both},
        view=cropped(view, _flat_box(gaze, low, high)), pieces=pieces, helpers=helpers,
        bars=tuple(bar for bar in lines if bar.lies_at(axis, at)),
        crossing=tuple(bar for bar in lines if bar.crosses(axis, at) or bar.is_pocket),
        at=at, axis=axis,
    )  # fmt: skip


def _work(all_of: Joined, piece: int, gaze: Gaze, kind: Kind) -> Work:
    every = works(all_of, piece)
    boxes = [_flat_box(gaze, *ends) for ends in zip(every.low, every.high, strict=True)]
    near = every.near(kind.low - TOUCHES, kind.high + TOUCHES) & ~every.is_round
    return Work(
        boxes[0],
        tuple(grown(boxes[k], HAIR) for k in np.flatnonzero(near).tolist() if k),
        tuple(grown(boxes[k], HAIR) for k in np.flatnonzero(every.is_round).tolist()),
    )


def size_of(all_of: Joined, shot: Shot) -> tuple[Mm, Mm]:
    """How wide and high the window of a shot is, mm of wood."""
    kind = shot.kind
    helpers = _helpers(all_of, kind)
    lines = tuple(bars(all_of, (kind.one, kind.other), helpers, (kind.low, kind.high)))
    box = _flat_box(GAZES[shot.axis], *window(all_of, kind, shot.axis, helpers, lines))
    return box.x1 - box.x0, box.y1 - box.y0


def _flat_box(gaze: Gaze, low: Floats, high: Floats) -> Box:
    (a, b), (c, d) = gaze.flat(low).tolist(), gaze.flat(high).tolist()
    return Box(min(a, c), min(b, d), max(a, c), max(b, d))


# ---------------------------------------------------------------- what belongs to it


def _helpers(all_of: Joined, kind: Kind) -> tuple[int, ...]:
    """Bought things that hold the two together, near where they meet: what is linked to both, as
    dowels and brackets are, and what is linked to both by another, as bolt and nut or two plates.
    """
    low, high = all_of.pieces.bounds
    ones, others = (
        {each for each in all_of.partners(piece) if _is_bought(all_of, each)}
        for piece in (kind.one, kind.other)
    )
    found = ones & others
    if kind.joint == BRACKETS:
        found |= brackets(all_of, kind.one)
    for one in ones:
        for other in all_of.partners(one) & others:
            found |= {one, other}
    return tuple(
        each for each in sorted(found - {kind.one, kind.other})
        if (low[each] < kind.high + BESIDE).all() and (high[each] > kind.low - BESIDE).all()
    )  # fmt: skip


def _is_bought(all_of: Joined, piece: int) -> bool:
    return not all_of.is_wood(piece) and not all_of.is_mattress(piece)


def _pieces(
    all_of: Joined, kind: Kind, axis: int, at: Mm, helpers: tuple[int, ...],
    low: Floats, high: Floats,
) -> tuple[int, ...]:  # fmt: skip
    """Both, what holds them, and neighbours that the plane cuts within the window."""
    starts, ends = all_of.pieces.bounds
    near = {each for piece in (kind.one, kind.other, *helpers) for each in all_of.partners(piece)}
    kept = [
        each for each in sorted(near)
        if not all_of.is_mattress(each)
        and starts[each, axis] < at - 0.1 and ends[each, axis] > at + 0.1
        and all(starts[each, k] < high[k] - EDGE and ends[each, k] > low[k] + EDGE
                for k in range(3) if k != axis)
    ]  # fmt: skip
    return (kind.one, kind.other, *helpers, *kept)


# ---------------------------------------------------------------- where


def window(
    all_of: Joined, kind: Kind, axis: int, helpers: tuple[int, ...], lines: tuple[Bar, ...]
) -> tuple[Floats, Floats]:
    """The corners of what is shown (3,), (3,)."""
    low, high = kind.low.copy(), kind.high.copy()
    starts, ends = all_of.pieces.bounds
    for k in range(3):
        if k == axis:
            continue
        if high[k] - low[k] > LONG and k != kind.along and kind.joint not in TWICE:
            low[k], high[k] = _end_of_run(kind, k, lines)
        for piece in helpers:
            if ends[piece, k] - starts[piece, k] < LONG or all_of.part(piece).is_round:
                low[k], high[k] = min(low[k], starts[piece, k]), max(high[k], ends[piece, k])
        low[k] = _reach(low[k] - AROUND, [starts[p, k] for p in (kind.one, kind.other)], -1)
        high[k] = _reach(high[k] + AROUND, [ends[p, k] for p in (kind.one, kind.other)], 1)
    return low, high


def _end_of_run(kind: Kind, k: int, lines: tuple[Bar, ...]) -> tuple[Mm, Mm]:
    """A stretch of a long joint: its lower end, and the first screw from there."""
    low = float(kind.low[k])
    first = min((float(bar.start[k]) for bar in lines if bar.start[k] > low), default=low)
    return low, min(max(first, low + AROUND), low + LONG)


def _reach(at: Mm, ends: list[Mm], way: int) -> Mm:
    """As far as the farther of the pieces is shown: to its end, and a little beyond, where that is
    near; or to `at`.
    """
    shown_to = [end + way * EDGE if way * (end - at) < WHOLE else at for end in ends]
    return max(shown_to) if way > 0 else min(shown_to)


def _plane(
    all_of: Joined, kind: Kind, axis: int, helpers: tuple[int, ...], lines: tuple[Bar, ...]
) -> Mm:
    """Where it is cut: through the screw, bolt or dowel nearest to the middle, or else there."""
    middle = float(kind.low[axis] + kind.high[axis]) / 2
    starts, ends = all_of.pieces.bounds
    own = [each for each in helpers if ends[each, axis] - starts[each, axis] < LONG]
    places = [float(starts[each, axis] + ends[each, axis]) / 2 for each in own]
    if kind.joint == HOOKED:
        places = []
    elif not places:
        places = [
            float(bar.start[axis]) for bar in lines
            if bar.is_square_to(axis) and abs(bar.way[kind.along]) > 0.7
        ]  # fmt: skip
    inside = [at for at in places if kind.low[axis] - BESIDE <= at <= kind.high[axis] + BESIDE]
    return min(inside, key=lambda at: (round(abs(at - middle), 3), at), default=middle)
