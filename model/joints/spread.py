"""Where several dowels, screws or bolts go along one joint."""

from __future__ import annotations

import math

from model.units import Mm


def spread(low: Mm, high: Mm, *, inset: Mm, apart: Mm, least: Mm | None = None) -> tuple[Mm, ...]:
    """Evenly from `low` to `high`, the outer ones `inset` from either end, none more than `apart`.

    A joint too narrow for two, which stand at least `least` (or twice the inset) from each other,
    gets one in its middle.
    """
    first, last = low + inset, high - inset
    if last - first < (2 * inset if least is None else least) - 1e-9:
        return ((low + high) / 2,)
    steps = max(1, math.ceil((last - first) / apart - 1e-9))
    return tuple(first + (last - first) * i / steps for i in range(steps + 1))
