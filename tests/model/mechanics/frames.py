"""Small frames for tests: straight beams on supports, and random ones."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from model.mechanics.line_loads import LineLoads, between
from model.mechanics.section import second_moment, torsion_constant
from model.mechanics.space_frame import GROUND, Frame, Joints, Members, Solution

STIFF = 1e7  # N/mm: against the few N/mm of the beams here, as good as rigid
CLAMP = 1e12  # N mm: against the 1e7 N mm of a slat's ends, as good as rigid


def members(
    nodes: np.ndarray,
    pairs: Sequence[tuple[int, int]],
    *,
    width: float | np.ndarray = 89.0,
    height: float | np.ndarray = 19.0,
    moe: float | np.ndarray = 10900.0,
    shear: float | np.ndarray = 700.0,
) -> Members:
    """Members between nodes, alike or each of its own section; their own z is as near to the
    frame's z as it can be.
    """
    start, end = (np.array(side, np.intp) for side in zip(*pairs, strict=True))
    along = nodes[end] - nodes[start]
    length = np.linalg.norm(along, axis=1)
    x = along / length[:, None]
    up = np.where(np.abs(x[:, 2:]) > 0.9, [[1.0, 0, 0]], [[0, 0, 1.0]])
    y = np.cross(up, x)
    y /= np.linalg.norm(y, axis=1)[:, None]
    count = np.ones(len(pairs))
    b, h = width * count, height * count
    return Members(
        start=start, end=end, axes=np.stack([x, y, np.cross(x, y)], 1), length=length, area=b * h,
        about_y=second_moment(b, h), about_z=second_moment(h, b), torsion=torsion_constant(b, h),
        moe=moe * count, shear=shear * count,
    )  # fmt: skip


def supports(
    nodes: np.ndarray, at: Sequence[int], stiffness: Sequence[Sequence[float]], pushes: bool = False
) -> Joints:
    """Springs to the ground at some nodes."""
    count = len(at)
    return Joints(
        one=np.array(at, np.intp), other=np.full(count, GROUND), at=nodes[list(at)],
        stiffness=np.array(stiffness, float),
        pushes=np.tile([0.0, 0.0, 1.0 if pushes else 0.0], (count, 1)),
    )  # fmt: skip


def line(*rows: tuple[int, int, float, float, float]) -> LineLoads:
    """Loads straight down: case, member, start, end, N."""
    case, member, start, end, force = (np.array(each) for each in zip(*rows, strict=True))
    down = np.zeros((len(rows), 3))
    down[:, 2] = -force
    return LineLoads(
        case=case.astype(np.intp), member=member.astype(np.intp), start=start.astype(float),
        end=end.astype(float), force=down,
    )  # fmt: skip


def no_loads() -> LineLoads:
    """Nothing along any member."""
    none = np.zeros(0, np.intp)
    return LineLoads(
        case=none, member=none, start=np.zeros(0), end=np.zeros(0), force=np.zeros((0, 3))
    )


def on_node(nodes: int, node: int, way: int, amount: float) -> np.ndarray:
    """One load, N or N mm, on one of so many nodes: (n, 6, 1)."""
    loads = np.zeros((nodes, 6, 1))
    loads[node, way] = amount
    return loads


class Beam:
    """A slat along x on supports, as the handbook draws it: yellow-poplar 19 x 89 mm."""

    def __init__(
        self,
        at: Sequence[float],
        held: dict[int, float],
        *,
        pushes: bool = False,
        clamped: Sequence[int] = (),
    ) -> None:
        """Nodes at some x; `held` gives the vertical stiffness of supports by node; `clamped` are
        those of them that stiff springs keep from turning.
        """
        self.nodes = np.array([[x, 0.0, 0.0] for x in at])
        pairs = [(i, i + 1) for i in range(len(at) - 1)]
        rows = [[0, STIFF, k, 0, 0, 0] for k in held.values()]
        rows[0][0], rows[0][3] = STIFF, CLAMP  # one end keeps it from sliding and rolling
        for node, row in zip(held, rows, strict=True):
            row[4:] = [CLAMP * (node in clamped)] * 2
        self.frame = Frame(
            nodes=self.nodes, members=members(self.nodes, pairs),
            joints=supports(self.nodes, list(held), rows, pushes),
        )  # fmt: skip

    def under(self, *rows: tuple[int, int, float, float, float]) -> Bent:
        loads = line(*rows)
        cases = int(loads.case.max()) + 1
        node_loads = np.zeros((len(self.nodes), 6, cases))
        released = np.zeros((len(self.frame.joints.one), cases), bool)
        return Bent(self.frame, loads, self.frame.solve(loads, node_loads, released))


class Bent:
    """A loaded beam, looked at in many places."""

    def __init__(self, frame: Frame, loads: LineLoads, solution: Solution) -> None:
        self.frame, self.loads, self.solution = frame, loads, solution
        m = frame.members
        steps = 721
        member = np.repeat(np.arange(len(m.length)), steps)
        at = (np.linspace(0, 1, steps)[None] * m.length[:, None]).ravel()
        stiff = (m.moe * m.area, m.moe * m.about_y, m.moe * m.about_z)
        self.x = frame.nodes[m.start[member], 0] + at
        self.inner = between(loads, member, at, solution.ends, solution.end_forces, stiff)

    def sag(self, case: int = 0) -> np.ndarray:
        """(s,) mm down, all along."""
        return np.asarray(-self.inner.moved[:, 2, case])

    def moment(self, case: int = 0) -> np.ndarray:
        """(s,) N mm; sagging above zero."""
        return np.asarray(-self.inner.moment_y[:, case])

    def reactions(self, case: int = 0) -> np.ndarray:
        """(j,) N, up above zero."""
        return np.asarray(self.solution.joint_force[:, 2, case])
