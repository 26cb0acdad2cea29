"""The maker's own woods and sheets: what may be left out, what follows, and what is refused."""

from __future__ import annotations

from dataclasses import fields

import pytest

from model.bed import Design, solve
from model.errors import BadInput
from model.materials import OwnRows, Species, allowed, material, sheet, wood
from model.materials.clear_wood import clear_figure
from model.materials.movement import coefficient_of
from model.materials.own_rows import record_of_rows, rows_of_record, rows_of_table

ELM = "name,kind,density_kg_m3,shrinkage_radial_pct,shrinkage_tangential_pct\n"
ELM_ROW = "Wych elm,hardwood,670,5.2,8.0\n"
PLY = "product,family,nominal_mm,actual_mm\nPoplar plywood,softwood_ply,18,17.2\n"


def woods(text: str) -> tuple[Species, ...]:
    return rows_of_table(text, "my_woods.csv").species


def elm(**cells: str) -> Species:
    """The elm with some cells changed or added."""
    row = dict(zip(ELM.strip().split(","), ELM_ROW.strip().split(","), strict=True)) | cells
    return woods(",".join(row) + "\n" + ",".join(row.values()) + "\n")[0]


def refusal(text: str) -> str:
    with pytest.raises(BadInput) as caught:
        rows_of_table(text, "my_woods.csv")
    return caught.value.sentence


# ---------------------------------------------------------------- what follows


def test_a_wood_needs_its_weight_and_its_shrinkage_only() -> None:
    row = elm()

    assert (row.key, row.name) == ("wych_elm", "Wych elm")
    # Equation 4-14 of the Wood Handbook at 12 %: 1120 kg/m3 for each unit of specific gravity.
    assert row.specific_gravity == pytest.approx(670 / 1120, abs=5e-4)
    assert row.movement_tangential == pytest.approx(coefficient_of(8.0, 30), abs=5e-6)
    assert row.shrinkage_volume_pct == pytest.approx(13.2)


def test_every_figure_says_where_it_comes_from() -> None:
    row = elm(moe_mpa="10200", source="a timber merchant")

    assert row.source_density_kg_m3 == row.source_moe_mpa == "a timber merchant"
    assert "derived" in row.source_specific_gravity
    assert "derived" in row.source_mor_mpa
    for field in fields(row):
        if f"source_{field.name}" in row.__dataclass_fields__:
            given = getattr(row, field.name) is not None
            assert bool(row.source_of(field.name)) == given, field.name


def test_strength_that_nobody_gave_is_that_of_the_weakest_wood_of_its_weight() -> None:
    row, line = elm(), clear_figure("bending")

    assert row.mor_mpa == pytest.approx(line.line(row) * line.least("hardwood"), abs=0.05)
    # The maker's own figure, once given, is used as it is.
    assert elm(mor_mpa="95").mor_mpa == 95.0


def test_movement_may_be_given_in_place_of_shrinkage() -> None:
    row = woods(
        "name,kind,specific_gravity,movement_radial,movement_tangential\n"
        "Tulip,hardwood,0.42,0.00158,0.00289\n"
    )[0]

    poplar = wood("yellow_poplar")
    assert row.shrinkage_tangential_pct == pytest.approx(poplar.shrinkage_tangential_pct, abs=0.05)
    assert row.density_kg_m3 == pytest.approx(poplar.density_kg_m3, abs=0.5)


def test_a_sheet_takes_after_the_nearest_sheet_of_its_family() -> None:
    (row,) = rows_of_table(PLY, "my_sheets.csv").sheets

    nearest = sheet("softwood_ply_23_32in")
    assert (row.actual_mm, row.least_mm, row.most_mm) == (17.2, 16.7, 17.7)
    assert row.moe_along_mpa == nearest.moe_along_mpa
    assert nearest.name in row.source_strength
    assert row.has_grain


def test_a_table_copied_from_a_spreadsheet_reads_the_same() -> None:
    pasted = (ELM + ELM_ROW).replace(",", "\t")

    assert woods(pasted) == woods(ELM + ELM_ROW)


def test_a_table_with_decimal_commas_reads_the_same() -> None:
    continental = ELM.replace(",", ";") + "Wych elm;hardwood;670;5,2;8,0\n"

    assert woods(continental) == woods(ELM + ELM_ROW)


def test_rows_read_back_from_their_record() -> None:
    own = rows_of_table(ELM + ELM_ROW, "a").joined(rows_of_table(PLY, "b"))

    assert rows_of_record(record_of_rows(own), "own") == own
    assert record_of_rows(OwnRows()) == {}


# ---------------------------------------------------------------- what is refused


@pytest.mark.parametrize(
    ("cells", "said"),
    [
        ({"density_kg_m3": "6700"}, "Wych elm cannot have density_kg_m3 6700; 100 to 1400"),
        ({"moe_mpa": "10.2"}, "moe_mpa 10.2; 2000 to 30000 MPa would do"),
        ({"shrinkage_tangential_pct": "80"}, "shrinkage_tangential_pct 80"),
        ({"shrinkage_radial_pct": "8", "shrinkage_tangential_pct": "5"}, "mixed up"),
        ({"specific_gravity": "0.3"}, "about 1120 times"),
        ({"kind": "tree"}, "kind is “tree”, not one of hardwood, softwood"),
        ({"density_kg_m3": "heavy"}, "density_kg_m3 is “heavy”, not a number"),
        ({"density_kg_m3": "-670"}, "not a number of zero or more"),
        ({"density_kg_m3": ""}, "Wych elm does not say how heavy it is"),
        ({"shrinkage_radial_pct": ""}, "Wych elm does not say how much it shrinks"),
        ({"name": ""}, "name is missing"),
        ({"kind": ""}, "Wych elm needs its kind"),
        ({"key": "My Elm"}, "the key “My Elm”"),
        ({"colour": "brown"}, "there is no column “colour”"),
        ({"key": "birch_ply_12"}, "taken by another kind"),
    ],
)
def test_a_wood_that_cannot_be_is_refused_by_name(cells: dict[str, str], said: str) -> None:
    row = dict(zip(ELM.strip().split(","), ELM_ROW.strip().split(","), strict=True)) | cells
    text = ",".join(row) + "\n" + ",".join(row.values()) + "\n"

    sentence = refusal(text)

    assert said in sentence
    assert sentence.startswith("my_woods.csv")


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("", "holds no rows"),
        (ELM, "holds no rows"),
        (ELM + "Wych elm,hardwood\n", "differ in length"),
        (ELM + ELM_ROW + ELM_ROW, "stands twice"),
        (PLY.replace("softwood_ply", "cardboard"), "no family “cardboard”"),
        (PLY.replace("17.2", "172"), "cannot have actual_mm 172"),
        (PLY.replace("family", "note"), "family is missing"),
    ],
)
def test_a_table_that_is_none_is_refused(text: str, said: str) -> None:
    assert said in refusal(text)


def test_half_of_a_sheets_strength_is_refused() -> None:
    text = PLY.replace("actual_mm", "moe_along_mpa").replace("17.2", "8000")

    assert "give all four, or none" in refusal(text)


# ---------------------------------------------------------------- in a bed


def test_a_bed_is_built_weighed_and_judged_in_a_wood_of_ones_own() -> None:
    own = OwnRows(species=(elm(),))
    design = Design().with_own(own).with_choices({"frame_wood": "wych_elm"})

    bed = solve(design)

    rail = next(mark for mark in bed.marks if mark.name == "end rail")
    assert rail.material_name == "Wych elm"
    by_hand = rail.length * rail.width * rail.thickness * 670e-9
    assert bed.masses[rail.pieces[0]] == pytest.approx(by_hand, rel=0.05)
    assert bed["frame_wood"] == material("wych_elm", own)
    assert allowed("wych_elm", own=own).bending_mpa > 0
    assert [f for f in bed.findings if f.group == "movement"]


def test_a_wood_of_ones_own_may_stand_in_for_one_of_the_table() -> None:
    own = OwnRows(species=(elm(name="Yellow-poplar", key="yellow_poplar"),))

    assert material("yellow_poplar", own).density_kg_m3 == 670.0
    assert solve(Design().with_own(own)).masses.sum() > solve(Design()).masses.sum()


def test_a_wood_that_is_still_chosen_is_not_taken_away() -> None:
    own = OwnRows(species=(elm(),))
    design = Design().with_own(own).with_choices({"slat_wood": "wych_elm"})

    with pytest.raises(BadInput, match="Wych elm is still chosen .Slat wood.; choose another"):
        design.with_own(own.without("wych_elm"))
    freed = design.with_choices({"slat_wood": "yellow_poplar"})
    assert freed.with_own(own.without("wych_elm")).own == OwnRows()


def test_new_figures_of_a_wood_are_taken_at_once() -> None:
    design = Design().with_own(OwnRows(species=(elm(),)))
    first = solve(design.with_choices({"frame_wood": "wych_elm"}))

    heavier = OwnRows(species=(elm(density_kg_m3="700"),))
    again = solve(first.design.with_own(heavier), first)

    assert again.masses.sum() > first.masses.sum()


def test_a_wood_of_another_maker_cannot_be_chosen() -> None:
    with pytest.raises(BadInput, match="frame_wood cannot be 'wych_elm'"):
        Design().with_choices({"frame_wood": "wych_elm"})
