"""Which row each dimension stands in."""

from __future__ import annotations

from collections.abc import Sequence

from model.units import Mm

_HAIR: Mm = 0.01


def row_numbers(places: Sequence[tuple[Mm, ...]], levels: Sequence[int]) -> list[int]:
    """Rows, 0 the nearest, for runs whose points stand at these places along a side.

    No two runs share ground in a row, none lies farther out than a longer one over the same ground,
    and all of a level lie beyond those of a lower one. So no dimension line crosses a line that
    leads to another, unless two runs overlap in part.
    """
    spans = [(each[0], each[-1]) for each in places]
    order = sorted(
        range(len(spans)), key=lambda k: (levels[k], spans[k][1] - spans[k][0], spans[k])
    )
    numbers = [0] * len(spans)
    for position, k in enumerate(order):
        under = [
            numbers[j]
            for j in order[:position]
            if levels[j] < levels[k] or _share_ground(spans[j], spans[k])
        ]
        numbers[k] = max(under, default=-1) + 1
    return numbers


def _share_ground(one: tuple[Mm, Mm], other: tuple[Mm, Mm]) -> bool:
    return one[0] < other[1] - _HAIR and other[0] < one[1] - _HAIR
