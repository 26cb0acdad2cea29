"""What is bought and not cut, and what the shop makes for itself, as rows."""

from __future__ import annotations

from typing import Any

from model.bed import Bed
from model.exports.plain import number

HARDWARE_COLUMNS = ("code", "name", "quantity")
SHOP_AID_COLUMNS = ("name", "quantity", "length", "width", "thickness", "use")


def hardware(bed: Bed) -> list[dict[str, Any]]:
    """One row for each kind of bought thing."""
    return [
        {"code": each.code, "name": each.name, "quantity": each.quantity} for each in bed.hardware
    ]


def shop_aids(bed: Bed) -> list[dict[str, Any]]:
    """Spacers and the like, cut from offcuts: no part of the bed, its weight or its proof."""
    size = bed.dimensions.values.get("slat_spacer")
    if not size:
        return []
    return [
        {
            "name": "slat spacer",
            "quantity": 2,
            "length": None,
            "width": number(size),
            "thickness": None,
            "use": "Stands between two slats while they are fixed; its width is the gap.",
        }
    ]
