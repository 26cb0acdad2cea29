"""From where a joint is looked at: cut open along it, in a window that holds what belongs to it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from model.building.joined import Joined
from model.cutting.record import Box
from model.drawings.views.cropped import cropped
from model.drawings.views.gaze import FRONT, PLAN, RIGHT, Gaze
from model.drawings.views.scene import bed_scene
from model.drawings.views.section import plane_across
from model.drawings.views.view import View, seen
from model.parts.pieces import Floats
from model.planset.details.fasteners import Bar, bars
from model.planset.details.kinds import HOOKED, LONG, Kind
from model.units import Mm

AROUND: Mm = 26.0  # wood on each side of a joint
WHOLE: Mm = 40.0  # a piece that ends so near beyond that is shown to its end
EDGE: Mm = 3.0  # of paper beyond an end
BESIDE: Mm = 12.0  # bought things so near belong to the joint
GAZES: tuple[Gaze, ...] = (RIGHT, FRONT, PLAN)  # along x, y, z
CUTS = ("cut along the bed", "cut across the bed", "cut level")
# Joints whose sizes show in two directions.
TWICE = frozenset((
    "mortise and tenon", "stub tenon", "dowel", "pocket screw", "pocket screws",
    "bed-rail connector", "hooked in", "brackets or screws", "stub tenon in groove",
))  # fmt: skip


@dataclass(frozen=True, kw_only=True)
class Shot:
    """One picture to be drawn of a joint: looked at along `axis` of the bed."""

    kind: Kind
    axis: int

    @property
    def words(self) -> str:
        """How it is cut."""
        return CUTS[self.axis]


@dataclass(frozen=True, kw_only=True)
class Shown:
    """A joint as it is seen: the view, its pieces by row, what lies `before` the plane by bars."""

    view: View
    pieces: tuple[int, ...]
    bars: tuple[Bar, ...]


def shots(kind: Kind) -> Iterator[Shot]:
    """The pictures that a kind of joint takes."""
    yield Shot(kind=kind, axis=kind.run)
    if kind.joint in TWICE:
        yield Shot(kind=kind, axis=kind.across)


def shown(all_of: Joined, shot: Shot) -> Shown:
    """The joint cut open, with what holds it together."""
    kind, axis = shot.kind, shot.axis
    helpers = _helpers(all_of, kind)
    lines = tuple(bars(all_of, (kind.one, kind.other, *helpers), kind.low, kind.high))
    low, high = _window(all_of, kind, axis, helpers, lines)
    at = _plane(all_of, kind, axis, helpers, lines, low, high)
    pieces = _pieces(all_of, kind, axis, at, helpers, low, high)
    through = tuple(((low + high) / 2).tolist())
    point = (*through[:axis], at, *through[axis + 1 :])
    gaze = GAZES[axis]
    view = seen(
        bed_scene(all_of.bed, pieces), gaze, cut=plane_across(gaze, point), hidden=False
    )  # fmt: skip
    box = _flat_box(gaze, low, high)
    in_plane = tuple(bar for bar in lines if bar.lies_at(axis, at))
    return Shown(view=cropped(view, box), pieces=tuple(sorted(set(pieces))), bars=in_plane)


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


def _window(
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
            if ends[piece, k] - starts[piece, k] < LONG:
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
    all_of: Joined, kind: Kind, axis: int, helpers: tuple[int, ...], lines: tuple[Bar, ...],
    low: Floats, high: Floats,
) -> Mm:  # fmt: skip
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
