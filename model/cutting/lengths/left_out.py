"""What a plan could not hold: a sentence for each mark."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Sequence

from model.cutting.lengths.lots import Lot
from model.cutting.record import LeftOut


def left_out(
    sizes: Sequence[Lot], missing: Sequence[int], reason: Callable[[Lot], str]
) -> tuple[LeftOut, ...]:
    """The last `missing` strips of each lot, by mark in the order of the lots."""
    found: dict[str, tuple[int, str]] = {}
    for lot, count in zip(sizes, missing, strict=True):
        strips = lot.strips[lot.demand - count :]
        for mark, pieces in Counter(mark for strip in strips for mark in strip.marks).items():
            before, sentence = found.get(mark, (0, ""))
            found[mark] = (before + pieces, sentence or reason(lot))
    return tuple(LeftOut(mark, count, sentence) for mark, (count, sentence) in found.items())
