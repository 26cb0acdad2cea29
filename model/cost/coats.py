"""Coats of finish and grits of abrasive: how often an area is gone over, and what that uses up."""

from __future__ import annotations

import math
from dataclasses import dataclass

from model.bed import Bed
from model.cost.buy import Need
from model.cost.measures import area_text, poured, shop_measure
from model.cost.surfaces import Surfaces
from model.cost.tables import Abrasive, Coating, Litres, SquareMetres, abrasives, coatings, pack_of
from model.units import Count

_TOP = {"painted": "paint", "clear": "clear", "oil": "oil"}


@dataclass(frozen=True, kw_only=True)
class Coat:
    """A coating, how often it goes on, and on what area, m2."""

    coating: Coating
    coats: Count
    area: SquareMetres

    @property
    def spread(self) -> SquareMetres:
        """What is covered in all coats together, m2."""
        return self.coats * self.area


@dataclass(frozen=True, kw_only=True)
class Grit:
    """A grit, and the area that is sanded with it, m2."""

    abrasive: Abrasive
    area: SquareMetres

    @property
    def is_between(self) -> bool:
        """Whether it is for the coats, and not for the wood."""
        return self.abrasive.key == "between"


def coats(bed: Bed, areas: Surfaces) -> tuple[Coat, ...]:
    """What goes on, in order: sealer on fibreboard, primer under paint, then the finish itself.

    Oil needs neither.
    Source: common practice, no source
    """
    finish = str(bed["finish"])
    if finish == "none":
        return ()
    on = {_TOP[finish]: (bed["finish_coats"], areas.all)}
    if finish == "painted":
        on["primer"] = (bed["primer_coats"], areas.all)
    if finish != "oil":
        on["sealer"] = (bed["sealer_coats"], areas.fibreboard)
    return tuple(
        Coat(coating=row, coats=on[key][0], area=on[key][1])
        for key, row in coatings().items()
        if key in on and on[key][0] and on[key][1]
    )


def grits(bed: Bed, areas: Surfaces, on: tuple[Coat, ...], bare: Surfaces) -> tuple[Grit, ...]:
    """What is sanded with each grit up to the last one chosen, and lightly between the coats.

    `areas` are what is finished, `bare` all that is sanded before.

    Nothing is sanded after the last coat, nor between coats of oil.
    Source: common practice, no source
    """
    last = int(bed["sanded_to"])
    found = []
    for row in abrasives().values():
        if row.key == "between":
            built = sum(coat.spread for coat in on if coat.coating.key != "oil")
            area = max(built - areas.all, 0.0)
        elif row.grit <= last:
            area = bare.solid * (row.on_solid == "yes") + bare.sheets * (row.on_sheets == "yes")
        else:
            continue
        if area:
            found.append(Grit(abrasive=row, area=area))
    return tuple(found)


def coating_needs(bed: Bed, on: tuple[Coat, ...]) -> list[Need]:
    """Litres or quarts of each coating, with what is lost, in cans."""
    kept = 1 - bed["finish_loss"] / 100
    unit: str = bed["shown_unit"]
    measure = shop_measure("litre", unit)
    return [
        Need(
            key=f"finish/{coat.coating.key}",
            group="finish",
            name=coat.coating.name,
            quantity=poured(coat.spread / coat.coating.m2_per_litre / kept / measure.holds),
            unit=measure.name,
            size=f"{coat.coats} {'coat' if coat.coats == 1 else 'coats'} on "
            f"{area_text(coat.area, unit)}",
            pack=_can(coat.coating, unit) / measure.holds,
            holds=measure.holds,
            note=f"{_spread(coat.coating, unit)} ({coat.coating.source})",
        )
        for coat in on
    ]


def _can(coating: Coating, unit: str) -> Litres:
    return coating.can_us_l if unit == "inch" else coating.can_metric_l


def _spread(coating: Coating, unit: str) -> str:
    """How far a litre or a quart goes in one coat."""
    measure = shop_measure("litre", unit)
    if measure.holds == 1:
        return f"{coating.m2_per_litre:g} m2 a litre"
    return f"{area_text(coating.m2_per_litre * measure.holds, unit)} a {measure.name}"


def abrasive_needs(sanded: tuple[Grit, ...], unit: str = "mm") -> list[Need]:
    """Discs of each grit; areas for lengths shown in `unit`."""
    return [
        Need(
            key=f"abrasives/{grit.abrasive.key}",
            group="abrasives",
            name=grit.abrasive.name,
            quantity=math.ceil(grit.area / grit.abrasive.m2_per_disc - 1e-9),
            unit="sheet" if grit.is_between else "disc",
            size=area_text(grit.area, unit),
            pack=pack_of("disc").pack,
            note=f"{_each(grit.abrasive, unit)} each ({grit.abrasive.source})",
        )
        for grit in sanded
    ]


def _each(abrasive: Abrasive, unit: str) -> str:
    if unit == "inch":
        return area_text(abrasive.m2_per_disc, unit)
    return f"{abrasive.m2_per_disc:g} m2"
