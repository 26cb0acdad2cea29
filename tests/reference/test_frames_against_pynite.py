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

SEEDS = range(100, 132)
TOLERANCE = 0.005  # of the greatest value of its kind in the frame
STATIONS = np.array([0.0, 0.23, 0.5, 0.81, 1.0])
MOVES = ("DX", "DY", "DZ", "RX", "RY", "RZ")
LOADS = ("FX", "FY", "FZ", "MX", "MY", "MZ")


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
    moved, reaction = found.moved, found.joint_force
    return Answers(
        moved[:, :3], moved[:, 3:], reaction[:, :3], reaction[:, 3:],
        inner.moment_y, inner.moment_z, inner.twist, inner.moved[:, 1], inner.moved[:, 2],
    )  # fmt: skip


def theirs(drawn: RandomFrame) -> Answers:
    """Their moment about z and their twist count the other way round."""
    model = built(drawn)
    model.analyze_linear(check_stability=True)
    frame, combos = drawn.frame, [f"case {case}" for case in range(drawn.cases)]
    nodes = [model.nodes[f"n{i}"] for i in range(len(frame.nodes))]
    moved = np.array([[[getattr(n, way)[c] for c in combos] for way in MOVES] for n in nodes])
    held = [nodes[i] for i in frame.joints.one]
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
        moved[:, :3], moved[:, 3:], force[:, :3], force[:, 3:],
        at_stations("moment", "My"), -at_stations("moment", "Mz"), -at_stations("torque"),
        at_stations("deflection", "dy"), at_stations("deflection", "dz"),
    )  # fmt: skip


def built(drawn: RandomFrame) -> FEModel3D:
    """The same frame in the library's terms."""
    model, frame = FEModel3D(), drawn.frame
    for i, (x, y, z) in enumerate(frame.nodes.tolist()):
        model.add_node(f"n{i}", x, y, z)
    add_bars(model, drawn)
    for i, row in zip(frame.joints.one.tolist(), frame.joints.stiffness.tolist(), strict=True):
        model.def_support(f"n{i}", *(k in (RIGID, CLAMP) for k in row))  # theirs never give
        for way, k in zip(MOVES, row, strict=True):
            if k not in (0.0, RIGID, CLAMP):
                model.def_support_spring(f"n{i}", way, k)
    for i, way, case in np.argwhere(drawn.node_loads).tolist():
        model.add_node_load(f"n{i}", LOADS[way], drawn.node_loads[i, way, case], f"case {case}")
    add_line_loads(model, drawn)
    for case in range(drawn.cases):
        model.add_load_combo(f"case {case}", {f"case {case}": 1.0})
    return model


def add_bars(model: FEModel3D, drawn: RandomFrame) -> None:
    m = drawn.frame.members
    for i in range(len(m.length)):
        model.add_material(f"e{i}", m.moe[i], m.shear[i], 0.3, 0.0)
        model.add_section(f"s{i}", m.area[i], m.about_y[i], m.about_z[i], m.torsion[i])
        model.add_member(f"m{i}", f"n{m.start[i]}", f"n{m.end[i]}", f"e{i}", f"s{i}")
        bar = model.members[f"m{i}"]
        _, y, z = bar.T()[:3, :3]  # unrolled
        bar.rotation = float(np.degrees(np.arctan2(m.axes[i, 1] @ z, m.axes[i, 1] @ y)))


def add_line_loads(model: FEModel3D, drawn: RandomFrame) -> None:
    loads = drawn.loads
    for p in range(len(loads.case)):
        bar, case = f"m{loads.member[p]}", f"case {loads.case[p]}"
        start, end = float(loads.start[p]), float(loads.end[p])
        for way, force in zip(("Fx", "Fy", "Fz"), loads.force[p].tolist(), strict=True):
            if start == end:
                model.add_member_pt_load(bar, way, force, start, case)
            else:
                even = force / (end - start)
                model.add_member_dist_load(bar, way, even, even, start, end, case)


@pytest.mark.parametrize("seed", SEEDS)
def test_random_frame(seed: int) -> None:
    drawn = random_frame(seed)

    found, wanted = ours(drawn), theirs(drawn)

    for name, our, their in zip(Answers._fields, found, wanted, strict=True):
        greatest = np.abs(their).max()
        assert greatest > 0, name
        assert np.abs(our - their).max() <= TOLERANCE * greatest, name
