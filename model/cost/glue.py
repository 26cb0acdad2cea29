"""Glue: the area of all glued joints, and how far a litre goes."""

from __future__ import annotations

from model.bed import Bed
from model.cost.buy import Need
from model.cost.measures import area_text, poured, shop_measure
from model.cost.tables import SquareMetres, glue


def glue_needs(bed: Bed, area: SquareMetres) -> list[Need]:
    """Glue for an area of joints, with what is squeezed out, in bottles."""
    if not area:
        return []
    row = glue()
    unit: str = bed["shown_unit"]
    measure, area_of = shop_measure("litre", unit), shop_measure("m2", unit)
    litres = area * row.litres_per_m2 * (1 + bed["glue_loss"] / 100)
    return [
        Need(
            key=f"glue/{row.key}",
            group="glue",
            name=row.name,
            quantity=poured(litres / measure.holds),
            unit=measure.name,
            size=f"{area_text(area, unit, places=2)} of joints",
            pack=(row.bottle_us_l if unit == "inch" else row.bottle_metric_l) / measure.holds,
            holds=measure.holds,
            note=f"{row.litres_per_m2 / measure.holds * area_of.holds:.3g} {measure.name}s a "
            f"{area_of.name} ({row.source})",
        )
    ]
