"""Why a strip found no board, and what would do."""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial

from model.cutting.boards.rack import Blank, Board
from model.cutting.lengths.left_out import left_out
from model.cutting.lengths.lots import NM, Lot
from model.cutting.lengths.reasons import up
from model.cutting.record import LeftOut


def reasons(
    boards: Sequence[Board], sizes: Sequence[Lot], missing: Sequence[int]
) -> tuple[LeftOut, ...]:
    """The strips that have no board, with a sentence for each mark."""
    blanks = [blank for board in boards for form in board.forms for blank in form]
    wanted = sum(
        lot.area * count
        for lot, count in zip(sizes, missing, strict=True)
        if any(holds(blank, lot) for blank in blanks)
    )
    return left_out(sizes, missing, partial(_reason, blanks=blanks, wanted=wanted))


def holds(blank: Blank, lot: Lot) -> bool:
    """Whether a blank is long and wide enough, its bad spans aside."""
    return blank.length >= lot.along and blank.width >= lot.across


def _reason(lot: Lot, blanks: Sequence[Blank], wanted: int) -> str:
    size = f"{up(lot.along)} x {up(lot.across)} mm"
    if not blanks:
        return f"There is no board to cut it from; one with at least {size} clear would do."
    longest = max(blank.length for blank in blanks)
    if lot.along > longest:
        return (
            f"It is {up(lot.along)} mm long to saw, and the longest clear length of any board is "
            f"{longest // NM} mm; a board with at least {size} clear would do."
        )
    widest = max(blank.width for blank in blanks if blank.length >= lot.along)
    if lot.across > widest:
        return (
            f"It is {up(lot.across)} mm wide to saw, and no board that is long enough is wider "
            f"than {widest // NM} mm; glue it up from strips, or add a board with at least {size} "
            "clear."
        )
    return (
        f"The boards are used up; boards with at least {size} clear, {wanted / NM**2 / 1e6:.2f} m² "
        "of them and more for waste, would do."
    )
