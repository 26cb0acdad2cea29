"""What always lies on the frame: its own weight, what hangs on it, full drawers."""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np

from model.mechanics.line_loads import EVERY
from model.parts.pieces import Bools, Floats, Ints, Pieces
from model.solids.holding import Holding
from model.structure.lattice import Lattice
from model.structure.loading import GRAVITY, Loading
from model.units import Kg, Mm

_BESIDE: Mm = 60.0  # a bearer stands no farther from its box: slide, packing and a little air
_BELOW: Mm = 80.0  # a runner lies no farther under its box
_IN_LINE: Mm = 1.0  # bearers one behind the other stand no farther aside


def put_weights(loading: Loading, frame: Lattice, masses: Floats) -> None:
    """Every piece of the frame weighs evenly along its length."""
    bones = frame.bones
    loading.on(
        EVERY, np.arange(len(bones.piece)), 0.0, bones.size[:, 0], _down(masses[bones.piece])
    )


def put_hangers(
    loading: Loading, frame: Lattice, pieces: Pieces, holding: Holding, host: Ints, masses: Floats
) -> None:
    """Panels, planks, cleats, fronts: what is no part of the frame weighs on what holds it."""
    hangs = (frame.bones.host < 0) & (masses > 0) & (pieces.group == 0)
    one, other = holding.one[hangs[holding.one]], holding.other[hangs[holding.one]]
    on_frame = host[other] >= 0
    mass = _handed_on(masses, one, other, np.isin(np.arange(len(pieces)), one[on_frame]))
    one, on = one[on_frame], host[other[on_frame]]
    held_by = np.bincount(one, minlength=len(pieces))
    start, end = _stretch(frame, on, *(bound[one] for bound in pieces.bounds))
    loading.on(EVERY, on, start, end, _down(mass[one] / held_by[one]))


def _handed_on(masses: Floats, one: Ints, other: Ints, on_frame: Bools) -> Floats:
    """Masses (n,) with those that hang on no piece of the frame laid on what holds them: a fixed
    front on its blocks, its panel on its stiles. `one` (e) is held by `other` (e).
    """
    mass, reached, steps = masses.copy(), on_frame.copy(), []
    while (step := ~reached[one] & reached[other]).any():
        steps.append(step)
        reached[one[step]] = True
    for step in reversed(steps):
        held, holder = one[step], other[step]
        share = mass[held] / np.bincount(held)[held]
        mass[held] = 0.0
        np.add.at(mass, holder, share)
    return mass


def put_drawers(
    loading: Loading, frame: Lattice, pieces: Pieces, masses: Floats, contents: Mapping[str, Kg]
) -> None:
    """A full drawer, closed, weighs on the bearers beside it, or on the runner under it."""
    groups = len(pieces.groups)
    if groups < 2:
        return
    bones, (low, high) = frame.bones, pieces.bounds
    of_wood = np.flatnonzero((pieces.group > 0) & (masses > 0))
    box_low, box_high = np.full((groups, 3), np.inf), np.full((groups, 3), -np.inf)
    np.minimum.at(box_low, pieces.group[of_wood], low[of_wood])
    np.maximum.at(box_high, pieces.group[of_wood], high[of_wood])
    rows = [name.rpartition("-")[0] for name in pieces.groups]
    held = np.array([contents.get(row, 0.0) for row in rows])
    mass = np.bincount(pieces.group, masses, minlength=groups) + held
    axis = np.array([1 if row == "foot" else 0 for row in rows])
    bearer = bones.of_role("bearer")
    drawer, which = _carriers(
        axis, box_low, box_high, bones.axes[bearer, 0], low[bones.piece[bearer]],
        high[bones.piece[bearer]],
    )  # fmt: skip
    on = bearer[which]
    start, end = _stretch(frame, on, box_low[drawer], box_high[drawer])
    carried_by = np.maximum(np.bincount(drawer, minlength=groups), 1)
    loading.on(EVERY, on, start, end, _down((mass / carried_by)[drawer]))


def _carriers(
    axis: Ints, box_low: Floats, box_high: Floats, along: Floats, low: Floats, high: Floats
) -> tuple[Ints, Ints]:
    """Pairs of drawer and bearer that belong together; drawer 0 is the bed itself."""
    drawers = np.arange(1, len(axis))
    run, side = axis[drawers], 1 - axis[drawers]
    middle = (low + high)[:, :2].T[side] / 2  # (d, bearers): across the drawer's way
    left = middle - box_low[drawers, side][:, None]
    right = box_high[drawers, side][:, None] - middle
    fits = np.abs(along[:, :2].T[run]) > 0.5
    fits &= np.minimum(high[:, :2].T[run], box_high[drawers, run][:, None]) > np.maximum(
        low[:, :2].T[run], box_low[drawers, run][:, None]
    )
    fits &= high[None, :, 2] > box_low[drawers, 2][:, None] - _BELOW
    under, nearest = fits & (left > 0) & (right > 0), np.zeros_like(fits)
    for off in (left, right):  # on each side the nearest, not the next drawer's behind it
        away = np.where(fits & ~under, np.abs(off), np.inf)
        least = away.min(axis=1, keepdims=True, initial=_BESIDE)
        nearest |= (away < _BESIDE) & (away < least + _IN_LINE)
    found = np.where(under.any(axis=1, keepdims=True), under, nearest)
    drawer, bearer = np.nonzero(found)
    return drawers[drawer], bearer


def _stretch(frame: Lattice, on: Ints, low: Floats, high: Floats) -> tuple[Floats, Floats]:
    """The stretch of each piece that boxes from `low` to `high` (k, 3) stand over, mm."""
    way, start = frame.bones.axes[on, 0], frame.bones.start[on]
    ends = np.stack([np.einsum("ki,ki->k", corner - start, way) for corner in (low, high)])
    long = frame.bones.size[on, 0]
    return np.clip(ends.min(axis=0), 0, long), np.clip(ends.max(axis=0), 0, long)


def _down(mass: Floats) -> Floats:
    force = np.zeros((len(mass), 3))
    force[:, 2] = -mass * GRAVITY
    return force
