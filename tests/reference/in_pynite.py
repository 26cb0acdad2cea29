"""Frames in the terms of PyNiteFEA, a general library for frames."""

from __future__ import annotations

import numpy as np
from Pynite import FEModel3D
from Pynite.Spring3D import Spring3D

from model.mechanics.line_loads import EVERY, LineLoads
from model.mechanics.space_frame import GROUND, Frame

MOVES = ("DX", "DY", "DZ", "RX", "RY", "RZ")
LOADS = ("FX", "FY", "FZ", "MX", "MY", "MZ")


def with_bars(frame: Frame, loads: LineLoads, node_loads: np.ndarray) -> FEModel3D:
    """Nodes `n0`..., bars `m0`... and load combinations `case 0`..., without any support."""
    model = FEModel3D()
    for i, (x, y, z) in enumerate(frame.nodes.tolist()):
        model.add_node(f"n{i}", x, y, z)
    _add_bars(model, frame)
    _add_line_loads(model, loads)
    for i, way, case in np.argwhere(node_loads).tolist():
        model.add_node_load(f"n{i}", LOADS[way], node_loads[i, way, case], f"case {case}")
    for case in range(node_loads.shape[2]):
        model.add_load_combo(f"case {case}", {f"case {case}": 1.0, "every": 1.0})
    return model


def _add_bars(model: FEModel3D, frame: Frame) -> None:
    m = frame.members
    for i in range(len(m.length)):
        model.add_material(f"e{i}", m.moe[i], m.shear[i], 0.3, 0.0)
        model.add_section(f"s{i}", m.area[i], m.about_y[i], m.about_z[i], m.torsion[i])
        model.add_member(f"m{i}", f"n{m.start[i]}", f"n{m.end[i]}", f"e{i}", f"s{i}")
        bar = model.members[f"m{i}"]
        _, y, z = bar.T()[:3, :3]  # unrolled
        bar.rotation = float(np.degrees(np.arctan2(m.axes[i, 1] @ z, m.axes[i, 1] @ y)))


def _add_line_loads(model: FEModel3D, loads: LineLoads) -> None:
    for p in range(len(loads.case)):
        case = "every" if loads.case[p] == EVERY else f"case {loads.case[p]}"
        bar, start, end = f"m{loads.member[p]}", float(loads.start[p]), float(loads.end[p])
        for way, force in zip(("Fx", "Fy", "Fz"), loads.force[p].tolist(), strict=True):
            if start == end:
                model.add_member_pt_load(bar, way, force, start, case)
            else:
                even = force / (end - start)
                model.add_member_dist_load(bar, way, even, even, start, end, case)


class JointSpring(Spring3D):
    """A joint as the library takes it: a spring whose stiffness is that of all six springs at their
    point of contact, brought to both nodes by rigid arms.
    """

    def joins(self, at: np.ndarray, stiffness: np.ndarray) -> None:
        ends = [np.array([n.X, n.Y, n.Z]) for n in (self.i_node, self.j_node)]
        past = np.hstack([-_carried(at - ends[0]), _carried(at - ends[1])])
        self.stiffness = past.T @ np.diag(stiffness) @ past

    def Ke(self) -> np.ndarray:
        return self.stiffness

    def F(self, combo_name: str = "Combo 1") -> np.ndarray:
        return self.stiffness @ self.D(combo_name)


def _carried(arm: np.ndarray) -> np.ndarray:
    """(6, 6): movement and turn at the end of an arm, from those of its node."""
    x, y, z = arm
    found = np.eye(6)
    found[:3, 3:] = [[0, z, -y], [-z, 0, x], [y, -x, 0]]
    return found


def add_joints(model: FEModel3D, frame: Frame) -> None:
    """All joints, holding both ways. The ground is a fixed node far off every bar."""
    joints = frame.joints
    ground = model.add_node("ground", 0.0, 0.0, -1e5)
    model.def_support(ground, *[True] * 6)
    for j, (one, other) in enumerate(zip(joints.one.tolist(), joints.other.tolist(), strict=True)):
        near, far = f"n{one}", ground if other == GROUND else f"n{other}"
        spring = JointSpring(
            f"j{j}", model.nodes[near], model.nodes[far], 1.0, model.load_combos
        )  # fmt: skip
        spring.joins(joints.at[j], joints.stiffness[j])
        model.springs[spring.name] = spring


def moved(model: FEModel3D, nodes: int, cases: int) -> np.ndarray:
    """Movements and turns of the first nodes, once the model is analysed: (n, 6, c)."""
    return np.array(
        [
            [
                [getattr(model.nodes[f"n{i}"], way)[f"case {c}"] for c in range(cases)]
                for way in MOVES
            ]
            for i in range(nodes)
        ]
    )
