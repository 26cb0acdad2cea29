"""Figures that no wood and no sheet can have are a slip of the pen: they are told at once.

The ranges are a little wider than the woods and sheets of the trade (Wood Handbook 2010, tables
4-3 and 5-3 to 5-5, balsa to the heaviest tropical woods, from memory; sheets: common practice, no
source).
"""

from __future__ import annotations

from collections.abc import Mapping

from model.errors import BadInput
from model.materials.sheet import Sheet
from model.materials.sheet_family import sheet_families
from model.materials.species import Species

Range = tuple[float, float, str]

WOOD: Mapping[str, Range] = {
    "density_kg_m3": (100, 1400, "kg/m3"),
    "specific_gravity": (0.09, 1.25, "times water"),
    "moe_mpa": (2000, 30000, "MPa"),
    "mor_mpa": (15, 300, "MPa"),
    "compression_across_mpa": (0.5, 40, "MPa"),
    "shear_mpa": (2, 45, "MPa"),
    "shrinkage_radial_pct": (0.5, 15, "%"),
    "shrinkage_tangential_pct": (1, 25, "%"),
    "shrinkage_volume_pct": (2, 35, "%"),
    "movement_radial": (0.0002, 0.007, "for each % of moisture"),
    "movement_tangential": (0.0004, 0.01, "for each % of moisture"),
    "fibre_saturation_pct": (15, 40, "%"),
}
SHEET: Mapping[str, Range] = {
    "nominal_mm": (1, 80, "mm"),
    "actual_mm": (1, 80, "mm"),
    "least_mm": (1, 80, "mm"),
    "most_mm": (1, 80, "mm"),
    "density_kg_m3": (100, 1300, "kg/m3"),
    "moe_along_mpa": (200, 25000, "MPa"),
    "moe_across_mpa": (200, 25000, "MPa"),
    "mor_along_mpa": (2, 200, "MPa"),
    "mor_across_mpa": (2, 200, "MPa"),
}
_LEAST_SHEET, _LARGEST_SHEET = 300.0, 6000.0  # mm
_NAMES_LONGEST = 60


def sensible_wood(row: Species, place: str) -> Species:
    """The row, if a wood can be so; refused with a sentence that names it and the figure."""
    _named(row.name, place)
    _in_range(row, row.name, WOOD, place)
    if row.shrinkage_tangential_pct < row.shrinkage_radial_pct:
        raise _senseless(place, f"{row.name} shrinks less along its rings than across them; "
                         "every wood shrinks more: are the two figures mixed up?")  # fmt: skip
    dry = row.density_kg_m3 / row.specific_gravity
    if not 1000 <= dry <= 1300:
        raise _senseless(
            place,
            f"{row.name} weighs {row.density_kg_m3:g} kg/m3 and has a specific gravity of "
            f"{row.specific_gravity:g}: at 12 % moisture the first is about 1120 times the second.",
        )
    return row


def sensible_sheet(row: Sheet, place: str) -> Sheet:
    """The row, if a sheet can be so; refused with a sentence that names it and the figure."""
    _named(row.product, place)
    if row.family not in sheet_families():
        raise _senseless(
            place, f"{row.name} is of no known family. Known: {', '.join(sheet_families())}."
        )
    _in_range(row, row.name, SHEET, place)
    if not row.least_mm <= row.actual_mm <= row.most_mm:
        raise _senseless(
            place,
            f"{row.name} is {row.actual_mm:g} mm thick, which is not between its least "
            f"({row.least_mm:g}) and its most ({row.most_mm:g}).",
        )
    for length, width in row.sizes:
        if not (_LEAST_SHEET <= width <= _LARGEST_SHEET and length <= _LARGEST_SHEET):
            raise _senseless(
                place, f"{row.name}: a sheet of {length:g} x {width:g} mm is not sold."
            )
    return row


def _named(name: str, place: str) -> None:
    if not name.strip() or len(name) > _NAMES_LONGEST or not name.isprintable():
        raise _senseless(place, f"a name of 1 to {_NAMES_LONGEST} printable characters is needed.")


def _in_range(row: object, name: str, ranges: Mapping[str, Range], place: str) -> None:
    for figure, (least, most, unit) in ranges.items():
        value = getattr(row, figure)
        if value is not None and not least <= value <= most:
            raise _senseless(
                place,
                f"{name} cannot have {figure} {value:g}; {least:g} to {most:g} {unit} would do.",
            )


def _senseless(place: str, sentence: str) -> BadInput:
    return BadInput(place.partition(",")[0], f"{place}: {sentence}")
