"""Straight elastic members in space, joined by springs: the direct stiffness method.

Every node has six unknowns: three movements along x, y, z and three turns about them. Members are
Euler-Bernoulli beams: shear sag is left out, because bed parts are slender. Joints are springs
between two nodes, or a node and the ground, that act at a point of contact; the arms from the nodes
to that point are rigid. All load cases are solved together. A joint that only pushes lets go in the
cases that would pull at it; what it holds sideways and against turning it still holds.

Units: mm, N, N mm, MPa. Source of the method: textbooks on matrix structural analysis; the member
stiffness is the cubic beam element.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from model.mechanics.line_loads import LineLoads, at_ends, summed_rows
from model.mechanics.loose import Shake
from model.mechanics.loose import Unstable as Unstable
from model.mechanics.one_sided import Springs
from model.mechanics.pattern import pattern

Floats = npt.NDArray[np.float64]
Ints = npt.NDArray[np.intp]
Bools = npt.NDArray[np.bool_]

GROUND = -1


@dataclass(frozen=True, kw_only=True, eq=False)
class Members:
    """Members (m). `start`, `end` index nodes. `axes` (m, 3, 3): rows are the member's own x (from
    start to end), y and z on the frame's axes. Per member: `length`, `area`, second moments
    `about_y`, `about_z`, `torsion` constant, moduli `moe` and `shear`.
    """

    start: Ints
    end: Ints
    axes: Floats
    length: Floats
    area: Floats
    about_y: Floats
    about_z: Floats
    torsion: Floats
    moe: Floats
    shear: Floats

    def stiffness(self) -> Floats:
        """(m, 12, 12) in the members' own axes: start then end, movements then turns."""
        m, L = len(self.length), self.length
        k = np.zeros((m, 12, 12))
        ea, gj = self.moe * self.area / L, self.shear * self.torsion / L
        for i, value in ((0, ea), (3, gj)):
            k[:, i, i] = k[:, i + 6, i + 6] = value
            k[:, i, i + 6] = k[:, i + 6, i] = -value
        for move, turn, inertia, way in ((1, 5, self.about_z, 1.0), (2, 4, self.about_y, -1.0)):
            ei = self.moe * inertia
            a, b, c, d = 12 * ei / L**3, way * 6 * ei / L**2, 4 * ei / L, 2 * ei / L
            k[:, move, move] = k[:, move + 6, move + 6] = a
            k[:, move, move + 6] = k[:, move + 6, move] = -a
            for other, sign in ((turn, 1.0), (turn + 6, 1.0)):
                k[:, move, other] = k[:, other, move] = sign * b
                k[:, move + 6, other] = k[:, other, move + 6] = -sign * b
            k[:, turn, turn] = k[:, turn + 6, turn + 6] = c
            k[:, turn, turn + 6] = k[:, turn + 6, turn] = d
        return k

    def turned(self) -> Floats:
        """(m, 12, 12): takes the frame's axes to the members' own."""
        turn = np.zeros((len(self.length), 12, 12))
        for i in range(0, 12, 3):
            turn[:, i : i + 3, i : i + 3] = self.axes
        return turn


@dataclass(frozen=True, kw_only=True, eq=False)
class Joints:
    """Springs (j) between nodes `one` and `other` (GROUND for the ground) that act at `at` (j, 3).

    `stiffness` (j, 6): against movement along and turning about the frame's axes. `pushes` (j, 3):
    0 for a joint that holds both ways, else a unit direction in which `one` may move away from
    `other`: there the joint only pushes.
    """

    one: Ints
    other: Ints
    at: Floats
    stiffness: Floats
    pushes: Floats


@dataclass(frozen=True, kw_only=True, eq=False)
class Solution:
    """What loads do to a frame, per load case (c).

    `moved` (n, 6, c): every node. `joint_force` (j, 6, c): what each joint does to its node `one`,
    at its point of contact, on the frame's axes. `ends`, `end_forces` (m, 12, c): movements of
    each member's ends and what the nodes do to them, on the member's own axes. `open` (j, c):
    joints that have let go.
    """

    moved: Floats
    joint_force: Floats
    ends: Floats
    end_forces: Floats
    open: Bools


@dataclass(frozen=True, kw_only=True, eq=False)
class Frame:
    """Nodes (n, 3), mm, the members between them and the joints that hold them."""

    nodes: Floats
    members: Members
    joints: Joints

    def solve(
        self,
        loads: LineLoads,
        node_loads: Floats,
        released: Bools,
        raised: Floats | None = None,
    ) -> Solution:
        """Movements and forces under loads along members and `node_loads` (n, 6, c), N and N mm.

        `released` (j, c) names joints that do not act in a case; `raised` (j, 3, c) mm tells how
        far the ground of a joint is moved in it, such as the floor under a foot that a block is
        put under. Unstable: a node that nothing holds.
        """
        n, cases = len(self.nodes), node_loads.shape[2]
        springs = Springs(
            arms=self._arms(), unknowns=self._joint_unknowns(),
            stiffness=self.joints.stiffness, pushes=self.joints.pushes,
            raised=np.zeros((len(released), 6, cases)),
        )  # fmt: skip
        if raised is not None:
            springs.raised[:, :3] = raised
        turn, own = self.members.turned(), self.members.stiffness()
        met = pattern(np.concatenate([self._member_unknowns(), springs.unknowns]), 6 * n)
        stiff = met.added(self._blocks(turn, own, springs))
        shake = Shake(met.of_unknowns(stiff))
        fixed = at_ends(loads, self.members.length, cases)
        unknowns = self._member_unknowns().ravel()
        on_members = np.matmul(np.swapaxes(turn, 1, 2), fixed).reshape(-1, cases)
        on_nodes = summed_rows(unknowns, on_members, 6 * n) + springs.pull_of_raised(6 * n)
        on_nodes += node_loads.reshape(6 * n, cases)
        backward = met.factored(stiff)
        whole = backward(np.concatenate([on_nodes, shake.push], axis=1))
        shake.refuse_loose(whole[:, cases:])
        moved, out = springs.settled(backward, whole, shake, released)
        ends = np.matmul(turn, moved[unknowns].reshape(-1, 12, cases))
        held = np.where(out, 0.0, self.joints.stiffness[:, :, None])
        return Solution(
            moved=moved.reshape(n, 6, cases),
            joint_force=held * springs.past_under_load(moved),
            ends=ends,
            end_forces=np.matmul(own, ends) - fixed,
            open=np.asarray(out[:, :3].any(axis=1)),
        )

    # ------------------------------------------------------------ stiffness

    def _member_unknowns(self) -> Ints:
        """(m, 12): the rows of each member's ends among all unknowns."""
        both = np.stack([self.members.start, self.members.end], 1)
        return np.asarray((both[:, :, None] * 6 + np.arange(6)).reshape(-1, 12))

    def _joint_unknowns(self) -> Ints:
        """(j, 12): the rows of both nodes; the ground's are beyond the last."""
        both = np.stack([self.joints.one, self.joints.other], 1)
        both = np.where(both == GROUND, len(self.nodes), both)
        return np.asarray((both[:, :, None] * 6 + np.arange(6)).reshape(-1, 12))

    def _arms(self) -> Floats:
        """(j, 6, 12): how far `other` moves past `one` at their contact, from both movements."""
        joints = self.joints
        arms = np.zeros((len(joints.one), 6, 12))
        for sign, node, column in ((-1.0, joints.one, 0), (1.0, joints.other, 6)):
            arm = np.where((node == GROUND)[:, None], 0.0, joints.at - self.nodes[node])
            arms[:, range(6), range(column, column + 6)] = sign
            x, y, z = sign * arm.T
            arms[:, 0, column + 4], arms[:, 0, column + 5] = z, -y
            arms[:, 1, column + 3], arms[:, 1, column + 5] = -z, x
            arms[:, 2, column + 3], arms[:, 2, column + 4] = y, -x
        return arms

    def _blocks(self, turn: Floats, own: Floats, springs: Springs) -> Floats:
        """(m + j, 12, 12): what each member and each joint adds to the stiffness."""
        arms = springs.arms
        of_members = np.matmul(np.swapaxes(turn, 1, 2), np.matmul(own, turn))
        of_joints = np.matmul(np.swapaxes(arms, 1, 2) * springs.stiffness[:, None, :], arms)
        return np.concatenate([of_members, of_joints])
