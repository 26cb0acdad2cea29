"""Stretches of many lines at once: joined where they meet, and what is left between them.

A stretch is a line's number and two shares of its length, 0 at its begin and 1 at its end.
"""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from model.parts.pieces import Floats, Ints

_APART = 4.0  # between lines laid one behind the other: each needs -1 to 2
_TOUCH = 1e-9  # of a line's length


class Stretches(NamedTuple):
    """`line` (n,), and the shares (n,) at which each stretch begins and ends."""

    line: Ints
    begin: Floats
    end: Floats


def together(*many: Stretches) -> Stretches:
    """All of them in one record."""
    return Stretches(
        np.concatenate([each.line for each in many]),
        np.concatenate([each.begin for each in many]),
        np.concatenate([each.end for each in many]),
    )


def joined(stretches: Stretches) -> Stretches:
    """The same ground, covered once: in order of lines, none touching the next."""
    line, begin, end = stretches
    if not len(line):
        return stretches
    shift = line * _APART
    order = np.argsort(begin + shift, kind="stable")
    start = (begin + shift)[order]
    reach = np.maximum.accumulate((end + shift)[order])
    first = np.flatnonzero(np.concatenate([[True], start[1:] > reach[:-1] + _TOUCH]))
    last = np.append(first[1:], len(start)) - 1
    own = line[order][first]
    return Stretches(own, start[first] - own * _APART, reach[last] - own * _APART)


def left_of(count: int, taken: Stretches) -> Stretches:
    """What stretches leave of `count` whole lines."""
    every = np.arange(count)
    before, after = np.full(count, -1.0), np.full(count, 2.0)
    whole = joined(
        Stretches(
            np.concatenate([every, taken.line, every]),
            np.concatenate([before, np.clip(taken.begin, 0.0, 1.0), np.ones(count)]),
            np.concatenate([np.zeros(count), np.clip(taken.end, 0.0, 1.0), after]),
        )
    )
    same = whole.line[1:] == whole.line[:-1]
    return Stretches(whole.line[:-1][same], whole.end[:-1][same], whole.begin[1:][same])
