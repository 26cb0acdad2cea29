"""Woods and sheets as text for a plain terminal: every figure with its source, and how what a
material may bear is arrived at.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import fields
from textwrap import wrap
from typing import NamedTuple

from model.errors import BadInput
from model.materials import (
    Allowed,
    OwnRows,
    Sheet,
    Species,
    allowed,
    material,
    sheets,
    species,
)
from model.materials.sense import SHEET, WOOD

_BORNE = {
    "bending_mpa": "bending", "bending_across_mpa": "bending across the grain",
    "shear_mpa": "shear", "across_mpa": "bearing on its side", "along_mpa": "compression along",
    "moe_mpa": "stiffness", "moe_across_mpa": "stiffness across",
    "shear_modulus_mpa": "stiffness in shear",
}  # fmt: skip
_STRENGTH = ("moe_along_mpa", "moe_across_mpa", "mor_along_mpa", "mor_across_mpa")
_NEEDED = {
    "woods": ("name", "kind", "density_kg_m3", "shrinkage_radial_pct", "shrinkage_tangential_pct"),
    "sheets": ("product", "family", "nominal_mm"),
}


class Figure(NamedTuple):
    """One figure of a material as it is shown: its name, the figure with its unit, its source."""

    name: str
    value: str
    source: str


def figures(row: Species | Sheet) -> tuple[Figure, ...]:
    """Every figure of a wood or sheet, with where it comes from."""
    ranges = WOOD if isinstance(row, Species) else SHEET
    return tuple(
        Figure(_called(name), f"{value:g} {unit}".strip(), _source(row, name))
        for name, (_, _, unit) in ranges.items()
        if (value := getattr(row, name)) is not None
    )


def row_of(key: str, own: OwnRows) -> Species | Sheet:
    """The wood or sheet with that key; refused with the keys that are near."""
    material(key, own)
    woods, flat = species(own.species), sheets(own.sheets)
    return woods[key] if key in woods else flat[key]


def lines(own: OwnRows, columns: int) -> Iterator[str]:
    """Every material on a line: key, weight, stiffness and strength; the maker's own marked."""
    keys = [*species(own.species), *sheets(own.sheets)]
    wide = max(len(key) for key in keys)
    yield f"{'':{wide}}  kg/m3  stiff, MPa  bends, MPa"
    for key in keys:
        row = row_of(key, own)
        stiff, strong = (
            (row.moe_mpa, row.mor_mpa)
            if isinstance(row, Species)
            else (row.moe_along_mpa, row.mor_along_mpa)
        )
        mine = "  your own" if key in own.keys else ""
        yield f"{key:{wide}}  {row.density_kg_m3:5.0f}  {stiff:10.0f}  {strong:10.1f}{mine}"
    yield from wrap(
        "Figures as tested or promised: see one material for what it may bear.", columns
    )


def detail(key: str, own: OwnRows, grade: str, columns: int) -> Iterator[str]:
    """One material: every figure with its source, then each step to what it may bear."""
    row, may = row_of(key, own), allowed(key, grade, own)
    mine = ", your own" if key in own.keys else ""
    yield from wrap(f"{key}: {row.name}{mine}", columns)
    for figure in figures(row):
        yield from _wrapped(f"{figure.name} {figure.value}", figure.source, columns)
    if row.note:
        yield from wrap(f"Note: {row.note}", columns, initial_indent="  ", subsequent_indent="    ")
    yield ""
    yield "What it may bear for ten years:"
    yield from _borne(may, columns)


def _borne(may: Allowed, columns: int) -> Iterator[str]:
    for name, steps in may.steps.items():
        yield from wrap(f"  {_BORNE[name]}: {_mpa(getattr(may, name))} MPa", columns)
        for step in steps:
            sign = "" if step is steps[0] else f" x {step.factor:.3g}"
            said = f"{step.title}{sign} = {_mpa(step.value_mpa)}"
            yield from _wrapped(said, step.source, columns, indent=4)


def _mpa(value: float) -> str:
    return f"{value:.0f}" if value >= 1000 else f"{value:.4g}"


def template(kind: str) -> str:
    """The line of headings of a table of one's own, those first that are needed, and a row."""
    if kind not in _NEEDED:
        raise BadInput("--template", f"There is no table of {kind}; there are woods and sheets.")
    row = Species if kind == "woods" else Sheet
    others = [field.name for field in fields(row) if field.name not in _NEEDED[kind]]
    plain = [name for name in others if not name.startswith("source_") and name != "key"]
    return ",".join((*_NEEDED[kind], *plain)) + "\n"


def _called(name: str) -> str:
    for ending in ("_kg_m3", "_mpa", "_pct", "_mm"):
        name = name.removesuffix(ending)
    words = {"moe": "stiffness", "mor": "bending strength", "shear": "shear strength"}
    first, _, rest = name.partition("_")
    return f"{words.get(first, first)} {rest}".replace("_", " ").strip()


def _source(row: Species | Sheet, name: str) -> str:
    if isinstance(row, Species):
        return row.source_of(name)
    if name == "density_kg_m3":
        return row.source_density
    return row.source_strength if name in _STRENGTH else row.source


def _wrapped(said: str, source: str, columns: int, indent: int = 2) -> Iterator[str]:
    margin, further = " " * indent, " " * (indent + 4)
    yield from wrap(f"{said} ({source})", columns, initial_indent=margin, subsequent_indent=further)
