"""Straight elastic members in space, joined by springs: the direct stiffness method.

Every node has six unknowns: three movements along x, y, z and three turns about them. Members are
Euler-Bernoulli beams: shear sag is left out, because bed parts are slender. Joints are springs
between two nodes, or a node and the ground, that act at a point of contact; the arms from the nodes
to that point are rigid. All load cases are solved together. A joint that only pushes lets go in the
cases that would pull at it.

Units: mm, N, N mm, MPa. Source of the method: textbooks on matrix structural analysis; the member
stiffness is the cubic beam element.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import cast

import numpy as np
import numpy.typing as npt

from model.mechanics.line_loads import LineLoads, at_ends

Floats = npt.NDArray[np.float64]
Ints = npt.NDArray[np.intp]
Bools = npt.NDArray[np.bool_]

GROUND = -1
_FLOWN = 1e4  # mm: no frame of ours moves ten metres, but one that nothing holds moves farther
_TOUCH = 1e-7  # mm: joints nearer than this are closed
_TRIES = 12  # rounds in which joints let go or close again; a bed settles in two or three


class Unstable(Exception):
    """A frame of which some part is held by nothing; `node` (index) moves with it."""

    def __init__(self, node: int) -> None:
        super().__init__(f"Node {node} is held by nothing.")
        self.node = node


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

    def solve(self, loads: LineLoads, node_loads: Floats, released: Bools) -> Solution:
        """Movements and forces under loads along members and `node_loads` (n, 6, c), N and N mm.

        `released` (j, c) names joints that do not act in a case, such as the floor under a foot
        that is lifted. Unstable: a node that nothing holds.
        """
        n, cases = len(self.nodes), node_loads.shape[2]
        turn, own, arms = self.members.turned(), self.members.stiffness(), self._arms()
        fixed = at_ends(loads, self.members.length, cases)
        unknowns = self._member_unknowns()
        right = np.zeros((6 * n, cases + 1))
        right[:, :cases] = node_loads.reshape(6 * n, cases)
        np.add.at(
            right[:, :cases],
            unknowns.ravel(),
            np.matmul(np.swapaxes(turn, 1, 2), fixed).reshape(-1, cases),
        )
        right[:, cases] = 1.0  # a shake: what nothing holds flies off, even where no load is
        backward = self._factored(turn, own, arms)
        shaken = backward(right)
        self._refuse_loose(shaken)
        moved, is_open = self._settled(backward, shaken[:, :cases], arms, released)
        ends = np.matmul(turn, moved[unknowns.ravel()].reshape(-1, 12, cases))
        return Solution(
            moved=moved.reshape(n, 6, cases),
            joint_force=np.where(
                is_open[:, None], 0.0, self._past(arms, moved) * self.joints.stiffness[:, :, None]
            ),
            ends=ends,
            end_forces=np.matmul(own, ends) - fixed,
            open=is_open,
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

    def _factored(self, turn: Floats, own: Floats, arms: Floats) -> Callable[[Floats], Floats]:
        """A function that solves the frame, all joints closed, for right-hand sides (6n, c)."""
        from scipy.sparse import coo_matrix  # here: most commands need none, and it loads slowly
        from scipy.sparse.linalg import splu

        size = 6 * len(self.nodes)
        of_members = np.matmul(np.swapaxes(turn, 1, 2), np.matmul(own, turn))
        of_joints = np.matmul(np.swapaxes(arms, 1, 2) * self.joints.stiffness[:, None, :], arms)
        blocks = np.concatenate([of_members, of_joints])
        at = np.concatenate([self._member_unknowns(), self._joint_unknowns()])
        row = np.broadcast_to(at[:, :, None], blocks.shape).ravel()
        column = np.broadcast_to(at[:, None, :], blocks.shape).ravel()
        kept = (row < size) & (column < size)
        stiff = coo_matrix((blocks.ravel()[kept], (row[kept], column[kept])), (size, size)).tocsc()
        try:
            factor = splu(
                stiff,
                permc_spec="MMD_AT_PLUS_A",
                diag_pivot_thresh=0.0,
                options={"SymmetricMode": True},
            )
        except RuntimeError:  # exactly singular: some node has no stiffness at all
            raise Unstable(int(np.argmin(stiff.diagonal())) // 6) from None
        return cast(Callable[[Floats], Floats], factor.solve)

    def _refuse_loose(self, moved: Floats) -> None:
        far = np.abs(np.nan_to_num(moved, nan=np.inf)).max(axis=1)
        if far.max() > _FLOWN:
            raise Unstable(int(np.argmax(far)) // 6)

    # ------------------------------------------------------------ joints that only push

    def _past(self, arms: Floats, moved: Floats) -> Floats:
        """How far `other` goes past `one` at each joint: (j, 6, c)."""
        padded = np.concatenate([moved, np.zeros((6, moved.shape[1]))])
        both = padded[self._joint_unknowns().ravel()].reshape(-1, 12, moved.shape[1])
        return np.asarray(np.matmul(arms, both))

    def _settled(
        self, backward: Callable[[Floats], Floats], closed: Floats, arms: Floats, released: Bools
    ) -> tuple[Floats, Bools]:
        """Movements once joints that would pull have let go: (6n, c), and which are open (j, c)."""
        way = self.joints.pushes
        pushing = np.any(way != 0, axis=1)
        is_open, moved = released.copy(), closed
        springs = _Springs(self, backward, arms)
        unsettled = np.ones(released.shape[1], bool)
        for _ in range(_TRIES):
            if is_open[:, unsettled].any():
                moved = springs.without(is_open, closed)
            past = self._past(arms, moved)
            apart = -np.einsum("ja,jac->jc", way, past[:, :3])  # how far one has gone from other
            wanted = released | (pushing[:, None] & (apart > _TOUCH))
            unsettled = np.any(wanted != is_open, axis=0)
            if not unsettled.any():
                break
            is_open = wanted
        return moved, is_open


class _Springs:
    """Takes joints out of a frame that is factored with all of them, case by case.

    Source: the Sherman-Morrison-Woodbury formula.
    """

    def __init__(self, frame: Frame, backward: Callable[[Floats], Floats], arms: Floats) -> None:
        self._backward, self._arms, self._size = backward, arms, 6 * len(frame.nodes)
        self._stiffness, self._unknowns = frame.joints.stiffness, frame._joint_unknowns()
        self._place: dict[int, int] = {}  # joint -> its six columns, counted in sixes
        self._pull = self._give = np.zeros((self._size, 0))
        self._mutual = np.zeros((0, 0))

    def without(self, is_open: Bools, closed: Floats) -> Floats:
        """Movements (6n, c) without the open joints of each case, from those with all closed."""
        self._prepare(np.flatnonzero(is_open.any(axis=1)).tolist())
        moved = closed.copy()
        for case in np.flatnonzero(is_open.any(axis=0)).tolist():
            joints = np.flatnonzero(is_open[:, case])
            rows, soft = self._rows(joints)
            inner = np.diag(soft) - self._mutual[np.ix_(rows, rows)]
            try:
                let_go = np.linalg.solve(inner, self._pull[:, rows].T @ closed[:, case])
            except np.linalg.LinAlgError:
                raise Unstable(int(self._unknowns[joints[0], 0]) // 6) from None
            moved[:, case] += self._give[:, rows] @ let_go
        return moved

    def _prepare(self, joints: list[int]) -> None:
        """Find once how the frame gives to a pull at each joint."""
        new = [joint for joint in joints if joint not in self._place]
        if not new:
            return
        for joint in new:
            self._place[joint] = len(self._place)
        pull = np.zeros((self._size + 6, 6 * len(new)))  # the last six rows are the ground's
        for i, joint in enumerate(new):
            pull[self._unknowns[joint], 6 * i : 6 * i + 6] = self._arms[joint].T
        self._pull = np.concatenate([self._pull, pull[: self._size]], axis=1)
        self._give = np.concatenate([self._give, self._backward(pull[: self._size])], axis=1)
        self._mutual = self._pull.T @ self._give

    def _rows(self, joints: Ints) -> tuple[Ints, Floats]:
        """The columns of some joints' springs, and how soft each spring is."""
        stiff = self._stiffness[joints].ravel()
        at = np.array([self._place[joint] for joint in joints.tolist()])
        rows = (at[:, None] * 6 + np.arange(6)).ravel()
        return rows[stiff > 0], 1 / stiff[stiff > 0]
