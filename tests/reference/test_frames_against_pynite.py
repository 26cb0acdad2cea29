"""Random frames against PyNiteFEA 3.2, a general library for frames: the same bars, supports and
loads, solved there.

It too takes its bars as Euler-Bernoulli beams, so that both ought to agree but for rounding, for
supports that here give by a millionth, and for point loads that are spread over a hair: 1e-4 at
most was seen. Half a per cent of the greatest value is far below what any check of a bed can tell.
"""

from __future__ import annotations

from typing import NamedTuple

import numpy as np
import pytest
from Pynite import FEModel3D

from tests.model.mechanics.random_frames import CLAMP, RIGID, RandomFrame, random_frame
from tests.reference.in_pynite import LOADS, MOVES, add_joints, moved, with_bars

SEEDS = range(100, 130)
TOLERANCE = 0.005  # of the greatest value of its kind in the frame
STATIONS = np.array([0.0, 0.23, 0.5, 0.81, 1.0])


class Answers(NamedTuple):
    """Per load case (c): movements and turns (n, 3, c) of the nodes, forces and moments (j, 3, c)
    of the supports, and at stations of the members (s, c) each what happens on their own axes.
    """

    moved: np.ndarray
    turned: np.ndarray
    force: np.ndarray
    moment: np.ndarray
    moment_y: np.ndarray
    moment_z: np.ndarray
    twist: np.ndarray
    aside_y: np.ndarray
    aside_z: np.ndarray


def ours(drawn: RandomFrame) -> Answers:
    found, bars = drawn.solve(), drawn.frame.members
    member = np.repeat(np.arange(len(bars.length)), len(STATIONS))
    inner = drawn.between(found, member, (bars.length[:, None] * STATIONS).ravel())
    reaction = found.joint_force
    return Answers(
        found.moved[:, :3], found.moved[:, 3:], reaction[:, :3], reaction[:, 3:],
        inner.moment_y, inner.moment_z, inner.twist, inner.moved[:, 1], inner.moved[:, 2],
    )  # fmt: skip


def theirs(drawn: RandomFrame) -> Answers:
    """Their moment about z and their twist count the other way round."""
    model = built(drawn)
    model.analyze_linear(check_stability=True)
    frame, combos = drawn.frame, [f"case {case}" for case in range(drawn.cases)]
    nodes = moved(model, len(frame.nodes), drawn.cases)
    held = [model.nodes[f"n{i}"] for i in frame.joints.one]
    force = np.array(
        [[[getattr(n, f"Rxn{way}")[c] for c in combos] for way in LOADS] for n in held]
    )
    along = [
        (model.members[f"m{i}"], share * length)
        for i, length in enumerate(frame.members.length)
        for share in STATIONS
    ]

    def at_stations(effect: str, *way: str) -> np.ndarray:
        return np.array([[getattr(m, effect)(*way, x, c) for c in combos] for m, x in along])

    return Answers(
        nodes[:, :3], nodes[:, 3:], force[:, :3], force[:, 3:],
        at_stations("moment", "My"), -at_stations("moment", "Mz"), -at_stations("torque"),
        at_stations("deflection", "dy"), at_stations("deflection", "dz"),
    )  # fmt: skip


def built(drawn: RandomFrame) -> FEModel3D:
    """The same frame in the library's terms, on its own kinds of supports."""
    model = with_bars(drawn.frame, drawn.loads, drawn.node_loads)
    joints = drawn.frame.joints
    for i, row in zip(joints.one.tolist(), joints.stiffness.tolist(), strict=True):
        model.def_support(f"n{i}", *(k in (RIGID, CLAMP) for k in row))  # theirs never give
        for way, k in zip(MOVES, row, strict=True):
            if k not in (0.0, RIGID, CLAMP):
                model.def_support_spring(f"n{i}", way, k)
    return model


@pytest.mark.parametrize("seed", SEEDS)
def test_random_frame(seed: int) -> None:
    drawn = random_frame(seed)

    found, wanted = ours(drawn), theirs(drawn)

    for name, our, their in zip(Answers._fields, found, wanted, strict=True):
        greatest = np.abs(their).max()
        assert greatest > 0, name
        assert np.abs(our - their).max() <= TOLERANCE * greatest, name


@pytest.mark.parametrize("seed", range(200, 206))
def test_random_frame_tied_by_joints_with_arms(seed: int) -> None:
    """Their springs take our joints' stiffness here, worked out anew: no library has the like."""
    drawn = random_frame(seed, with_joints=True)
    model = with_bars(drawn.frame, drawn.loads, drawn.node_loads)
    add_joints(model, drawn.frame)
    model.analyze_linear()

    found, wanted = drawn.solve().moved, moved(model, len(drawn.frame.nodes), drawn.cases)

    for ways in (slice(0, 3), slice(3, 6)):
        greatest = np.abs(wanted[:, ways]).max()
        assert np.abs(found - wanted)[:, ways].max() <= TOLERANCE * greatest
