"""What an inch shop counts in where others count litres, square metres and metres.

A design keeps the packs and rates of its price list by the metric measure whatever is shown, so
that a bed costs the same in either unit.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from model.cost.price_keys import WORK
from model.cost.tables import SquareMetres, operations

_US_GALLON = 3.785411784  # litres: 231 cubic inches
_FOOT = 0.3048  # metres


@dataclass(frozen=True)
class Measure:
    """A measure as a list names it, and how much of the metric one it holds."""

    name: str
    holds: float = 1.0


_IN_INCHES: Mapping[str, Measure] = MappingProxyType(
    {
        "litre": Measure("US quart", _US_GALLON / 4),
        "m2": Measure("square foot", round(_FOOT**2, 8)),
        "metre": Measure("foot", _FOOT),
    }
)
_ALSO_READ = {"litre": (Measure("US gallon", _US_GALLON), Measure("US pint", _US_GALLON / 8))}
_LIQUIDS = ("finish", "glue")
_SPELLINGS = (("feet", "foot"), ("sq ft", "square foot"), ("liter", "litre"), ("meter", "metre"))
_PLACES = 8  # a square foot in m2 has no more: a rate is told and read back the same


def shop_measure(metric: str, shown_unit: str) -> Measure:
    """What a quantity is counted in, for lengths shown in mm or in inches; what is counted by the
    piece stays.

    Source: the US gallon is 231 cubic inches and the inch 25.4 mm, both exact by definition.
    """
    return _IN_INCHES.get(metric, Measure(metric)) if shown_unit == "inch" else Measure(metric)


def metric_measure(key: str) -> str:
    """By what a price list keeps the packs or the rate of a thing; "" where it is pieces."""
    if key.startswith(WORK):
        row = operations().get(key.removeprefix(WORK).partition("/")[0])
        return row.unit if row is not None and row.unit in _IN_INCHES else ""
    return "litre" if key.partition("/")[0] in _LIQUIDS else ""


def measures_of(metric: str) -> tuple[Measure, ...]:
    """All measures in which a pack or rate may be told that is kept by a metric one."""
    return (Measure(metric), _IN_INCHES[metric], *_ALSO_READ.get(metric, ()))


def measure_called(told: str, metric: str) -> Measure | None:
    """The measure that somebody means by `quarts`, `Liter` or `sq ft`; None: none of its kind."""
    return next((m for m in measures_of(metric) if _bare(m.name) == _bare(told)), None)


def _bare(name: str) -> str:
    """A measure's name in the singular, as it is spelt here."""
    bare = name.strip().casefold().removeprefix("us ").rstrip("s").replace("²", "2")
    for other, ours in _SPELLINGS:
        bare = bare.replace(other, ours)
    return bare


def converted(figure: float, holds: float) -> float:
    """A figure by another measure, without floating-point dust."""
    return round(figure * holds, _PLACES)


def poured(quantity: float) -> float:
    """To the next hundredth of a litre or quart: nobody measures paint or glue closer."""
    return math.ceil(quantity * 100 - 1e-6) / 100


def area_text(area: SquareMetres, shown_unit: str, places: int = 1) -> str:
    """`9.7 m2`, or `104 square feet`."""
    if shown_unit != "inch":
        return f"{area:.{places}f} m2"
    feet = area / shop_measure("m2", shown_unit).holds
    return f"{feet:.1f} square feet" if feet < 10 else f"{feet:.0f} square feet"
