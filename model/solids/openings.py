"""Openings that are left between pieces, as they are seen from in front."""

from __future__ import annotations

from functools import lru_cache

import numpy as np

from model.parts.pieces import Bools, Floats
from model.units import Mm

_TENTH = 1  # decimals of a mm: openings that differ by less are one, narrower ones are joints


def openings(low: Floats, high: Floats) -> tuple[Mm, ...]:
    """The widths of all openings that wood encloses on four sides, narrowest first, mm.

    `low`, `high` (b, 2) are the corners of the boxes in the plane looked at. An opening is as wide
    as the largest ball that could pass anywhere in it: the lesser of its two clear sizes there.
    """
    return _openings(low.tobytes(), high.tobytes())


@lru_cache(maxsize=64)
def _openings(low_bytes: bytes, high_bytes: bytes) -> tuple[Mm, ...]:
    low = np.frombuffer(low_bytes).reshape(-1, 2)
    high = np.frombuffer(high_bytes).reshape(-1, 2)
    if not len(low):
        return ()
    lines = [np.unique(np.concatenate([low[:, a], high[:, a]])) for a in range(2)]
    wood = _filled(lines, low, high)
    across = _clear(wood, lines[0])
    up = _clear(wood.T, lines[1]).T
    free = np.minimum(across, up)[~wood & np.isfinite(across) & np.isfinite(up)]
    return tuple(width for width in np.unique(free.round(_TENTH)).tolist() if width)


def _filled(lines: list[Floats], low: Floats, high: Floats) -> Bools:
    """Which cells between the lines hold wood: (across, up)."""
    wood = np.zeros((len(lines[0]) - 1, len(lines[1]) - 1), bool)
    starts = [np.searchsorted(lines[a], low[:, a]).tolist() for a in range(2)]
    ends = [np.searchsorted(lines[a], high[:, a]).tolist() for a in range(2)]
    for a, b, c, d in zip(*starts, *ends, strict=True):
        wood[a:c, b:d] = True
    return wood


def _clear(wood: Bools, line: Floats) -> Floats:
    """For every cell how far wood is from wood along the first axis; inf where one side is open."""
    before = np.maximum.accumulate(np.where(wood, line[1:, None], -np.inf), axis=0)
    after = np.minimum.accumulate(np.where(wood, line[:-1, None], np.inf)[::-1], axis=0)[::-1]
    return np.asarray(after - before)
