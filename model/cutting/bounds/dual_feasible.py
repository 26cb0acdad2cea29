"""Dual feasible functions: other measures of length, under which long pieces weigh more.

Each gives whole weights, rises with the length, and never gives a whole less than its parts
together, up to `room` itself.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

Whole = NDArray[np.int64]

MOST_PARTS = 24


def threshold(lengths: Whole, room: int, least: int) -> Whole:
    """What leaves less than `least` takes all of the room; what is shorter than that, nothing.

    `least` up to half the room. Source: Martello, Vigo, Exact solution of the two-dimensional
    finite bin packing problem, Management Science 44(3):388-399, 1998 (from memory).
    """
    long = np.where(lengths > room - least, room, lengths)
    return np.where(lengths < least, 0, long)


def parts(lengths: Whole, room: int, count: int) -> Whole:
    """Whole parts when the room is cut in `count` + 1, unless a length is a multiple of one.

    Values times `count`. Source: u^(k) of Lueker, Bin packing with items uniformly distributed
    over intervals, FOCS 1983; in Fekete, Schepers, Mathematical Programming 91:11-31, 2001 (from
    memory).
    """
    fits, rest = np.divmod(lengths * (count + 1), room)
    return np.where(rest == 0, lengths * count, fits * room)


def steps(lengths: Whole, room: int, step: int) -> Whole:
    """Whole steps that a short piece fills, and that a long one leaves no room for.

    `step` up to half the room; values times two. Source: f2 of Carlier, Clautiaux, Moukrim, New
    reduction procedures and lower bounds for the two-dimensional bin packing problem with fixed
    orientation, Computers & Operations Research 34:2223-2250, 2007 (from memory).
    """
    short = 2 * (lengths // step)
    long = 2 * (room // step - (room - lengths) // step)
    halves = np.full_like(lengths, room // step)
    return np.where(2 * lengths < room, short, np.where(2 * lengths > room, long, halves))


def family(lengths: Whole, room: int, sizes: tuple[int, ...]) -> Whole:
    """All measures worth trying for pieces of these sizes, one a row: (measures, lengths).

    Lengths beyond the room count as the room. The first measure is length itself.
    """
    within = np.minimum(lengths, room)
    short = sorted({each for size in sizes for each in (size, room - size) if 0 < 2 * each <= room})
    rows = [
        within,
        *(threshold(within, room, least) for least in short),
        *(parts(within, room, count) for count in range(1, MOST_PARTS)),
        *(steps(within, room, step) for step in short),
    ]
    return np.array(list({row.tobytes(): row for row in rows}.values()))
