"""What a bed costs: everything bought and everything done, priced and timed as far as is known."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from model.bed import Bed, Design
from model.cost.buy import Buy, Group, Need, priced, total
from model.cost.coats import abrasive_needs, coating_needs, coats, grits
from model.cost.faces import fixed, glued_area
from model.cost.glue import glue_needs
from model.cost.hardware import hardware_needs
from model.cost.hours import Timed, timed
from model.cost.leftover import Offcut, Waste, offcuts, waste
from model.cost.money import Money
from model.cost.screws import driven, screw_needs
from model.cost.stock_needs import stock_needs
from model.cost.surfaces import sanded, surfaces
from model.cost.work import Work, work
from model.shop.cut_list import CutPiece, cut_list
from model.shop.lumber import Lumber, lumber
from model.shop.plans import CutPlan, plans
from model.stock.prices import Prices
from model.units import Mm2

_MM2_PER_M2 = 1e6


@dataclass(frozen=True, kw_only=True)
class Taken:
    """What the bed takes, before anything is priced: it hangs on bed and plans, on no price."""

    needs: tuple[Need, ...]
    work: tuple[Work, ...]
    plans: tuple[CutPlan, ...]


@dataclass(frozen=True, kw_only=True)
class Costing:
    """The buying list and the work, at the maker's prices and rates.

    `without_stock` counts the pieces that no plan could hold: what they are cut from is on no list.
    """

    prices: Prices
    buys: tuple[Buy, ...]
    work: tuple[Timed, ...]
    offcuts: tuple[Offcut, ...]
    waste: tuple[Waste, ...]
    without_stock: int

    @property
    def not_priced(self) -> tuple[Buy, ...]:
        """Lines of the buying list that nobody has priced."""
        return tuple(buy for buy in self.buys if not buy.is_priced)

    @property
    def not_timed(self) -> tuple[Timed, ...]:
        """Kinds of work without a rate."""
        return tuple(each for each in self.work if each.rate is None)

    @property
    def is_whole(self) -> bool:
        """Whether everything that is bought is on the list, and priced."""
        return not self.not_priced and not self.without_stock

    def bought(self, groups: tuple[Group, ...]) -> Money:
        """What is known of the cost of some groups of the buying list."""
        return total(self.buys, groups, self.prices.decimals)


def costing(bed: Bed, cut: Sequence[CutPlan], asks: Sequence[Lumber] = ()) -> Costing:
    """The bed at the prices and rates of its design; `cut` are the plans in use, `asks` what is
    asked for by the board foot.
    """
    return at_prices(taken(bed, cut, asks), bed.design.prices)


def taken(bed: Bed, cut: Sequence[CutPlan], asks: Sequence[Lumber] = ()) -> Taken:
    """Everything that is bought and done, in the order of the groups."""
    design = bed.design
    sawn, met = cut_list(bed), fixed(bed)
    areas = surfaces(bed, met)
    on = coats(bed, areas)
    gone_over = grits(bed, areas, on, sanded(bed, met))
    fittings, screws = hardware_needs(bed), driven(bed)
    glued = (glued_area(bed, met) + _glued_up(sawn)) / _MM2_PER_M2
    needs = (
        *stock_needs(cut, design.prices.board_measure, bed["shown_unit"], design.stock, asks),
        *fittings,
        *screw_needs(bed, screws),
        *glue_needs(bed, glued),
        *abrasive_needs(gone_over, bed["shown_unit"]),
        *coating_needs(bed, on),
    )
    done = work(bed, cut, sawn, met, gone_over, on, fittings, screws)
    return Taken(needs=needs, work=done, plans=tuple(cut))


def _glued_up(sawn: Sequence[CutPiece]) -> Mm2:
    """Faces between layers, and edges between strips, of all parts that are glued up."""
    return math.fsum(
        each.quantity
        / each.for_each
        * each.finished.length
        * (
            (each.layers - 1) * each.strips * each.finished.width
            + (each.strips - 1) * each.layers * each.finished.thickness
        )
        for each in sawn
    )


def at_prices(taken: Taken, prices: Prices) -> Costing:
    """What is taken, at some prices and rates."""
    buys = tuple(priced(need, prices) for need in taken.needs)
    return Costing(
        prices=prices,
        buys=buys,
        work=timed(taken.work, prices),
        offcuts=offcuts(taken.plans, buys, prices),
        waste=waste(taken.plans),
        without_stock=sum(left.quantity for plan in taken.plans for left in plan.plan.left_out),
    )


def is_anything_priced(design: Design) -> bool:
    """Whether the design knows a single price, so that there is a cost to speak of."""
    stock, prices = design.stock, design.prices
    known = [row.price for row in prices.rows] + [row.price for row in prices.extras]
    known += [row.price for row in stock.boards] + [row.price for row in stock.sold]
    known += [row.price for row in stock.sheets]
    return prices.hour is not None or any(price is not None for price in known)


def costing_of(bed: Bed) -> Costing:
    """The bed by its plans in use, or the best that are found; worked out once and kept with it."""
    return bed.once(_found)


def _found(bed: Bed) -> Costing:
    return costing(bed, plans(bed), lumber(bed))
