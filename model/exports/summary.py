"""`summary.json`: the bed in a few figures."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from model.bed import Bed
from model.checks.safety.cautions import cautions
from model.cost.cost_sheet import cost_sheet
from model.cost.costing import costing_of, is_anything_priced
from model.exports.checks_table import counts
from model.exports.plain import json_bytes, number
from model.exports.version import version
from model.parts.marks import Mark
from model.parts.overall import overall as wood_overall
from model.shop.part_sizes import made_of
from model.solids.exact import solid
from model.units import Kg

_MM3_PER_M3 = 1e9


def write(bed: Bed, path: Path) -> None:
    """Write sizes in mm, weights in kg, counts; `cost` is null while nothing is priced."""
    path.write_bytes(json_bytes(summary(bed)))


def summary(bed: Bed) -> dict[str, Any]:
    """The content of the file; weights are of the wood, without hardware and mattress."""
    return {
        "schema": 1,
        "program": f"Bedwright {version()}",
        "design": bed.design.name,
        "overall": overall(bed),
        "sleeping_height": number(bed["deck_top"] + bed["mattress_high"]),
        "weights_kg": _weights(bed),
        "counts": {
            "marks": len(bed.marks),
            "pieces": sum(mark.quantity for mark in bed.marks),
            "hardware": sum(each.quantity for each in bed.hardware),
        },
        "cost": _cost(bed),
        "checks": counts(bed),
        "cautions": [
            {"title": each.title, "text": each.text} for each in cautions(bed.pieces, bed.materials)
        ],
    }


def overall(bed: Bed) -> dict[str, Any]:
    """Length, width and height of the wood as it stands, mm."""
    sizes = wood_overall(bed.marks, bed.pieces)
    return {name: number(size) for name, size in sizes._asdict().items()}


def _cost(bed: Bed) -> dict[str, Any] | None:
    """What is known of the cost to its maker, and whether that is all of it."""
    if not is_anything_priced(bed.design):
        return None
    costing = costing_of(bed)
    sheet = cost_sheet(costing)
    return {
        "currency": sheet.currency,
        "materials": float(sheet.materials),
        "total": float(sheet.total),
        "complete": sheet.is_complete,
        "not_priced": len(costing.not_priced),
        "not_timed": len(costing.not_timed),
        "example": sheet.is_example,
    }


def _weights(bed: Bed) -> dict[str, Any]:
    found: dict[str, Kg] = {}
    for mark in bed.marks:
        each = weight(bed, mark)
        for piece in mark.pieces:  # pieces of one mark can lie on both sides of the bed
            assembly = bed.pieces.form(piece).assembly
            found[assembly] = found.get(assembly, 0.0) + each
    return {name: round(kg, 3) for name, kg in (found | {"total": sum(found.values())}).items()}


def weight(bed: Bed, mark: Mark) -> Kg:
    """What one piece of a mark weighs, by its material's density."""
    return float(solid(mark.part).volume()) / _MM3_PER_M3 * made_of(bed, mark).density_kg_m3
