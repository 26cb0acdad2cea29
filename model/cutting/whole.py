"""A task for sheets in whole numbers, so that what just fits does fit, and bounds are exact.

Lengths are counted in steps of one ten-millionth of a millimetre (1/128 in and 0.01 mm are whole
numbers of them) and then divided by the largest step that all lengths of the task share. The kerf
is folded in: a piece counts its kerf on both axes, a sheet one kerf more than the room between its
trims. For cuts from edge to edge this is exact: n pieces fit beside each other when their sizes
with kerf add up to no more than the sheet's.

Read numbers as Python's whole numbers: areas may pass what 64 bits hold.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from math import gcd
from typing import NamedTuple

from model.cutting.record import Box, Measure, Piece, Stock, Task
from model.units import Mm

PER_MM = 10**7  # steps in a millimetre before they are divided
PER_COIN = 10**4  # prices are counted in ten-thousandths, so that sums are exact
MOST_COST = 10**9

Span = tuple[int, int, int, int]


class Unit(NamedTuple):
    """What lies on the sheet as one rectangle: one piece, or a row of pieces end to end.

    `pieces` are (mark, number, length, width) in mm, in the order of the row. `turned` when their
    length lies across the sheet while the unit lies as its `Size` says.
    """

    pieces: tuple[tuple[str, int, Mm, Mm], ...]
    turned: bool
    row: str = ""
    stays_whole: bool = False

    @property
    def marks(self) -> tuple[str, ...]:
        """Its marks, each once, in order."""
        return tuple(dict.fromkeys(mark for mark, *_ in self.pieces))


class Size(NamedTuple):
    """Units of one size: `along` the sheet's grain and `across` it, a kerf added to both.

    `turnable` when it may lie either way on any sheet. On sheets without grain everything may.
    """

    along: int
    across: int
    turnable: bool
    units: tuple[Unit, ...]

    @property
    def demand(self) -> int:
        return len(self.units)

    @property
    def area(self) -> int:
        return self.along * self.across


class Sheet(NamedTuple):
    """Stock of one kind: the room between its trims, a kerf added to both sides.

    `stock` counts in `Task.stock`; `cost` is that of one (0 when on hand); `quantity` None is as
    many as needed. `bad` are spans inside the room, in its axes, without any kerf.
    """

    stock: int
    length: int
    width: int
    quantity: int | None
    cost: int
    on_hand: bool
    has_grain: bool
    bad: tuple[Span, ...] = ()

    @property
    def area(self) -> int:
        return self.length * self.width


@dataclass(frozen=True, kw_only=True)
class Whole:
    """The task in whole numbers. A cost of 1 is `worth` of the plan's `measure`."""

    task: Task
    sizes: tuple[Size, ...]
    sheets: tuple[Sheet, ...]
    kerf: int
    step: int
    measure: Measure
    worth: float

    def mm(self, count: int) -> Mm:
        """A whole number as a length."""
        return count * self.step / PER_MM

    def count(self, length: Mm) -> int:
        """A length as a whole number, a kerf or a trim of the task among others."""
        return _steps(length) // self.step

    def ways(self, size: Size, sheet: Sheet) -> tuple[tuple[int, int], ...]:
        """How a size may lie on a sheet that has room for it: (along x, along y)."""
        along, across = size.along, size.across
        asked = [(along, across)]
        if along != across and (size.turnable or not sheet.has_grain):
            asked.append((across, along))
        return tuple(way for way in asked if way[0] <= sheet.length and way[1] <= sheet.width)

    def only(self, sizes: tuple[Size, ...]) -> Whole:
        """The same task for these sizes alone."""
        return replace(self, sizes=sizes)


def whole(task: Task, apart: frozenset[str] = frozenset()) -> Whole:
    """The task in whole numbers; the rows named in `apart` are taken as single pieces.

    Sizes are in the order of the task. Stock of which there is none is left out.
    """
    kerf = _steps(task.kerf)
    measure, worth, costs = _costs(task.stock)
    grained = any(each.has_grain for each in task.stock)
    raw = _sizes(_units(task.pieces, apart), kerf, grained)
    sheets = [
        _sheet(index, each, kerf, costs[index])
        for index, each in enumerate(task.stock)
        if each.quantity is None or each.quantity > 0
    ]
    sheets = [each for each in sheets if each.length > kerf and each.width > kerf]
    trims = [_steps(each) for sheet in sheets for each in task.stock[sheet.stock].trim]
    step = _shared_step(raw, sheets, [kerf, *trims])
    return Whole(
        task=task,
        sizes=tuple(
            each._replace(along=each.along // step, across=each.across // step) for each in raw
        ),
        sheets=tuple(_divided(each, step) for each in sheets),
        kerf=kerf // step,
        step=step,
        measure=measure,
        worth=worth,
    )


# ---------------------------------------------------------------- pieces


def _units(pieces: tuple[Piece, ...], apart: frozenset[str]) -> Iterator[tuple[Piece, Unit]]:
    """Each unit with a piece that stands for its width and grain."""
    rows: dict[tuple[str, Mm, str], list[Piece]] = {}
    for piece in pieces:
        if piece.row and piece.row not in apart:
            rows.setdefault((piece.row, piece.width, piece.grain), []).append(piece)
    for piece in pieces:
        if not piece.row or piece.row in apart:
            for number in range(piece.first, piece.first + piece.quantity):
                yield piece, Unit(((piece.mark, number, piece.length, piece.width),), False)
            continue
        members = rows.pop((piece.row, piece.width, piece.grain), [])
        if cut := tuple(each for member in members for each in _numbered(member)):
            stays = any(each.stays_whole for each in members)
            yield piece, Unit(cut, False, piece.row, stays)


def _numbered(piece: Piece) -> Iterator[tuple[str, int, Mm, Mm]]:
    for number in range(piece.first, piece.first + piece.quantity):
        yield piece.mark, number, piece.length, piece.width


def _sizes(units: Iterator[tuple[Piece, Unit]], kerf: int, grained: bool) -> tuple[Size, ...]:
    """Units of one size together; a turnable one lies with its longer side along the sheet."""
    alike: dict[tuple[int, int, bool], list[Unit]] = {}
    for piece, unit in units:
        length = sum(_steps(each[2]) + kerf for each in unit.pieces)
        width = _steps(piece.width) + kerf
        free = piece.grain == "free" or not grained
        turned = width > length if free else piece.grain == "width"
        along, across = (width, length) if turned else (length, width)
        key = (along, across, free and along != across)
        alike.setdefault(key, []).append(unit._replace(turned=turned))
    return tuple(Size(*key, tuple(each)) for key, each in alike.items())


# ---------------------------------------------------------------- stock


def _sheet(index: int, stock: Stock, kerf: int, cost: int) -> Sheet:
    trim = stock.trim
    left, lower = _steps(trim.left), _steps(trim.lower)
    length = _steps(stock.length) - left - _steps(trim.right)
    width = _steps(stock.width) - lower - _steps(trim.upper)
    inside = (_inside(each, left, lower, length, width) for each in stock.bad)
    bad = tuple(sorted({each for each in inside if each is not None}))
    return Sheet(
        index,
        length + kerf,
        width + kerf,
        stock.quantity,
        cost,
        stock.on_hand,
        stock.has_grain,
        bad,
    )


def _inside(bad: Box, left: int, lower: int, length: int, width: int) -> Span | None:
    """The part of a bad span that lies between the trims."""
    x0, y0 = max(0, _steps(bad.x0) - left), max(0, _steps(bad.y0) - lower)
    x1, y1 = min(length, _steps(bad.x1) - left), min(width, _steps(bad.y1) - lower)
    return (x0, y0, x1, y1) if x0 < x1 and y0 < y1 else None


def _costs(stock: tuple[Stock, ...]) -> tuple[Measure, float, tuple[int, ...]]:
    """What plans are compared by, the worth of a cost of 1, and the cost of each stock.

    Sheets bought of one size are counted; of several sizes the price counts where all are priced,
    else the area.
    """
    bought = [each for each in stock if not each.on_hand and each.quantity != 0]
    if len({(each.length, each.width, each.price) for each in bought}) <= 1:
        return "stock", 1.0, tuple(0 if each.on_hand else 1 for each in stock)
    if all(each.price is not None for each in bought):
        prices = [round((each.price or 0.0) * PER_COIN) for each in stock]
        return "price", *_fewest_steps(prices, stock, PER_COIN)
    areas = [_steps(each.length) * _steps(each.width) for each in stock]
    return "area", *_fewest_steps(areas, stock, PER_MM**2)


def _fewest_steps(
    costs: list[int], stock: tuple[Stock, ...], per_one: int
) -> tuple[float, tuple[int, ...]]:
    """The worth of a cost of 1, and costs in the largest step that all share: a bound that falls
    between two sums of them may be rounded up further. Where that step is tiny, none costs more
    than MOST_COST.
    """
    paid = [0 if each.on_hand else cost for cost, each in zip(costs, stock, strict=True)]
    step = max(gcd(*paid), max(paid) // MOST_COST, 1)
    return step / per_one, tuple(round(cost / step) for cost in paid)


# ---------------------------------------------------------------- steps


def _steps(length: Mm) -> int:
    return round(length * PER_MM)


def _shared_step(sizes: tuple[Size, ...], sheets: list[Sheet], others: list[int]) -> int:
    lengths = list(others)
    for size in sizes:
        lengths += (size.along, size.across)
    for sheet in sheets:
        lengths += (sheet.length, sheet.width, *(each for span in sheet.bad for each in span))
    return gcd(*lengths) or 1


def _divided(sheet: Sheet, step: int) -> Sheet:
    return sheet._replace(
        length=sheet.length // step,
        width=sheet.width // step,
        bad=tuple((x0 // step, y0 // step, x1 // step, y1 // step) for x0, y0, x1, y1 in sheet.bad),
    )
