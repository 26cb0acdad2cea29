"""What a plan leaves: offcuts worth keeping, what they are worth, and how much is waste."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from decimal import Decimal

from model.cost.buy import Buy
from model.cost.lumber_measure import measure
from model.cost.money import Money, exact, rounded
from model.cost.stock_needs import key_of
from model.cutting.record import Layout
from model.shop.plans import CutPlan
from model.stock.prices import Prices
from model.units import Mm, Mm2, Share


@dataclass(frozen=True, kw_only=True)
class Offcut:
    """An offcut worth keeping. `value` is the maker's share of what its area cost; None where the
    price of its sheet or board is not known or it was on hand before.
    """

    material: str
    material_name: str
    thickness: Mm
    length: Mm
    width: Mm
    value: Money | None


@dataclass(frozen=True, kw_only=True)
class Waste:
    """Where a material's area goes: into pieces, into offcuts worth keeping, to waste; mm2.

    `sold_width` is that of boards which are used as wide as they are sold; else None.
    """

    material: str
    material_name: str
    thickness: Mm
    sold_width: Mm | None = None
    is_sheet: bool
    area: Mm2
    pieces: Mm2
    offcuts: Mm2

    @property
    def share(self) -> Share:
        """What is neither piece nor offcut: kerfs, trims and what is too small."""
        return max(0.0, 1 - (self.pieces + self.offcuts) / self.area) if self.area else 0.0


def offcuts(plans: Iterable[CutPlan], buys: Iterable[Buy], prices: Prices) -> tuple[Offcut, ...]:
    """All offcuts that the plans leave, material by material, the largest of a sheet first."""
    bought = {buy.key: buy for buy in buys}
    return tuple(
        Offcut(
            material=plan.material,
            material_name=plan.material_name,
            thickness=plan.thickness,
            length=region.length,
            width=region.width,
            value=_value(plan, layout, region.length, region.width, bought, prices),
        )
        for plan in plans
        for layout in plan.plan.layouts
        for region in layout.offcuts
    )


def _value(
    plan: CutPlan, layout: Layout, length: Mm, width: Mm, bought: Mapping[str, Buy], prices: Prices
) -> Money | None:
    stock = layout.stock
    buy = bought.get(key_of(plan, stock))
    if stock.on_hand or buy is None or buy.price is None:
        return None
    each = buy.price / exact(buy.pack)
    if stock.is_assumed:
        cost = each * Decimal(measure(plan.thickness, length, width, prices.board_measure))
    else:
        cost = each * Decimal(length * width / (stock.length * stock.width))
    return rounded(cost * exact(prices.offcut_share), prices.decimals)


def waste(plans: Iterable[CutPlan]) -> tuple[Waste, ...]:
    """Where the area of each material goes, plan by plan; plans that use nothing are left out."""
    return tuple(_wasted(plans))


def _wasted(plans: Iterable[CutPlan]) -> Iterator[Waste]:
    for plan in plans:
        layouts = plan.plan.layouts
        if layouts:
            yield Waste(
                material=plan.material,
                material_name=plan.material_name,
                thickness=plan.thickness,
                sold_width=plan.sold_width,
                is_sheet=plan.plan.task.kind == "sheets",
                area=sum(each.stock.length * each.stock.width for each in layouts),
                pieces=sum(piece.length * piece.width for each in layouts for piece in each.placed),
                offcuts=sum(region.area for each in layouts for region in each.offcuts),
            )
