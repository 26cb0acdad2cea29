"""Which entries of a frame's stiffness are not zero, and the order in which it is best factored.

Both depend only on what meets what. While a slider is dragged that stays the same and only figures
move, so that they are found once and kept.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

import numpy as np
import numpy.typing as npt

Floats = npt.NDArray[np.float64]
Ints = npt.NDArray[np.intp]
Bools = npt.NDArray[np.bool_]

HAIR = 1e-12  # share of a stiffness that stays where it is taken away, so that nothing is singular


@dataclass(frozen=True, kw_only=True, eq=False)
class Pattern:
    """The sparse matrix of `size` unknowns that blocks (b, 12, 12) add up to.

    `kept` tells which entries of the blocks are in it (the ground's are not), `slot` where each of
    these goes, `diagonal` where the diagonal lies. `rank` (size,): the place of each unknown in the
    order of factoring.
    """

    size: int
    kept: Bools
    slot: Ints
    indices: npt.NDArray[np.int32]
    pointers: npt.NDArray[np.int32]
    diagonal: Ints
    rank: Ints

    def added(self, blocks: Floats) -> Floats:
        """The entries of the matrix, from its blocks."""
        added = np.bincount(self.slot, blocks.ravel()[self.kept], len(self.indices))
        return np.asarray(added, float)

    def factored(self, entries: Floats) -> Callable[[Floats], Floats]:
        """A function that solves the matrix for right-hand sides (size, c), in the unknowns' order.

        An exactly singular one is held by a hair: shake what it gives.
        """
        from scipy.sparse import csc_matrix  # here: most commands need none, and it loads slowly
        from scipy.sparse.linalg import splu

        # Small panels and supernodes: a bed has few unknowns, and is factored a fifth quicker so.
        how = {"permc_spec": "NATURAL", "diag_pivot_thresh": 0.0, "relax": 1, "panel_size": 4}
        shape, options = (self.size, self.size), {"SymmetricMode": True}

        def of(data: Floats) -> Any:
            return splu(
                csc_matrix((data, self.indices, self.pointers), shape), options=options, **how
            )

        try:
            factor = of(entries)
        except RuntimeError:
            held = entries.copy()
            held[self.diagonal] *= 1 + HAIR
            factor = of(held)
        order = np.argsort(self.rank)

        def backward(right: Floats) -> Floats:
            return np.asarray(factor.solve(right[order])[self.rank])

        return backward

    def of_unknowns(self, entries: Floats) -> Floats:
        """The diagonal, in the unknowns' order: (size,)."""
        return np.asarray(entries[self.diagonal][self.rank])


def pattern(unknowns: Ints, size: int) -> Pattern:
    """The pattern of blocks whose rows and columns are `unknowns` (b, 12); those from `size` on are
    the ground's.
    """
    return _pattern(np.ascontiguousarray(unknowns, np.int32).tobytes(), size)


@lru_cache(maxsize=8)
def _pattern(unknowns: bytes, size: int) -> Pattern:
    from scipy.sparse import csc_matrix
    from scipy.sparse.linalg import splu

    at = np.frombuffer(unknowns, np.int32).astype(np.intp).reshape(-1, 12)
    plain = _placed(at, size, np.arange(size))
    # The order of least fill looks at the pattern only: any sound figures will do.
    ones = plain.added(np.broadcast_to(np.eye(12) * 13 + 1, (len(at), 12, 12)))
    ones[plain.diagonal] += 1.0
    found = splu(
        csc_matrix((ones, plain.indices, plain.pointers), (size, size)),
        permc_spec="MMD_AT_PLUS_A",
        diag_pivot_thresh=0.0,
        options={"SymmetricMode": True},
    )
    return _placed(at, size, found.perm_c.astype(np.intp))


def _placed(at: Ints, size: int, rank: Ints) -> Pattern:
    ranked = np.concatenate([rank, np.full(int(at.max(initial=0)) + 1, size)])[at]
    shape = (len(at), 12, 12)
    row = np.broadcast_to(ranked[:, :, None], shape).ravel()
    column = np.broadcast_to(ranked[:, None, :], shape).ravel()
    kept = (row < size) & (column < size)
    diagonal = np.arange(size) * (size + 1)  # there even where nothing stiffens an unknown
    filled = np.concatenate([column[kept] * size + row[kept], diagonal])
    cells, slot = np.unique(filled, return_inverse=True)
    columns, rows = np.divmod(cells, size)
    return Pattern(
        size=size,
        kept=kept,
        slot=slot[: len(slot) - size],
        indices=rows.astype(np.int32),
        pointers=np.searchsorted(columns, np.arange(size + 1)).astype(np.int32),
        diagonal=np.searchsorted(cells, diagonal),
        rank=rank,
    )
