"""`parts.json`: the parts list with joinery, places and layers, for machines and later programs."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from model.bed import Bed
from model.exports.features import features
from model.exports.hardware_table import hardware, shop_aids
from model.exports.parts_table import finished, made_of, row
from model.exports.plain import json_bytes, number, numbers
from model.parts.marks import Mark
from model.stock.rough import rough_layer


def write(bed: Bed, path: Path) -> None:
    """Write parts, hardware and shop aids; lengths in mm, matrices from part to bed axes."""
    content = {
        "schema": 1,
        "parts": [_part(bed, mark) for mark in bed.marks],
        "hardware": hardware(bed),
        "shop_aids": shop_aids(bed),
    }
    path.write_bytes(json_bytes(content))


def _part(bed: Bed, mark: Mark) -> dict[str, Any]:
    return row(bed, mark) | {
        "made_of": _layers(bed, mark),
        "handed": mark.handed,
        "features": features(mark.part),
        "placements": [[numbers(line) for line in matrix] for matrix in mark.matrices],
    }


def _layers(bed: Bed, mark: Mark) -> list[dict[str, Any]]:
    """The layers of a glued-up part: alike, so one entry; the quantity is for the whole bed."""
    if mark.layers == 1:
        return []
    thick = float(mark.part.layer_thickness)
    sawn = rough_layer(finished(mark), made_of(bed, mark), thick)
    return [
        {
            "mark": f"{mark.mark}/1",
            "quantity": mark.layers * mark.quantity,
            "length": number(mark.length),
            "width": number(mark.width),
            "thickness": number(thick),
            "rough_length": number(sawn.length),
            "rough_width": number(sawn.width),
            "rough_thickness": number(sawn.thickness),
        }
    ]
