"""How much of each kind of work the bed takes, each in its own unit: no minutes yet."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from model.bed import Bed
from model.cost.buy import Need
from model.cost.coats import Coat, Grit
from model.cost.faces import Met
from model.cost.joint_screws import Driven
from model.cost.measures import converted, shop_measure
from model.cost.tables import Operation, operations
from model.cost.work_in_order import work_in_order
from model.cost.work_on_parts import work_on_parts
from model.shop.cut_list import CutPiece
from model.shop.order.aids import spacers
from model.shop.order.build import work_order
from model.shop.order.record import WorkOrder
from model.shop.plans import CutPlan

_BOXES = "drawers"  # the assembly of box parts


@dataclass(frozen=True, kw_only=True)
class Work:
    """A kind of work: `quantity` of its `unit`. `key` is its name in the table of rates, which is
    kept by metric measures; `holds` is how much of such a one is in the unit: m2 in a square foot.
    """

    key: str
    name: str
    quantity: float
    unit: str
    holds: float = 1.0


def rate_of(work: Work, kept: float) -> float:
    """Minutes for one unit of a kind of work, from those that the price list keeps."""
    return kept if work.holds == 1 else converted(kept, work.holds)


def work(
    bed: Bed,
    plans: Sequence[CutPlan],
    sawn: Sequence[CutPiece],
    met: Met,
    sanded: Iterable[Grit],
    on: Iterable[Coat],
    fittings: Sequence[Need],
    driven: Iterable[Driven],
) -> tuple[Work, ...]:
    """All work that the bed takes, in the order of the shop."""
    order = work_order(bed, plans)
    counted: dict[str, float] = {
        **work_in_order(order),
        "spacers": sum(each.quantity for each in spacers(bed)),
        **_milled(sawn, order),
        **work_on_parts(bed.marks),
        **_assembled(bed, met),
        **_fitted(fittings),
        "screws": sum(each.count for each in driven),
        "assembly": 1,
    }
    shown: str = bed["shown_unit"]
    return tuple(
        each
        for operation in operations().values()
        for each in _of_kind(operation, counted, sanded, on, shown)
    )


def _of_kind(
    row: Operation,
    counted: Mapping[str, float],
    sanded: Iterable[Grit],
    on: Iterable[Coat],
    shown: str,
) -> Iterator[Work]:
    """The work of one row: sanding by the grit, coats by the coating, all else as counted."""
    if row.key == "sanding":
        for grit in sanded:
            key = f"sanding/{grit.abrasive.key}"
            yield _counted(key, _sanding(grit), grit.area, row.unit, shown)
    elif row.key == "coats":
        for coat in on:
            key, name = f"coats/{coat.coating.key}", f"{row.name}: {coat.coating.name}"
            yield _counted(key, name, coat.spread, row.unit, shown)
    elif counted.get(row.key):
        yield _counted(row.key, row.name, counted[row.key], row.unit, shown)


def _counted(key: str, name: str, quantity: float, metric: str, shown: str) -> Work:
    """So much of a kind of work, in the measure of the maker's shop."""
    measure = shop_measure(metric, shown)
    return Work(
        key=key, name=name, quantity=_round(quantity / measure.holds), unit=measure.name,
        holds=measure.holds,
    )  # fmt: skip


def _sanding(grit: Grit) -> str:
    return "Sand between coats" if grit.is_between else f"Sand, grit {grit.abrasive.grit}"


def _round(quantity: float) -> float:
    """To a hundredth: no rate is known better."""
    return round(quantity, 2)


def _milled(sawn: Iterable[CutPiece], order: WorkOrder) -> dict[str, float]:
    """Metres through jointer and planer; blanks that are glued up from layers or strips."""
    solid = [(each, each.source) for each in sawn if each.source is not None]
    jointed = {line.mark for batch in order.batches if batch.way == "joint" for line in batch.lines}
    rough = [each for each, source in solid if not source.is_planed]
    ripped = [each for each, source in solid if source.is_planed and each.name in jointed]
    blanks = sum(each.quantity / each.for_each for each in sawn if each.is_glued)
    return {"mill": _metres(rough), "joint_edges": _metres(ripped), "glue_up": blanks}


def _metres(pieces: Iterable[CutPiece]) -> float:
    return math.fsum(each.rough.length * each.quantity for each in pieces) / 1000


def _assembled(bed: Bed, met: Met) -> dict[str, float]:
    pieces = bed.pieces
    assembly = [pieces.parts[k].assembly for k in pieces.part.tolist()]
    names = [pieces.parts[k].name for k in pieces.part.tolist()]
    glued = [group for group in _glued_together(len(pieces), met) if len(group) > 1]
    boxes = [group for group in glued if all(assembly[k] == _BOXES for k in group)]
    return {
        "frames": len(glued) - len(boxes),
        "drawers": len({pieces.group[k] for k, name in enumerate(names) if name == "box side"}),
        "fronts": sum(name in ("front", "front panel") for name in names),
        "deck": sum(name in ("slat", "deck panel") for name in names),
    }


def _glued_together(count: int, met: Met) -> list[list[int]]:
    """Pieces that glue makes one: lists of pieces, in the order of their first."""
    leader = np.arange(count)
    pairs = list(zip(met.one[met.glued].tolist(), met.other[met.glued].tolist(), strict=True))
    for one, other in pairs:
        low, high = sorted((int(leader[one]), int(leader[other])))
        leader[leader == high] = low
    found: dict[int, list[int]] = {}
    for piece, first in enumerate(leader.tolist()):
        found.setdefault(first, []).append(piece)
    return list(found.values())


def _fitted(fittings: Iterable[Need]) -> dict[str, float]:
    found = {"slides": 0.0, "pulls": 0.0, "fittings": 0.0}
    for need in fittings:
        kind = need.key.partition("/")[0]
        if kind in ("slides", "pulls"):
            found[kind] += need.quantity
        elif kind not in ("dowels", "washers", "strap"):
            found["fittings"] += need.quantity
    return found
