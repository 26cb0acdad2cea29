"""What is bought and not cut, and what the shop makes for itself, as rows."""

from __future__ import annotations

from typing import Any

from model.bed import Bed
from model.exports.plain import number
from model.shop.order.aids import spacers

HARDWARE_COLUMNS = ("code", "name", "quantity")
SHOP_AID_COLUMNS = ("name", "quantity", "length", "width", "thickness", "use")


def hardware(bed: Bed) -> list[dict[str, Any]]:
    """One row for each kind of bought thing."""
    return [
        {"code": each.code, "name": each.name, "quantity": each.quantity} for each in bed.hardware
    ]


def shop_aids(bed: Bed) -> list[dict[str, Any]]:
    """Spacers and the like, cut from offcuts: no part of the bed, its weight or its proof."""
    return [
        {
            "name": each.name,
            "quantity": each.quantity,
            "length": None,
            "width": number(each.size),
            "thickness": None,
            "use": each.use,
        }
        for each in spacers(bed)
    ]
