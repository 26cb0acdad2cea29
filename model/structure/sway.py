"""How far a pushed bed sways, and what its knock-down joints have to do with it."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from model.parts.pieces import Floats
from model.structure.joints import KNOCK_DOWN
from model.structure.record import Carried
from model.units import Mm

AXIS = {"push across": 0, "push along": 1}


class Sway(NamedTuple):
    """How far a side rail goes when the bed is pushed, mm: `bends` of wood and joints that give,
    `play` of loose ones. Of the knock-down joint that is turned hardest: `moment` N m, and how far
    its screws or bolts give, mm.
    """

    piece: int
    bends: Mm
    play: Mm
    moment: float
    gives: Mm


def sway(strength: Carried, key: str, play: Mm) -> Sway | None:
    """What a push ("push along", "push across") does; None where the bed is not pushed.

    `play` is how far each knock-down joint moves before it holds, mm.
    """
    cases = [i for i, case in enumerate(strength.cases) if case.key == key]
    rails = [i for i, role in enumerate(strength.roles) if role == "side rail"]
    if not cases or not rails:
        return None
    gone = np.abs(strength.moved[cases[0]] - strength.moved[0])[:, AXIS[key]]
    gone = np.where(np.isin(strength.station_piece, rails), gone, 0.0)
    piece = int(strength.pieces[strength.station_piece[int(gone.argmax())]])
    moment, gives, loose = _turned(strength, cases[0], play)
    wobble = loose if key == "push along" else 0.0
    return Sway(piece, float(gone.max()), wobble, moment, gives)


def _turned(strength: Carried, case: int, play: Mm) -> tuple[float, Mm, Mm]:
    """Of the corner that is turned hardest: moment, N m; how far its joints give; and how far the
    rail goes, mm, before they hold at all.
    """
    joints = strength.joints
    rows = np.flatnonzero(joints.kind == KNOCK_DOWN)
    extra = joints.force[case, rows] - joints.force[0, rows]
    worst, gives, loose = 0.0, 0.0, 0.0
    for post in np.unique(joints.pieces[rows, 1]).tolist():
        mine = np.flatnonzero(joints.pieces[rows, 1] == post)
        stiff, force = joints.stiffness[rows[mine]], extra[mine]
        high = joints.at[rows[mine], 2]
        arm = high - high.mean()
        moment = abs(float(force[:, 3].sum() - (arm * force[:, 1]).sum()))
        if moment >= worst:
            worst, gives = moment, _gives(stiff, force)
            reach = np.sqrt((stiff[:, 1] * arm**2 + stiff[:, 3]).sum() / stiff[:, 1].sum())
            loose = float(play / (2 * reach) * high.mean()) if reach > 0 else 0.0
    return worst / 1e3, gives, loose


def _gives(stiff: Floats, force: Floats) -> Mm:
    """How far the outermost screw or bolt of a corner moves along the rail, mm."""
    pulled = np.abs(force[:, 1]) / stiff[:, 1]
    turned = np.abs(force[:, 3]) / np.sqrt(np.maximum(stiff[:, 3], 1e-9) * stiff[:, 1])
    return float(np.max(pulled + np.where(stiff[:, 3] > 0, turned, 0.0)))
