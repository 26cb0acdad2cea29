"""Joints that only push: which of them let go in a load case, and how the frame moves then.

The frame is solved once with all its joints. Springs are taken out of it case by case by the
Sherman-Morrison-Woodbury formula: how the whole frame moves, and how it gives where springs no
longer hold. Which let go is a linear complementarity problem, settled by principal pivots: all at
once while that helps, then one by one, always the last, which comes to an end (K. G. Murty, 1974,
from memory).
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from model.mechanics.loose import Shake, Unstable
from model.mechanics.pattern import HAIR

Floats = npt.NDArray[np.float64]
Ints = npt.NDArray[np.intp]
Bools = npt.NDArray[np.bool_]
Backward = Callable[[Floats], Floats]

_PULL = 0.01  # N: what a joint that only pushes may pull before it lets go, a gram's weight
_TOGETHER = 8  # rounds in which all joints let go and close as they like; a bed needs two or three
_ROUNDS = 80
_NUDGE = 1e-6  # of the shake, about 1e-3 N: what balances on an edge falls to one side of it


@dataclass(frozen=True, kw_only=True, eq=False)
class Springs:
    """Joints (j) as the frame's unknowns see them.

    `arms` (j, 6, 12): how far `other` goes past `one` at the joint, from the movements of both
    nodes, whose rows among all unknowns are `unknowns` (j, 12); the ground's are the last six,
    which stay. `stiffness` (j, 6). `pushes` (j, 3): the way out of a joint that only pushes, or 0.
    `raised` (j, 6, c): how far the far side of a joint is moved in a case, whatever the load.
    """

    arms: Floats
    unknowns: Ints
    stiffness: Floats
    pushes: Floats
    raised: Floats

    def past(self, moved: Floats) -> Floats:
        """How far `other` goes past `one` at each joint: (j, 6, c), from movements (6n, c)."""
        padded = np.concatenate([moved, np.zeros((6, moved.shape[1]))])
        both = padded[self.unknowns.ravel()].reshape(-1, 12, moved.shape[1])
        return np.asarray(np.matmul(self.arms, both))

    def past_under_load(self, moved: Floats) -> Floats:
        """The same in the load cases, with how far the far side is raised."""
        return self.past(moved) + self.raised

    def pull_of_raised(self, size: int) -> Floats:
        """What raised joints do to the unknowns: (size, c)."""
        found = np.zeros((size + 6, self.raised.shape[2]))
        joints = np.flatnonzero(self.raised.any(axis=(1, 2)))
        force = self.stiffness[joints, :, None] * self.raised[joints]
        put = -np.matmul(np.swapaxes(self.arms[joints], 1, 2), force)
        np.add.at(found, self.unknowns[joints], put)
        return found[:size]

    def settled(
        self, backward: Backward, moved: Floats, shake: Shake, released: Bools
    ) -> tuple[Floats, Bools]:
        """Movements (6n, c) once joints that would pull have let go, and the springs (j, 6, c) that
        act in no way then: all of a joint that is `released` (j, c), the push of one that let go.

        `backward` solves the frame with all joints; `moved` (6n, c + 1) is what it gave for the
        loads and, last, for the shake. Unstable: a node that nothing holds in some case.
        """
        frame = _TakenOut(self, backward, moved)
        firm = np.einsum("ja,ja->j", self.pushes**2, self.stiffness[:, :3])[:, None]
        slack = np.divide(_PULL, firm, out=np.full(firm.shape, np.inf), where=firm > 0)
        push = np.concatenate([self.pushes != 0, np.zeros_like(self.pushes, bool)], axis=1)
        lifted = np.zeros_like(released)
        for turn in range(_ROUNDS):
            out = released[:, None] | (lifted[:, None] & push[:, :, None])
            frame.take(out)
            apart = -np.einsum("ja,jac->jc", self.pushes, frame.past()[:, :3])
            restless = ~released & (lifted != (apart > np.where(lifted, 0.0, slack)))
            if not restless.any():
                break
            if turn >= _TOGETHER:
                restless &= np.cumsum(restless[::-1], axis=0)[::-1] == 1
            lifted = lifted ^ restless
        shake.refuse_loose(frame.shaken())
        if restless.any():  # without end only where something is as good as loose
            raise Unstable(int(self.unknowns[np.argmax(restless.any(axis=1)), 0]) // 6)
        return frame.moved(), out


class _TakenOut:
    """A frame without some of its springs, other ones in every case."""

    def __init__(self, springs: Springs, backward: Backward, moved: Floats) -> None:
        self._springs, self._backward = springs, backward
        joints, cases = len(springs.arms), moved.shape[1] - 1
        past = springs.past(moved)
        past[:, :, :-1] += springs.raised
        self._moved, self._past = moved, past.reshape(6 * joints, -1)
        self._out = np.zeros((joints, 6, cases), bool)
        self._place = np.full(6 * joints, -1)  # of each spring of all joints among those below
        self._spring = np.zeros(0, np.intp)
        self._give = np.zeros((len(moved), 0))  # how the frame moves when they are pulled
        self._give_past = np.zeros((6 * joints, 0))
        self._let_go = np.zeros((0, 2, cases))  # what they no longer hold: of the loads, the shake

    def take(self, out: Bools) -> None:
        """Take out springs (j, 6, c), and put back all others."""
        acting = out & (self._springs.stiffness > 0)[:, :, None]
        self._prepare(np.flatnonzero(acting.any(axis=2)))
        soft = (1 + HAIR) / self._springs.stiffness.ravel()[self._spring]
        mutual = self._give_past[self._spring]
        for case in np.flatnonzero((acting != self._out).any(axis=(0, 1))).tolist():
            spring = np.flatnonzero(acting[:, :, case])
            at = self._place[spring]
            inner = np.diag(soft[at]) - mutual[at[:, None], at]
            self._let_go[:, :, case] = 0.0
            self._let_go[at, :, case] = np.linalg.solve(inner, self._past[spring][:, [case, -1]])
        self._out = acting

    def past(self) -> Floats:
        """How far `other` goes past `one` at each joint under the loads and a nudge: (j, 6, c)."""
        past = self._past[:, :-1] + _NUDGE * self._past[:, -1:]
        past += self._give_past @ (self._let_go[:, 0] + _NUDGE * self._let_go[:, 1])
        return np.asarray(past.reshape(-1, 6, past.shape[1]))

    def moved(self) -> Floats:
        """Movements under the loads: (6n, c)."""
        return np.asarray(self._moved[:, :-1] + self._give @ self._let_go[:, 0])

    def shaken(self) -> Floats:
        """Movements under the shake: (6n, c)."""
        return np.asarray(self._moved[:, -1:] + self._give @ self._let_go[:, 1])

    def _prepare(self, spring: Ints) -> None:
        """Find once how the frame gives to a pull at each spring."""
        new = spring[self._place[spring] < 0]
        if not len(new):
            return
        self._place[new] = np.arange(len(self._spring), len(self._spring) + len(new))
        self._spring = np.concatenate([self._spring, new])
        self._let_go = np.pad(self._let_go, ((0, len(new)), (0, 0), (0, 0)))
        joint, way = np.divmod(new, 6)
        pull = np.zeros((len(self._moved) + 6, len(new)))
        pull[self._springs.unknowns[joint], np.arange(len(new))[:, None]] = self._springs.arms[
            joint, way
        ]
        give = self._backward(pull[:-6])
        self._give = np.concatenate([self._give, give], axis=1)
        past = self._springs.past(give).reshape(len(self._give_past), -1)
        self._give_past = np.concatenate([self._give_past, past], axis=1)
