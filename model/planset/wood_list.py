"""What wood somebody buys who has none of the boards and offcuts that the plans are drawn on."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from functools import cached_property

from model.bed import Bed
from model.cost.lumber_measure import measure
from model.cost.sizes import sold_sides, sold_size
from model.cost.stock_needs import rough_name
from model.cutting.record import Layout, Stock
from model.planset.table import Head, Row
from model.shop.cut_list import CutPiece, cut_list
from model.shop.lumber import NINE_IN_TEN, Lumber, lumber
from model.shop.order import say
from model.shop.planed_down import planed_down
from model.shop.plans import CutPlan, plans
from model.stock.prices import BoardMeasure
from model.units import Mm

LUMBER_HEADS = (
    Head("Wood"), Head("Rough thickness"), Head("Net"), Head("Ask for"), Head("Pieces", "right"),
    Head("Longest"), Head("Widest"),
)  # fmt: skip
BOARD_HEADS = (Head("Buy", "right"), Head("What"), Head("Size"), Head("In the plans"))
WASTE = 1 / 3  # of what is net, for knots, splits and odd widths; common practice, no source
Kind = tuple[str, Mm]  # name of the wood and its rough thickness


class WoodList:
    """The solid wood and sheets of a bed as rows of tables, in the measure of its plan set."""

    def __init__(self, bed: Bed, unit: str) -> None:
        self.unit = unit
        self.by: BoardMeasure = "board foot" if unit == "inch" else "cubic metre"
        self._bed = bed

    @cached_property
    def _plans(self) -> tuple[CutPlan, ...]:
        return plans(self._bed)

    @cached_property
    def _asks(self) -> tuple[Lumber, ...]:
        """What is asked for where no board is known."""
        return lumber(self._bed)

    # ------------------------------------------------------------ solid wood by the measure

    def lumber(self) -> list[Row]:
        """One row for each wood and thickness, whoever's boards it is cut from."""
        found: dict[Kind, list[CutPiece]] = {}
        for piece in cut_list(self._bed):
            if piece.source is not None:
                found.setdefault((piece.material.name, piece.thickness), []).append(piece)
        return [self._lumber_row(kind, some) for kind, some in sorted(found.items())]

    def _lumber_row(self, kind: Kind, pieces: Sequence[CutPiece]) -> Row:
        name, thick = kind
        net = sum(
            measure(thick, each.rough.length, each.rough.width, self.by) * each.quantity
            for each in pieces
        )
        asked = max((1 + WASTE) * net, self._drawn_on(kind), self._nine_in_ten(kind))
        longest = max(pieces, key=lambda each: each.rough.length)
        widest = max(pieces, key=lambda each: each.rough.width)
        return Row(
            (name, rough_name(thick, self.unit), self._told(net, 1), self._told(asked, 0),
             str(sum(each.quantity for each in pieces)),
             f"{say.rough(longest.rough.length, self.unit)} ({longest.name})",
             f"{say.rough(widest.rough.width, self.unit)} ({widest.name})")
        )  # fmt: skip

    def _told(self, measured: float, places: int) -> str:
        """Rounded up: `7.3 board feet`, `0.066 m3`."""
        if self.by == "board foot":
            step = 10.0**places
            return f"{math.ceil(measured * step - 1e-6) / step:g} board feet"
        return f"{math.ceil(measured * 1000 - 1e-6) / 1000:.3f} m3"

    def _drawn_on(self, kind: Kind) -> float:
        """All boards that the plans of a kind are drawn on."""
        return sum(
            measure(plan.thickness, layout.stock.length, layout.stock.width, self.by)
            for plan in self._plans
            if (plan.material_name, plan.thickness) == kind
            for layout in plan.plan.layouts
        )

    def _nine_in_ten(self, kind: Kind) -> float:
        """What held all pieces in nine of ten racks drawn at random; 0 where none was tried."""
        found = [
            each for each in self._asks
            if (each.material_name, each.odds.recipe.thickness) == kind
        ]  # fmt: skip
        areas = (each.area(NINE_IN_TEN) or 0.0 for each in found)
        return sum(measure(kind[1], area, 1.0, self.by) for area in areas if math.isfinite(area))

    def long_and_wide(self) -> Iterator[str]:
        """The boards that must be among it, as one says at the yard."""
        for each in self._asks:
            told = " ".join(each.asked_sentences(self.unit))
            if told:
                thick = rough_name(each.odds.recipe.thickness, self.unit)
                yield f"{each.material_name}, {thick}: {told}"

    def spared(self) -> Iterator[str]:
        """Wood that offcuts of a thicker class may give in its place."""
        told = planed_down(self._bed.design, cut_list(self._bed), self._plans)
        for plan, noted in zip(self._plans, told, strict=True):
            for note in noted.notes[len(plan.notes) :]:
                yield f"{plan.material_name}, {rough_name(plan.thickness, self.unit)}: {note}"

    # ------------------------------------------------------------ boards and sheets by the piece

    def boards(self) -> list[Row]:
        """The boards that the plans are drawn on, where somebody knows them."""
        return list(self._rows("boards"))

    def sheets(self) -> list[Row]:
        """Whole sheets; for each offcut that the plans are drawn on, one more."""
        return list(self._rows("sheets"))

    @property
    def has_own(self) -> bool:
        """Whether any board or sheet was on hand for the bed as designed."""
        return any(each.stock.on_hand for plan in self._plans for each in plan.plan.layouts)

    def _rows(self, group: str) -> Iterator[Row]:
        for plan in self._plans:
            is_sheet = plan.plan.task.kind == "sheets"
            if is_sheet != (group == "sheets"):
                continue
            bought: dict[str, list[Layout]] = {}
            for layout in plan.plan.layouts:
                if not layout.stock.is_assumed:
                    stock = self._whole(plan, layout.stock) if is_sheet else layout.stock
                    bought.setdefault(self._size(plan, stock), []).append(layout)
            for size, layouts in bought.items():
                word = "sheet" if is_sheet else "board"
                many = f"{len(layouts)} {word}{'s' * (len(layouts) > 1)}"
                yield Row((many, plan.material_name, size, "; ".join(self._notes(plan, layouts))))

    def _whole(self, plan: CutPlan, stock: Stock) -> Stock:
        """The sheet that is bought in place of an offcut: the least whole one that holds it."""
        if not stock.on_hand:
            return stock
        known = {each.stock for other in self._plans for each in other.plan.layouts
                 if other.material == plan.material}  # fmt: skip
        sold = {each for each in (*plan.plan.task.stock, *known) if not each.on_hand}
        fit = [each for each in sold if _holds(each, stock)]
        return min(fit, key=lambda each: (each.length * each.width, each.key), default=stock)

    def _size(self, plan: CutPlan, stock: Stock) -> str:
        sides = sold_sides(stock.length, stock.width, self.unit)
        if plan.plan.task.kind == "sheets":
            return f"at least {sides}" if stock.on_hand else sides
        if plan.sold_width is not None:  # planed: no rough class
            return f"{sold_size(plan.thickness, self.unit)}, {sides}"
        return f"{rough_name(plan.thickness, self.unit)}, {sides}"

    def _notes(self, plan: CutPlan, layouts: Sequence[Layout]) -> Iterator[str]:
        is_sheet = plan.plan.task.kind == "sheets"
        for each in layouts:
            if each.stock.on_hand and is_sheet:
                own = sold_sides(each.stock.length, each.stock.width, self.unit)
                marks = say.listed([placed.name for placed in each.placed])
                yield f"one for {marks}, which the plan lays on an offcut, {own}"
            elif each.stock.on_hand:
                yield each.stock.key


def _holds(whole: Stock, part: Stock) -> bool:
    """Whether a sheet can be cut down to an offcut, its grain the same way."""
    return whole.length >= part.length - 1e-6 and whole.width >= part.width - 1e-6
