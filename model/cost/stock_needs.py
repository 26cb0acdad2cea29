"""Boards and sheets to buy, and what is used from the rack: counted from the cutting plans."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace

from model.cost.buy import Need
from model.cost.lumber_measure import measure, unit_of
from model.cost.sizes import at_least, sold_sides, sold_size
from model.cutting.record import Layout, Stock
from model.materials import lumber
from model.shop.lumber import NINE_IN_TEN, Lumber
from model.shop.plans import CutPlan
from model.shop.wood_source import SAME
from model.stock.keys import board_key, lumber_key, sheet_key
from model.stock.prices import BoardMeasure
from model.stock.rows import NO_STOCK, SheetSize, SoldSize, StockRows
from model.units import Mm


def stock_needs(
    plans: Iterable[CutPlan],
    by: BoardMeasure = "board foot",
    unit: str = "mm",
    rows: StockRows = NO_STOCK,
    asks: Iterable[Lumber] = (),
) -> list[Need]:
    """What the plans cut: boards and sheets to be bought, and apart from these what is on hand.

    Boards that stand for what a yard might have are billed by their measure, all others by the
    piece. The same stock in two plans is one line. `rows` may tell prices of their own, `asks` how
    much lumber holds all pieces nine times of ten; that is what is asked for, because a yard will
    hardly have the boards of the plan.
    """
    found: dict[str, Need] = {}
    asked = {each.key: each for each in asks}
    for plan in plans:
        for need in _of_plan(plan, by, unit, rows, None if plan.is_stored else asked.get(plan.key)):
            old = found.get(need.key)
            found[need.key] = need if old is None else _joined(old, need)
    order = ("boards", "sheets", "on hand")
    return sorted(found.values(), key=lambda need: order.index(need.group))


def _joined(one: Need, other: Need) -> Need:
    return replace(one, quantity=one.quantity + other.quantity)


def _of_plan(
    plan: CutPlan, by: BoardMeasure, unit: str, rows: StockRows, ask: Lumber | None
) -> Iterator[Need]:
    used = list(dict.fromkeys(layout.stock for layout in plan.plan.layouts))
    if assumed := [each for each in plan.plan.layouts if each.stock.is_assumed]:
        yield _lumber(plan, assumed, by, unit, ask)
    for stock in used:
        if not stock.is_assumed:
            count = sum(layout.stock == stock for layout in plan.plan.layouts)
            yield replace(_pieces(plan, stock, count, unit), price=_told(plan, stock, rows))


def _lumber(
    plan: CutPlan, layouts: Sequence[Layout], by: BoardMeasure, unit: str, ask: Lumber | None
) -> Need:
    """Boards of random width: how much in all, and the long and wide ones that must be there."""
    total = sum(
        measure(plan.thickness, each.stock.length, each.stock.width, by) for each in layouts
    )
    drawn = total
    if ask is not None and (area := ask.area(NINE_IN_TEN)) is not None:
        total = max(total, measure(plan.thickness, area, 1.0, by))
    return Need(
        key=lumber_key(plan.material, plan.thickness),
        group="boards",
        name=plan.material_name,
        quantity=math.ceil(total - 1e-9) if by == "board foot" else math.ceil(total * 1000) / 1000,
        unit=unit_of(by),
        size=rough_name(plan.thickness, unit),
        measured=True,
        note=_cut_from(layouts, unit) if ask is None else _to_ask(ask, drawn, by, unit),
    )


def _to_ask(ask: Lumber, drawn: float, by: BoardMeasure, unit: str) -> str:
    """What to say at the yard; and what the plan takes, where its boards came out worse."""
    said = list(ask.sentences(unit, by))
    area = ask.area(NINE_IN_TEN)
    if area is not None and drawn > measure(ask.odds.recipe.thickness, area, 1.0, by) + 1e-9:
        said.append("The boards that the plan was drawn on take more, and so much is reckoned.")
    return " ".join(said)


def _cut_from(layouts: Sequence[Layout], unit: str) -> str:
    longest, widest = _must_hold(layouts)
    return (
        f"about {len(layouts)} {'board' if len(layouts) == 1 else 'boards'}; pieces "
        f"{at_least(longest, unit)} long and {at_least(widest, unit)} wide are cut from them"
    )


def _must_hold(layouts: Iterable[Layout]) -> tuple[Mm, Mm]:
    """The longest and the widest piece that is cut from boards."""
    placed = [piece for layout in layouts for piece in layout.placed]
    return max(each.length for each in placed), max(each.width for each in placed)


def rough_name(thickness: Mm, unit: str) -> str:
    """A rough thickness as a yard calls it: `5/4 rough`, in mm `31.75 mm rough (5/4)`; of what is
    no class its size.
    """
    for row in lumber().values():
        is_class = (row.family, row.dimension, row.state) == ("hardwood", "thickness", "rough")
        if is_class and abs(row.actual_mm - thickness) <= SAME:
            told = f"{row.nominal} rough"
            return told if unit == "inch" else f"{sold_size(thickness, unit)} rough ({row.nominal})"
    return sold_size(thickness, unit)


def _pieces(plan: CutPlan, stock: Stock, count: int, unit: str) -> Need:
    is_sheet = plan.plan.task.kind == "sheets"
    size = sold_sides(stock.length, stock.width, unit)
    if plan.sold_width is not None:  # planed: no rough class
        size = f"{sold_size(plan.thickness, unit)}, {size}"
    elif not is_sheet:
        size = f"{rough_name(plan.thickness, unit)}, {size}"
    return Need(
        key=key_of(plan, stock),
        group="on hand" if stock.on_hand else "sheets" if is_sheet else "boards",
        name=plan.material_name,
        quantity=count,
        unit="sheet" if is_sheet else "board",
        size=size,
        on_hand=stock.on_hand,
        note=f"{stock.key}: nothing to buy" if stock.on_hand else "",
    )


def _told(plan: CutPlan, stock: Stock, rows: StockRows) -> float | None:
    """The price that the maker's own stock has beside it. That of the plan's stock can be an older
    one, of the price list.
    """
    if plan.plan.task.kind != "sheets" and stock.quantity is not None:
        return stock.price  # a board of the rack: only its own row has a price
    size = (stock.length, stock.width)
    for row in rows.sheets if plan.plan.task.kind == "sheets" else rows.sold:
        if (
            row.material == plan.material
            and (row.length, row.width) == size
            and _is_sold(row, plan)
        ):
            return row.price
    return None


def _is_sold(row: SheetSize | SoldSize, plan: CutPlan) -> bool:
    if isinstance(row, SheetSize):
        return not row.on_hand
    return abs(row.thickness - plan.thickness) <= SAME


def key_of(plan: CutPlan, stock: Stock) -> str:
    """The key of the line that a piece of stock is billed on."""
    if stock.on_hand:
        return f"on hand/{plan.key}/{stock.key}"
    if stock.is_assumed:
        return lumber_key(plan.material, plan.thickness)
    if plan.plan.task.kind == "sheets":
        return sheet_key(plan.material, stock.length, stock.width)
    if stock.quantity is None:
        return board_key(plan.material, plan.thickness, stock.length, stock.width)
    return f"{lumber_key(plan.material, plan.thickness)}/{stock.key}"
