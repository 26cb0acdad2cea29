"""Can a moving front squeeze a finger against what stands beside it? Asked of every row."""

import numpy as np

from model.brief.loads import SleepersAre
from model.checks.record import Finding, check
from model.checks.safety.banded import worst_banded
from model.parts.pieces import Floats, Ints, Pieces
from model.units import Count, Mm

YARDSTICK = "EN 14749 and EN 581-1: storage furniture, tables and seats; yardsticks for a drawer"

FRONTS = {
    row: frozenset(f"{row}.front_{kind}" for kind in ("slabs", "stiles", "rails", "panels"))
    for row in ("left", "right", "foot")
}


@check(
    "safety",
    "Fronts squeeze no finger beside them",
    about="front_gap",
    source=YARDSTICK,
    remedies=("overlay", "inset_reveal", "front_gap_least"),
)
def fronts_squeeze_nobody(
    pieces: Pieces, drawer_count: Count, row_name: str, sleepers_are: SleepersAre
) -> Finding | None:
    """A finger beside a closing front is squeezed, unless the gap is too narrow for it or roomy.

    Measured from the edges of each front to what stands next to it within its thickness: rail,
    stile, post or the next front.
    """
    if not drawer_count:
        return None
    return worst_banded(edge_gaps(pieces, row_name), "moving", sleepers_are, "a gap beside a front")


def edge_gaps(pieces: Pieces, row: str) -> tuple[Mm, ...]:
    """From the fronts of a row's drawers to what stands next beside, under and over each, mm."""
    low, high, drawer = _fronts(pieces, row)
    if not len(drawer):
        return ()
    out, beside, up = (1, 0, 2) if row == "foot" else (0, 1, 2)
    # All fronts of a row stand in one plane: what does not reach into it meets none of them.
    level = (pieces.lo[:, out] < high[0, out]) & (pieces.hi[:, out] > low[0, out])
    near = np.flatnonzero(level)
    other = pieces.group[pieces.piece[near]] != drawer[:, None]
    before = {a: low[:, a, None] - pieces.hi[near, a] for a in (beside, up)}  # (fronts, near)
    behind = {a: pieces.lo[near, a] - high[:, a, None] for a in (beside, up)}
    found: set[Mm] = set()
    for along, across in ((beside, up), (up, beside)):
        meets = other & (before[across] < 0) & (behind[across] < 0)
        for gap in (before[along], behind[along]):
            nearest = np.where(meets & (gap >= 0), gap, np.inf).min(axis=1, initial=np.inf)
            found.update(round(each, 1) for each in nearest.tolist() if each < np.inf)
    return tuple(sorted(found))


def _fronts(pieces: Pieces, row: str) -> tuple[Floats, Floats, Ints]:
    """Over all corners of the front of each drawer of a row, and the drawer's group."""
    of_front = np.array([rule in FRONTS[row] for rule in pieces.rules])
    own = np.flatnonzero(of_front[pieces.rule] & (pieces.group > 0))
    own = own[np.argsort(pieces.group[own], kind="stable")]
    if not len(own):
        return np.zeros((0, 3)), np.zeros((0, 3)), own
    start = np.flatnonzero(np.diff(pieces.group[own], prepend=-1))
    low, high = pieces.bounds
    return (
        np.minimum.reduceat(low[own], start),
        np.maximum.reduceat(high[own], start),
        pieces.group[own[start]],
    )
