"""Frames drawn at random: bars in space that branch from each other, and grillages of crossing
bars.

Bars are of any section, roll and stiffness; loads lie along stretches of them, at points of them
and on nodes; supports are fixed, pinned, or springs. All frames are held.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from model.mechanics.line_loads import Between, LineLoads, between
from model.mechanics.space_frame import GROUND, Frame, Joints, Members, Solution
from tests.model.mechanics.frames import members

RIGID, CLAMP = 1e9, 1e13  # N/mm, N mm: what a support holds gives by a millionth of what bars do


@dataclass(frozen=True, kw_only=True, eq=False)
class RandomFrame:
    """A frame with its loads: on members, and on nodes (n, 6, c)."""

    frame: Frame
    loads: LineLoads
    node_loads: np.ndarray

    @property
    def cases(self) -> int:
        return int(self.node_loads.shape[2])

    def solve(self) -> Solution:
        released = np.zeros((len(self.frame.joints.one), self.cases), bool)
        return self.frame.solve(self.loads, self.node_loads, released)

    def between(self, solution: Solution, member: np.ndarray, at: np.ndarray) -> Between:
        """What happens at stations (s) `at` mm from their members' starts."""
        m = self.frame.members
        stiff = (m.moe * m.area, m.moe * m.about_y, m.moe * m.about_z)
        return between(self.loads, member, at, solution.ends, solution.end_forces, stiff)

    def with_loads(self, loads: LineLoads, node_loads: np.ndarray) -> RandomFrame:
        return replace(self, loads=loads, node_loads=node_loads)


def random_frame(seed: int, *, cases: int = 2, with_joints: bool = False) -> RandomFrame:
    """A frame drawn with this seed: odd ones branch in space, even ones are grillages.

    `with_joints`: bars are also tied by springs that act away from both nodes.
    """
    rng = np.random.default_rng(seed)
    nodes, pairs = _branching(rng) if seed % 2 else _grillage(rng)
    joints = _supports(rng, nodes)
    if with_joints:
        joints = _joined(joints, _ties(rng, nodes))
    bars = _bars(rng, nodes, pairs)
    return RandomFrame(
        frame=Frame(nodes=nodes, members=bars, joints=joints),
        loads=random_loads(rng, bars, cases),
        node_loads=random_node_loads(rng, len(nodes), cases),
    )


def random_loads(rng: np.random.Generator, bars: Members, cases: int) -> LineLoads:
    """Even loads over stretches of bars, and point loads, in any direction."""
    count = 4 * cases
    member = rng.integers(len(bars.length), size=count)
    stretch = np.sort(rng.uniform(0, 1, (2, count)), axis=0)
    stretch[1] = np.where(rng.random(count) < 0.4, stretch[0], stretch[1])  # at a point
    whole = rng.random(count) < 0.2
    stretch[0, whole], stretch[1, whole] = 0.0, 1.0
    start, end = stretch * bars.length[member]
    return LineLoads(
        case=np.arange(count) % cases, member=member, start=start, end=end,
        force=rng.uniform(-500, 500, (count, 3)),
    )  # fmt: skip


def random_node_loads(rng: np.random.Generator, nodes: int, cases: int) -> np.ndarray:
    """Forces and moments on a third of the nodes: (n, 6, c)."""
    loads = rng.uniform(-300, 300, (nodes, 6, cases)) * [[[1]] * 3 + [[200]] * 3]
    return loads * (rng.random((nodes, 1, cases)) < 0.35)


def _branching(rng: np.random.Generator) -> tuple[np.ndarray, list[tuple[int, int]]]:
    """Every new bar starts at an older node; some more close loops."""
    nodes, pairs = [np.zeros(3)], []
    for i in range(1, int(rng.integers(4, 10))):
        pairs.append((int(rng.integers(i)), i))
        way = rng.normal(size=3)
        if rng.random() < 0.4:
            way = np.eye(3)[rng.integers(3)] * rng.choice([-1, 1])  # upright and level ones too
        nodes.append(nodes[pairs[-1][0]] + way / np.linalg.norm(way) * rng.uniform(200, 1200))
    apart = [(i, j) for i in range(len(nodes)) for j in range(i) if (j, i) not in pairs]
    for k in rng.choice(len(apart), size=2, replace=False):
        if np.linalg.norm(nodes[apart[k][0]] - nodes[apart[k][1]]) > 100:
            pairs.append(apart[k])
    return np.array(nodes), pairs


def _grillage(rng: np.random.Generator) -> tuple[np.ndarray, list[tuple[int, int]]]:
    """Bars along x and y in one plane, joined where they cross."""
    xs, ys = (np.cumsum(rng.uniform(150, 700, size=rng.integers(2, 5))) for _ in range(2))
    nodes = np.array([[x, y, 300.0] for x in xs for y in ys])
    m = len(ys)
    along = [(i, i + 1) for i in range(len(nodes)) if (i + 1) % m]
    return nodes, along + [(i, i + m) for i in range(len(nodes) - m)]


def _bars(rng: np.random.Generator, nodes: np.ndarray, pairs: list[tuple[int, int]]) -> Members:
    count = len(pairs)
    bars = members(
        nodes, pairs, width=rng.uniform(15, 120, count), height=rng.uniform(12, 60, count),
        moe=rng.uniform(6000, 15000, count), shear=rng.uniform(400, 1100, count),
    )  # fmt: skip
    roll = rng.uniform(-np.pi, np.pi, count)
    x, y, z = np.swapaxes(bars.axes, 0, 1)
    cos, sin = np.cos(roll)[:, None], np.sin(roll)[:, None]
    return replace(bars, axes=np.stack([x, y * cos + z * sin, z * cos - y * sin], 1))


def _supports(rng: np.random.Generator, nodes: np.ndarray) -> Joints:
    """One fixed, so that all is held; then pins, sliding ones and springs."""
    count = int(rng.integers(2, 5))
    at = rng.choice(len(nodes), size=min(count, len(nodes)), replace=False)
    fixed = [RIGID] * 3 + [CLAMP] * 3
    kinds = np.array([[RIGID] * 3 + [0] * 3, [0, 0, RIGID, 0, 0, 0], fixed], float)
    stiffness = kinds[rng.integers(3, size=len(at))]
    soft = rng.random(len(at)) < 0.35
    some = 10 ** rng.uniform([0] * 3 + [5] * 3, [4] * 3 + [9] * 3, (len(at), 6))
    stiffness[soft] = some[soft]
    stiffness[0] = fixed
    return Joints(
        one=at, other=np.full(len(at), GROUND), at=nodes[at], stiffness=stiffness,
        pushes=np.zeros((len(at), 3)),
    )  # fmt: skip


def _ties(rng: np.random.Generator, nodes: np.ndarray) -> Joints:
    """Springs between nodes, and to the ground, off their axes."""
    one = rng.choice(len(nodes), size=4)
    other = np.where(rng.random(4) < 0.3, GROUND, (one + rng.integers(1, len(nodes), 4)))
    other = np.where(other == GROUND, GROUND, other % len(nodes))
    return Joints(
        one=one, other=other, at=nodes[one] + rng.uniform(-80, 80, (4, 3)),
        stiffness=10 ** rng.uniform([1] * 3 + [4] * 3, [5] * 3 + [8] * 3, (4, 6)),
        pushes=np.zeros((4, 3)),
    )  # fmt: skip


def _joined(*parts: Joints) -> Joints:
    names = ("one", "other", "at", "stiffness", "pushes")
    return Joints(**{name: np.concatenate([getattr(p, name) for p in parts]) for name in names})
