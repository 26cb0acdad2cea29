"""`parts.json`: the parts list with joinery, places and layers, for machines and later programs."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from model.bed import Bed
from model.exports.features import features
from model.exports.hardware_table import hardware, shop_aids
from model.exports.parts_table import row
from model.exports.plain import json_bytes, number, numbers
from model.parts.marks import Mark
from model.shop.cut_list import cut_piece


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
        "made_of": _made_of(bed, mark),
        "handed": mark.handed,
        "features": features(mark.part),
        "placements": [[numbers(line) for line in matrix] for matrix in mark.matrices],
    }


def _made_of(bed: Bed, mark: Mark) -> list[dict[str, Any]]:
    """The layers or strips of a glued-up part: alike, so one entry; the quantity is for the whole
    bed.
    """
    piece = cut_piece(bed, mark)
    if not piece.is_glued:
        return []
    return [
        {
            "mark": piece.name,
            "quantity": piece.quantity,
            "length": number(piece.finished.length),
            "width": number(piece.finished.width),
            "thickness": number(piece.finished.thickness),
            "rough_length": number(piece.rough.length),
            "rough_width": number(piece.rough.width),
            "rough_thickness": number(piece.rough.thickness),
        }
    ]
