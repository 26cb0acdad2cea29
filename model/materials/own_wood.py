"""A wood of the maker's own from the few figures that he has: the others follow, and say how."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import fields
from typing import Any

from model.errors import BadInput
from model.materials.clear_wood import clear_figure
from model.materials.movement import coefficient_of, shrinkage_of
from model.materials.own_cells import OWN_FIGURE, checked_key, key_from, known_columns
from model.materials.sense import sensible_wood
from model.materials.species import Species
from model.materials.table import cell_of

_DRY_MASS = 1120  # kg/m3 at 12 % moisture per unit of specific gravity: eq 4-14
_EQ_4_14 = "derived: 1120 x specific gravity at 12 % (Wood Handbook 2021, eq 4-14)"
_TABLE = "Wood Handbook 2010 (FPL-GTR-190), footnote of table 13-5, from memory"
_NEEDED = (
    "give density_kg_m3 or specific_gravity, and shrinkage_radial_pct with "
    "shrinkage_tangential_pct or movement_radial with movement_tangential"
)
_COLUMNS = {field.name for field in fields(Species)}
Row = dict[str, Any]


def wood_of_cells(cells: Mapping[str, str], place: str) -> Species:
    """The wood that a row of cells describes, by the columns of `species.csv`.

    Name, kind, weight and shrinkage (or movement) are needed. Density and specific gravity, and
    shrinkage and movement, follow from each other; stiffness and strength that are left out are
    taken as those of the weakest wood of this weight.
    Refused with BadInput, which names the wood and the figure: a column that is not known, a figure
    that is missing or that no wood has.
    """
    given = known_columns(cells, _COLUMNS, place)
    row: Row = {column: cell_of(text, Species, column, place) for column, text in given.items()}
    name = row.get("name", "")
    if not name:
        raise BadInput(place.partition(",")[0], f"{place}: name is missing: what is it called?")
    if "kind" not in row:
        raise BadInput(
            place.partition(",")[0], f"{place}: {name} needs its kind: hardwood or softwood."
        )
    row["key"] = checked_key(row.get("key", key_from(name)), place)
    row.setdefault("source", OWN_FIGURE)
    _say_own_sources(row)
    _complete_weight(row, place)
    _complete_movement(row, place)
    _complete_strength(row)
    for column in ("botanical_name", *(c for c in _COLUMNS if c.startswith("source_"))):
        row.setdefault(column, "")
    row.setdefault("compression_across_mpa", None)
    row.setdefault("shear_mpa", None)
    return sensible_wood(Species(**row), place)


def _say_own_sources(row: Row) -> None:
    for column in [c for c in row if f"source_{c}" in _COLUMNS and row[c] is not None]:
        row.setdefault(f"source_{column}", row["source"])


def _complete_weight(row: Row, place: str) -> None:
    if "specific_gravity" not in row and "density_kg_m3" not in row:
        raise _missing(row, place, "how heavy it is")
    if "specific_gravity" not in row:
        _put(row, "specific_gravity", round(row["density_kg_m3"] / _DRY_MASS, 3), _EQ_4_14)
    if "density_kg_m3" not in row:
        _put(row, "density_kg_m3", round(row["specific_gravity"] * _DRY_MASS, 1), _EQ_4_14)


def _complete_movement(row: Row, place: str) -> None:
    if "fibre_saturation_pct" not in row:
        _put(row, "fibre_saturation_pct", 30.0, "from memory: shrinkage taken to start at 30 %")
    saturation = row["fibre_saturation_pct"]
    for way in ("radial", "tangential"):
        shrinkage, movement = f"shrinkage_{way}_pct", f"movement_{way}"
        if shrinkage not in row and movement not in row:
            raise _missing(row, place, "how much it shrinks")
        if movement not in row:
            coefficient = coefficient_of(row[shrinkage], saturation)
            _put(row, movement, round(coefficient, 5), f"derived from its shrinkage: {_TABLE}")
        if shrinkage not in row:
            back = round(shrinkage_of(row[movement], saturation), 1)
            _put(row, shrinkage, back, f"derived from its movement: {_TABLE}")
    if "shrinkage_volume_pct" not in row:
        both = row["shrinkage_radial_pct"] + row["shrinkage_tangential_pct"]
        _put(row, "shrinkage_volume_pct", both, "derived: radial and tangential together")


def _complete_strength(row: Row) -> None:
    """As the weakest wood of this weight; shear and bearing stay open, their steps do the same."""
    for column, figure in (("moe_mpa", "stiffness"), ("mor_mpa", "bending")):
        if column not in row:
            line = clear_figure(figure)
            value = line.line_at(row["kind"], row["specific_gravity"]) * line.least(row["kind"])
            said = f"{line.source_relation}; then {line.source_least}"
            _put(row, column, round(value, 1), f"derived from its weight: {said}")


def _put(row: Row, column: str, value: float, source: str) -> None:
    row[column], row[f"source_{column}"] = value, source


def _missing(row: Row, place: str, what: str) -> BadInput:
    return BadInput(
        place.partition(",")[0], f"{place}: {row['name']} does not say {what}: {_NEEDED}."
    )
