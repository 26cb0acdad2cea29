"""What a maker does without a plan: the rules that a planner must never do worse than."""

from __future__ import annotations

from itertools import groupby

from model.cutting.record import Piece, Stock, Task

Laid = tuple[float, float]  # along the sheet, across it


def shelf_first_fit(task: Task) -> int | None:
    """Sheets that a shelf rule takes: the widest first, each on the first shelf with room for it.

    Only the first size of stock is used; None where a piece does not fit it, or pieces form rows.
    """
    stock = task.stock[0]
    room = _room(stock)
    laid = [_laid(piece, stock, room) for piece in task.pieces for _ in range(piece.quantity)]
    if None in laid or any(piece.row for piece in task.pieces) or stock.bad:
        return None
    sheets: list[list[list[float]]] = []  # per sheet its shelves: [left along, width]
    for along, across in sorted((each for each in laid if each), key=lambda each: -each[1]):
        if not _on_a_shelf(sheets, along, across, task.kerf) and not _on_a_sheet(
            sheets, along, across, task.kerf, room
        ):
            sheets.append([[room[0] - along - task.kerf, across]])
    return len(sheets)


def _room(stock: Stock) -> Laid:
    trim = stock.trim
    return stock.length - trim.left - trim.right, stock.width - trim.lower - trim.upper


def _laid(piece: Piece, stock: Stock, room: Laid) -> Laid | None:
    """How a piece lies: lengthwise where it may and can."""
    long, short = max(piece.length, piece.width), min(piece.length, piece.width)
    free = piece.grain == "free" or not stock.has_grain
    as_is = (piece.width, piece.length) if piece.grain == "width" else (piece.length, piece.width)
    ways = [(long, short), (short, long)] if free else [as_is]
    return next((way for way in ways if way[0] <= room[0] and way[1] <= room[1]), None)


def _on_a_shelf(sheets: list[list[list[float]]], along: float, across: float, kerf: float) -> bool:
    for shelves in sheets:
        for shelf in shelves:
            if shelf[0] >= along and shelf[1] >= across:
                shelf[0] -= along + kerf
                return True
    return False


def _on_a_sheet(
    sheets: list[list[list[float]]], along: float, across: float, kerf: float, room: Laid
) -> bool:
    for shelves in sheets:
        taken = sum(shelf[1] + kerf for shelf in shelves)
        if taken + across <= room[1]:
            shelves.append([room[0] - along - kerf, across])
            return True
    return False


def first_fit_decreasing(task: Task) -> int:
    """Sticks of the first length that the longest-first rule takes."""
    stock = task.stock[0]
    room = stock.length - stock.trim.left - stock.trim.right
    lengths = [piece.length for piece in task.pieces for _ in range(piece.quantity)]
    left: list[float] = []
    for length in sorted(lengths, reverse=True):
        at = next((i for i, each in enumerate(left) if each >= length - 1e-9), None)
        if at is None:
            left.append(room)
            at = len(left) - 1
        left[at] -= length + task.kerf
    return len(left)


def boards_first_fit(task: Task) -> float | None:
    """Area of boards that ripping board by board takes: the widest parts first, each in the first
    strip with room, the next board when none is left; None where the rack runs out.

    Boards with bad spans are passed by.
    """
    clear = [stock for stock in task.stock if not stock.bad and stock.quantity != 0]
    waiting = sorted(
        ((p.width, p.length) for p in task.pieces for _ in range(p.quantity)), reverse=True
    )
    area = 0.0
    for stock in clear:
        if not waiting:
            break
        left = _ripped(waiting, _room(stock), task.kerf)
        if len(left) < len(waiting):
            area += stock.length * stock.width
        waiting = left
    return None if waiting else area


def _ripped(waiting: list[Laid], room: Laid, kerf: float) -> list[Laid]:
    """What is left to cut after one board; parts are (width, length), the widest first."""
    shelves: list[list[list[float]]] = [[]]
    left = []
    for width, length in waiting:
        fits = length <= room[0]
        if not fits or not (
            _on_a_shelf(shelves, length, width, kerf)
            or _on_a_sheet(shelves, length, width, kerf, room)
        ):
            left.append((width, length))
    return left


def sizes(task: Task) -> int:
    """How many different sizes a task asks for."""
    return len(list(groupby(sorted((p.length, p.width) for p in task.pieces))))
