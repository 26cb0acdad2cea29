"""Glue: the area of all glued joints, and how far a litre goes."""

from __future__ import annotations

import math

from model.bed import Bed
from model.cost.buy import Need
from model.cost.tables import SquareMetres, glue


def glue_needs(bed: Bed, area: SquareMetres) -> list[Need]:
    """Glue for an area of joints, with what is squeezed out, in bottles."""
    if not area:
        return []
    row = glue()
    litres = area * row.litres_per_m2 * (1 + bed["glue_loss"] / 100)
    return [
        Need(
            key=f"glue/{row.key}",
            group="glue",
            name=row.name,
            quantity=math.ceil(litres * 100 - 1e-6) / 100,
            unit="litre",
            size=f"{area:.2f} m2 of joints",
            pack=row.bottle_us_l if bed["shown_unit"] == "inch" else row.bottle_metric_l,
            note=f"{row.litres_per_m2:g} litres a m2 ({row.source})",
        )
    ]
