"""What a material may bear: every figure of every material, and how it is arrived at."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from model.errors import BadInput
from model.materials import (
    OwnRows,
    Species,
    allowed,
    materials,
    sheet,
    species,
    stock_grades,
    wood,
)
from model.materials.clear_wood import clear_figure
from model.materials.derivation import FIGURES

ALL = tuple(materials())
# The figures of a wood, and the key of the line that its strength follows from.
COLUMNS = (
    ("bending", "mor_mpa"),
    ("shear", "shear_mpa"),
    ("compression_across", "compression_across_mpa"),
    ("stiffness", "moe_mpa"),
)


@pytest.mark.parametrize("key", ALL)
def test_every_material_has_every_figure(key: str) -> None:
    found = allowed(key)

    for name in FIGURES:
        assert math.isfinite(getattr(found, name)) and getattr(found, name) > 0, name


@pytest.mark.parametrize("key", ALL)
def test_the_steps_lead_to_the_figure(key: str) -> None:
    found = allowed(key)

    for name, steps in found.steps.items():
        value = steps[0].value_mpa
        for step in steps:
            value *= step.factor
            assert step.value_mpa == pytest.approx(value), (name, step.title)
            assert step.source, (name, step.title)
        assert getattr(found, name) == steps[-1].value_mpa
    assert set(found.steps) == set(FIGURES)


@pytest.mark.parametrize("key", ALL)
def test_no_step_is_missing_between_table_and_use(key: str) -> None:
    """What may be borne for ten years is less than half of what was tested or promised."""
    found = allowed(key, "straight")

    for name in ("bending_mpa", "shear_mpa"):
        assert found.steps[name][-1].value_mpa < 0.5 * found.steps[name][0].value_mpa, name


def test_sounder_boards_bear_more() -> None:
    bending = [allowed("yellow_poplar", grade).bending_mpa for grade in stock_grades()]
    stiffness = [allowed("yellow_poplar", grade).moe_mpa for grade in stock_grades()]

    assert bending == sorted(bending, reverse=True)
    assert bending[-1] < 0.5 * bending[0]
    assert stiffness[-1] < stiffness[0]


def test_a_grade_is_of_boards_and_means_nothing_to_a_sheet() -> None:
    for name in FIGURES:
        good, poor = allowed("birch_ply_12"), allowed("birch_ply_12", "knotty")
        assert getattr(good, name) == getattr(poor, name)


def test_plywood_is_weaker_across_its_face_and_fibreboard_is_not() -> None:
    ply, board = allowed("birch_ply_12"), allowed("mdf_18")

    assert ply.bending_across_mpa < ply.bending_mpa
    assert ply.moe_across_mpa < ply.moe_mpa
    assert (board.bending_across_mpa, board.moe_across_mpa) == (board.bending_mpa, board.moe_mpa)


def test_an_average_sheet_is_brought_down_further_than_a_promised_one() -> None:
    average = sheet("mdf_1_2in")
    least = replace(average, key="least", strength_is="least")

    own = OwnRows(sheets=(least,))

    assert allowed("mdf_1_2in").bending_mpa < allowed("least", own=own).bending_mpa


@pytest.mark.parametrize("key", ["european_beech", "european_oak"])
def test_woods_without_all_figures_are_judged_by_their_weight(key: str) -> None:
    steps = allowed(key).steps

    for name in ("shear_mpa", "across_mpa"):
        assert "woods as heavy as" in steps[name][0].title
        assert "weakest" in steps[name][1].title
    # Bending strength has a figure of its own, and that one is used.
    assert steps["bending_mpa"][0].value_mpa == wood(key).mor_mpa


@pytest.mark.parametrize(("figure", "column"), COLUMNS)
def test_the_line_of_all_woods_runs_through_the_woods_of_the_table(
    figure: str, column: str
) -> None:
    """It is from memory: the table's own woods bear it out, within a tenth on average."""
    line = clear_figure(figure)

    ratios = [getattr(row, column) / line.line(row) for row in with_figure(column)]

    assert sum(ratios) / len(ratios) == pytest.approx(1.0, abs=0.1)


@pytest.mark.parametrize(("figure", "column"), COLUMNS)
@pytest.mark.parametrize("kind", ["hardwood", "softwood"])
def test_no_published_wood_lies_below_the_weakest_that_is_reckoned_with(
    figure: str, column: str, kind: str
) -> None:
    line = clear_figure(figure)
    woods = [row for row in with_figure(column) if row.kind == kind]

    least = min(getattr(row, column) / line.line(row) for row in woods)

    assert line.least(kind) <= least < line.least(kind) + 0.02


def with_figure(column: str) -> list[Species]:
    """The woods whose figure is not merely remembered without any check."""
    return [
        row
        for row in species().values()
        if getattr(row, column) is not None and not row.note.startswith("low confidence")
    ]


def test_a_wood_of_ones_own_is_judged_by_its_own_figures() -> None:
    mine = replace(wood("yellow_poplar"), key="mine", name="My poplar", mor_mpa=35.0)

    found = allowed("mine", own=OwnRows(species=(mine,)))

    assert found.bending_mpa == pytest.approx(allowed("yellow_poplar").bending_mpa / 2)


def test_a_figure_of_nothing_is_refused_by_name() -> None:
    mine = replace(wood("yellow_poplar"), key="mine", name="My poplar", moe_mpa=0.0)

    with pytest.raises(BadInput, match="My poplar has no moe above zero"):
        allowed("mine", own=OwnRows(species=(mine,)))


def test_an_unknown_material_is_refused_with_its_neighbours() -> None:
    with pytest.raises(BadInput, match="no material called “yelow_poplar”.*yellow_poplar"):
        allowed("yelow_poplar")


def test_short_loads_may_be_heavier_and_bearing_across_the_grain_takes_no_factor() -> None:
    found = allowed("yellow_poplar")

    assert found.lasting("ten minutes") > found.lasting("ten years") == 1.0
    assert allowed("mdf_18").lasting("permanent") < found.lasting("permanent")
