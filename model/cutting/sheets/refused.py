"""Pieces that no sheet can hold: why, and what would do."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import NamedTuple

from model.cutting.record import LeftOut, Task
from model.cutting.sheets.blank import Blank
from model.cutting.whole import Size, Whole, whole


class Cuttable(NamedTuple):
    """The task less what no sheet can hold, and sentences about the rest."""

    whole: Whole
    left_out: tuple[LeftOut, ...]
    notes: tuple[str, ...]


def fits(made: Whole, size: Size, blanks: Sequence[Sequence[Blank]]) -> bool:
    """Whether some room of some sheet holds a piece of the size."""
    return any(
        along <= x and across <= y
        for sheet, forms in zip(made.sheets, blanks, strict=True)
        for along, across in made.ways(size, sheet)
        for blank in forms
        for x, y in blank.rooms
    )


def unfit(made: Whole, blanks: Sequence[Sequence[Blank]]) -> tuple[Size, ...]:
    """The sizes that no sheet can hold."""
    return tuple(size for size in made.sizes if not fits(made, size, blanks))


def left_out(
    made: Whole, sizes: Iterable[tuple[Size, int]], is_used_up: bool
) -> tuple[LeftOut, ...]:
    """A sentence for each mark among so many units of each size, the last of the size first."""
    missing: dict[str, tuple[int, Size]] = {}
    for size, count in sizes:
        for unit in size.units[len(size.units) - count :]:
            for mark, *_ in unit.pieces:
                quantity = missing.get(mark, (0, size))[0]
                missing[mark] = quantity + 1, size
    reason = _used_up if is_used_up else _reason
    return tuple(
        LeftOut(mark, quantity, reason(made, size)) for mark, (quantity, size) in missing.items()
    )


def rows_apart(task: Task, made: Whole, sizes: Iterable[Size]) -> tuple[Whole, tuple[str, ...]]:
    """Rows that are too long for any sheet taken as single pieces, with a note for each."""
    rows = tuple(dict.fromkeys(unit.row for size in sizes for unit in size.units if unit.row))
    notes = (
        f"The pieces of row {row} are longer together than any sheet, so that they are cut one by "
        "one; their grain does not run on from one to the next."
        for row in rows
    )
    return (whole(task, frozenset(rows)) if rows else made), tuple(notes)


def _reason(made: Whole, size: Size) -> str:
    needs = _extents(made, size)
    if not made.sheets:
        return f"There is no sheet to cut it from; one of at least {needs} would do."
    if _holds(made, size.across, size.along):
        return (
            f"It fits only with its grain across the sheet's; a sheet of at least {needs} would "
            "do, or its grain must be free."
        )
    if _holds(made, size.along, size.across):
        return (
            f"It fits only over bad wood; a sheet of at least {needs} that is clear there would do."
        )
    return (
        f"It is larger than every sheet; one of at least {needs} would do, trims included, or make "
        "it of two pieces that are joined."
    )


def _used_up(made: Whole, size: Size) -> str:
    return f"The stock is used up; one more sheet of at least {_extents(made, size)} would do."


def _holds(made: Whole, along: int, across: int) -> bool:
    """Whether a piece lies within the trims of some sheet, bad spans aside."""
    return any(along <= sheet.length and across <= sheet.width for sheet in made.sheets)


def _extents(made: Whole, size: Size) -> str:
    """What a sheet must have at least, with the trims of the last kind of stock."""
    stock = made.task.stock
    trim = stock[-1].trim if stock else None
    along, across = made.mm(size.along - made.kerf), made.mm(size.across - made.kerf)
    if trim is not None:
        along, across = along + trim.left + trim.right, across + trim.lower + trim.upper
    return f"{_up(along)} x {_up(across)} mm"


def _up(length: float) -> int:
    """Whole mm that are no less."""
    return -int(-length // 1)
