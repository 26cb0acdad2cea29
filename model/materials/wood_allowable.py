"""From the average of clear wood to what a board of a species may bear (ASTM D245)."""

from __future__ import annotations

from collections.abc import Mapping

from model.materials.clear_wood import ClearFigure, clear_figure
from model.materials.derivation import Allowed, Step, chain, start
from model.materials.species import Species
from model.materials.stock_grade import StockGrade, stock_grade
from model.units import Mpa

# The column of `species.csv` that holds a figure; what is in no column follows from the line.
_COLUMNS = {
    "bending": "mor_mpa",
    "shear": "shear_mpa",
    "compression_across": "compression_across_mpa",
    "stiffness": "moe_mpa",
}
_ACROSS_STIFFNESS = (
    "stiffness across the grain, the least of common woods",
    0.043,
    "Wood Handbook 2010 (FPL-GTR-190), table 5-1, yellow-poplar, from memory",
)
_SHEAR_STIFFNESS = (
    "stiffness in shear, where a wood has no figure of its own",
    1 / 16,
    "Wood Handbook 2021 (FPL-GTR-282), chapter 5",
)


def of_wood(wood: Species, grade: str) -> Allowed:
    """What boards of that species and stock grade may bear for ten years."""
    steps = _steps(wood, stock_grade(grade))
    return Allowed(
        key=wood.key,
        name=wood.name,
        product="solid",
        specific_gravity=wood.specific_gravity,
        density_kg_m3=wood.density_kg_m3,
        steps=steps,
        **{name: derived[-1].value_mpa for name, derived in steps.items()},
    )


def _steps(wood: Species, grade: StockGrade) -> Mapping[str, tuple[Step, ...]]:
    stiffness = _reduced("stiffness", wood, grade.stiffness, grade)
    return {
        "bending_mpa": _reduced("bending", wood, grade.bending, grade),
        "bending_across_mpa": _reduced("tension_across", wood, 1.0, grade),
        "shear_mpa": _reduced("shear", wood, grade.shear, grade),
        "across_mpa": _reduced("compression_across", wood, grade.compression_across, grade),
        "along_mpa": _reduced("compression_along", wood, grade.compression_along, grade),
        "moe_mpa": stiffness,
        "moe_across_mpa": chain(stiffness[-1], _ACROSS_STIFFNESS),
        "shear_modulus_mpa": chain(stiffness[-1], _SHEAR_STIFFNESS),
    }


def _reduced(name: str, wood: Species, ratio: float, grade: StockGrade) -> tuple[Step, ...]:
    """Average, fifth percentile, ten years and safety, grade; a line that changes nothing is left
    out.
    """
    figure = clear_figure(name)
    lines = _reductions(figure, wood, ratio, grade)
    *before, average = clear_average(figure, wood)
    return (*before, *chain(average, *(line for line in lines if line[1] != 1.0)))


def _reductions(
    figure: ClearFigure, wood: Species, ratio: float, grade: StockGrade
) -> tuple[tuple[str, float, str], ...]:
    return (
        ("what 95 pieces of 100 reach", figure.fifth_percentile, figure.source_variation),
        (
            f"ten years of load and safety, {wood.kind}",
            1 / figure.divisor(wood.kind),
            figure.source_divisor,
        ),
        (grade.name, ratio, grade.source),
    )


def clear_average(figure: ClearFigure, wood: Species) -> tuple[Step, ...]:
    """The average of small clear pieces: the wood's own figure, or what its weight promises."""
    own: Mpa | None = getattr(wood, _COLUMNS[figure.key]) if figure.key in _COLUMNS else None
    if own is not None:
        source = wood.source_of(_COLUMNS[figure.key])
        return (start(f"{figure.name} of clear {wood.name}, average", own, source),)
    said = f"{figure.name} of woods as heavy as {wood.name} (specific gravity "
    return chain(
        start(f"{said}{wood.specific_gravity:g})", figure.line(wood), figure.source_relation),
        ("the weakest wood beside that line", figure.least(wood.kind), figure.source_least),
    )
