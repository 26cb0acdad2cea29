"""`cutting.json`: every board and sheet as it is cut, cut by cut, with the proof of how few it
could be.
"""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import Any

from model.bed import Bed
from model.cutting.order import Batch, batches
from model.cutting.record import Layout, Placed, Region
from model.exports.plain import json_bytes, number, numbers
from model.shop.cut_list import cut_list
from model.shop.lumber import NINE_IN_TEN, Lumber, lumber
from model.shop.planed_down import planed_down
from model.shop.plans import CutPlan, plans

# Of a cut, by its sheet and the region that it cuts: sheets that are cut alike may share a tree.
Numbers = Mapping[tuple[int, int], int]


def write(bed: Bed, path: Path) -> None:
    """Write the plan of every material; lengths in mm, rough sizes on boards, finished on sheets.

    x runs along a piece of stock, y across, from the lower left corner of the whole piece.
    """
    content = {
        "schema": 1,
        "plans": [_plan(each) for each in planed_down(bed.design, cut_list(bed), plans(bed))],
        "lumber": [_lumber(each, bed) for each in lumber(bed)],
    }
    path.write_bytes(json_bytes(content))


def _lumber(ask: Lumber, bed: Bed) -> dict[str, Any]:
    """What to ask a yard for where boards are bought by the board foot. `asked` boards must be
    among it; `area` and `board_feet` hold all pieces in half, and in nine of ten, of the racks that
    were drawn at random.
    """
    half, most = ask.area(0.5), ask.area(NINE_IN_TEN)
    return {
        "key": ask.key,
        "material": ask.material_name,
        "thickness": number(ask.odds.recipe.thickness),
        "clear_share": number(ask.odds.recipe.clear_share),
        "racks": ask.odds.racks,
        "board_feet": {
            "half": _maybe(ask.board_feet(0.5)),
            "most": _maybe(ask.board_feet(NINE_IN_TEN)),
        },
        "area": {"half": _maybe(half), "most": _maybe(most)},
        "asked": [
            {
                "boards": each.boards,
                "clear": number(each.clear),
                "width": number(each.width),
                "length": number(each.length),
                "marks": list(each.marks),
            }
            for each in ask.asked
        ],
        "said": list(
            ask.sentences(bed.design.value("shown_unit"), bed.design.prices.board_measure)
        ),
    }


def _maybe(value: float | None) -> float | int | None:
    return None if value is None else number(value)


def _plan(cut: CutPlan) -> dict[str, Any]:
    plan, order = cut.plan, batches(cut.plan)
    numbered = {(s.layout, id(s.region)): s.number for batch in order for s in batch.steps}
    return {
        "material": cut.material_name,
        "thickness": number(cut.thickness),
        "lower_bound": number(plan.lower_bound),
        "proven": plan.is_proven,
        "key": cut.key,
        "kind": plan.task.kind,
        "kerf": number(plan.task.kerf),
        "measure": plan.measure,
        "value": number(plan.value),
        "gap": number(plan.gap),
        "bound_covers": plan.covers,
        "in_use": cut.is_stored,
        "stock": [_stock(cut, layout, numbered) for layout in plan.layouts],
        "settings": [_setting(batch) for batch in order],
        "left_out": [each._asdict() for each in plan.left_out],
        "notes": list(cut.notes),
    }


def _setting(batch: Batch) -> dict[str, Any]:
    """A setting of fence or stop, and the numbers of the cuts made with it."""
    return {
        "way": batch.setting.way,
        "distance": number(batch.setting.distance),
        "trim": batch.setting.is_trim,
        "cuts": [step.number for step in batch.steps],
    }


def _stock(cut: CutPlan, layout: Layout, numbered: Numbers) -> dict[str, Any]:
    stock = layout.stock
    return {
        "number": layout.number,
        "key": stock.key,
        "length": number(stock.length),
        "width": number(stock.width),
        "kerf": number(cut.plan.task.kerf),
        "trim": {edge: number(size) for edge, size in stock.trim._asdict().items()},
        "bad": [numbers(box) for box in stock.bad],
        "on_hand": stock.on_hand,
        "assumed": stock.is_assumed,
        "grain": "length" if stock.has_grain else "none",
        "pieces": [_piece(placed) for placed in layout.placed],
        "cuts": _region(layout.tree, layout.number, numbered),
        "offcuts": [_box(offcut) for offcut in layout.offcuts],
    }


def _piece(placed: Placed) -> dict[str, Any]:
    """A piece as it lies; `along` and `across` are its extent on the stock."""
    box = placed.box
    return {
        "mark": placed.mark,
        "piece": placed.piece,
        "x": number(placed.x),
        "y": number(placed.y),
        "length": number(placed.length),
        "width": number(placed.width),
        "turned": placed.turned,
        "along": number(box.x1 - box.x0),
        "across": number(box.y1 - box.y0),
    }


def _region(region: Region, layout: int, numbered: Numbers) -> dict[str, Any]:
    """A rectangle of wood: sawn in two, or left as a piece, an offcut or waste.

    A cut without a number is made when the strip is milled.
    """
    if region.cut is None:
        named = {"mark": region.placed.mark, "piece": region.placed.piece} if region.placed else {}
        return _box(region) | {"use": region.use} | named
    return _box(region) | {
        "cut": region.cut,
        "number": numbered.get((layout, id(region))),
        "at": number(region.at),
        "kerf": number(region.kerf),
        "trim": region.is_trim,
        "row": region.row,
        "stays_whole": region.stays_whole,
        "low": _region(region.low, layout, numbered) if region.low is not None else None,
        "high": _region(region.high, layout, numbered) if region.high is not None else None,
    }


def _box(region: Region) -> dict[str, Any]:
    return {
        "x": number(region.x),
        "y": number(region.y),
        "length": number(region.length),
        "width": number(region.width),
    }
