"""A sheet of the maker's own from the few figures that he has: the others are those of the sheet of
the trade that is nearest to it.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import fields
from typing import Any

from model.errors import BadInput
from model.materials.own_cells import OWN_FIGURE, checked_key, key_from, known_columns
from model.materials.sense import sensible_sheet
from model.materials.sheet import Sheet, sheets
from model.materials.sheet_family import sheet_families
from model.materials.table import cell_of
from model.units import Mm

_COLUMNS = {field.name for field in fields(Sheet)}
_LIMITS: Mm = 0.5  # how far a sheet may be from its own measure, where nothing is said: assumed
_STRENGTH = ("moe_along_mpa", "moe_across_mpa", "mor_along_mpa", "mor_across_mpa", "strength_is")
_TAKEN = (*_STRENGTH, "density_kg_m3", "sheet_sizes_mm")
Row = dict[str, Any]


def sheet_of_cells(cells: Mapping[str, str], place: str) -> Sheet:
    """The sheet that a row of cells describes, by the columns of `sheets.csv`.

    Product, family and nominal thickness are needed. What else is left out is taken from the sheet
    of the trade of the same family that is nearest in thickness; all four figures of stiffness and
    strength, or none.
    Refused with BadInput, which names the sheet and the figure: a column that is not known, a
    figure that is missing or that no sheet has.
    """
    given = known_columns(cells, _COLUMNS, place)
    row: Row = {column: cell_of(text, Sheet, column, place) for column, text in given.items()}
    file = place.partition(",")[0]
    for column in ("product", "family", "nominal_mm"):
        if column not in row:
            raise BadInput(file, f"{place}: {column} is missing; a sheet needs it.")
    if row["family"] not in sheet_families():
        known = ", ".join(sheet_families())
        raise BadInput(file, f"{place}: there is no family “{row['family']}”. Known: {known}.")
    row.setdefault("nominal", f"{row['nominal_mm']:g} mm")
    named = key_from(f"{row['product']} {row['nominal']}")
    row["key"] = checked_key(row.get("key", named), place)
    row.setdefault("source", OWN_FIGURE)
    _complete_thickness(row)
    _complete_strength(row, place)
    return sensible_sheet(Sheet(**row), place)


def _complete_thickness(row: Row) -> None:
    row.setdefault("actual_mm", row["nominal_mm"])
    row.setdefault("least_mm", row["actual_mm"] - _LIMITS)
    row.setdefault("most_mm", row["actual_mm"] + _LIMITS)


def _complete_strength(row: Row, place: str) -> None:
    alike = [sheet for sheet in sheets().values() if sheet.family == row["family"]]
    nearest = min(alike, key=lambda sheet: abs(sheet.nominal_mm - row["nominal_mm"]))
    own = [column for column in _STRENGTH[:4] if column in row]
    if own and len(own) < 4:
        raise BadInput(
            place.partition(",")[0],
            f"{place}: {row['product']} has a {own[0]} but not all of "
            f"{', '.join(_STRENGTH[:4])}: give all four, or none.",
        )
    if own:
        row.setdefault("strength_is", "average")
    row.setdefault("source_strength", row["source"] if own else _as(nearest, "strength"))
    own_density = row["source"] if "density_kg_m3" in row else _as(nearest, "density")
    row.setdefault("source_density", own_density)
    for column in _TAKEN:
        row.setdefault(column, getattr(nearest, column))


def _as(sheet: Sheet, figure: str) -> str:
    return f"as {sheet.name}: {getattr(sheet, f'source_{figure}')}"
