"""Why a strip found no stick, and what would do."""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial

from model.cutting.lengths.left_out import left_out
from model.cutting.lengths.lots import NM, Lot
from model.cutting.lengths.sticks import Kind
from model.cutting.record import LeftOut


def reasons(
    kinds: Sequence[Kind], sizes: Sequence[Lot], missing: Sequence[int]
) -> tuple[LeftOut, ...]:
    """The strips that have no stick, with a sentence for each mark."""
    longest = max((high - low for kind in kinds for low, high in kind.segments), default=0)
    wanted = sum(
        lot.along * count for lot, count in zip(sizes, missing, strict=True) if lot.along <= longest
    )
    return left_out(sizes, missing, partial(_reason, longest=longest, wanted=wanted))


def _reason(lot: Lot, longest: int, wanted: int) -> str:
    length = up(lot.along)
    if not longest:
        return f"There is no stock to cut it from; a length of at least {length} mm would do."
    if lot.along > longest:
        return (
            f"It is {length} mm long to saw, and the longest clear length is "
            f"{longest // NM} mm; a length with at least {length} mm clear would do."
        )
    return (
        f"The stock is used up; lengths of at least {length} mm, {up(wanted)} mm in all and more "
        "for kerfs and ends, would do."
    )


def up(whole: int) -> int:
    """Whole mm that are no less."""
    return -(-whole // NM)
