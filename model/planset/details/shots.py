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
from model.planset.details.fixings import reckoned_bars
from model.planset.details.kinds import BRACKETS, PULLS, Kind, brackets, joined
from model.planset.details.window import BESIDE, EDGE, plane, window
from model.planset.details.works import works
from model.planset.kept import kept
from model.planset.setting import Setting
from model.units import Mm

TOUCHES: Mm = 3.0  # a cut so near to where two pieces meet is work for the joint
HAIR: Mm = 0.1
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


@kept
def shown(setting: Setting, shot: Shot) -> Shown:
    """The joint cut open, with what holds it together."""
    all_of, kind, axis = joined(setting), shot.kind, shot.axis
    helpers = _helpers(all_of, kind)
    lines = _lines(all_of, kind, helpers)
    low, high = window(all_of, kind, axis, helpers, lines)
    at = plane(all_of, kind, axis, helpers, lines)
    here = [bar for bar in lines if bar.lies_at(axis, at)]
    owners = {bar.piece for bar in here}
    pieces = tuple(sorted({*_pieces(all_of, kind, axis, at, helpers, low, high), *owners}))
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
        bars=(*here, *reckoned_bars(setting, kind, axis, at)),
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


def _flat_box(gaze: Gaze, low: Floats, high: Floats) -> Box:
    (a, b), (c, d) = gaze.flat(low).tolist(), gaze.flat(high).tolist()
    return Box(min(a, c), min(b, d), max(a, c), max(b, d))


# ---------------------------------------------------------------- what belongs to it


def _lines(all_of: Joined, kind: Kind, helpers: tuple[int, ...]) -> tuple[Bar, ...]:
    """Screws and holes; pockets are told with the joint that they are for, the screws of a pull
    with what they start in.
    """
    pieces = [kind.one, kind.other]
    if kind.joint == PULLS:
        own = all_of.group(kind.one)
        pieces += [
            each for each in range(len(all_of.pieces))
            if own and all_of.group(each) == own and all_of.is_wood(each) and each != kind.other
        ]  # fmt: skip
    found = bars(all_of, pieces, helpers, (kind.low, kind.high))
    is_pocket = kind.joint.startswith("pocket")
    return tuple(bar for bar in found if is_pocket or not bar.kind.startswith("pocket"))


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
