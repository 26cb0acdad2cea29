"""A bottom's plate comes from its sheet: stiffer along the grain, softer in twist."""

from __future__ import annotations

from dataclasses import replace

import pytest

from model.errors import BadInput
from model.materials import OwnRows, allowed, material, materials, sheet, wood
from model.materials.panel import panel_plate
from model.materials.row_allowable import allowed_of


def test_plywood_is_stiffer_along_its_face_grain() -> None:
    """Birch, 6.5 mm: 12 737 and 4763 MPa, as the sheets' table has them."""
    plate = panel_plate(material("birch_ply_6_5"), 6.4)

    assert plate.along_x / plate.along_y == pytest.approx(12_737 / 4763)
    assert plate.along_x == pytest.approx(12_737 * 6.4**3 / 12, rel=0.006)  # Poisson's effect


def test_fibreboard_is_as_stiff_all_ways() -> None:
    """An even plate's twisting stiffness is its bending stiffness."""
    plate = panel_plate(material("mdf_9"), 9)

    assert plate.along_x == plate.along_y
    assert plate.twist == pytest.approx(plate.along_x)


def test_plywood_twists_more_easily_than_an_even_sheet() -> None:
    plate = panel_plate(material("birch_ply_6_5"), 6.4)

    assert plate.twist < 0.5 * (plate.along_x * plate.along_y) ** 0.5


def test_a_board_twists_by_its_own_shear_stiffness() -> None:
    """Yellow-poplar: E / 16; Wood Handbook 2021, chapter 5."""
    plate = panel_plate(material("yellow_poplar"), 9)

    assert plate.twist - plate.poisson == pytest.approx(2 * 10_900 / 16 * 9**3 / 12)


def test_knotty_boards_are_softer() -> None:
    poplar = material("yellow_poplar")

    clear, knotty = (panel_plate(poplar, 9, grade) for grade in ("clear", "knotty"))

    assert knotty.along_x == pytest.approx(0.9 * clear.along_x)


def test_no_thickness_is_refused() -> None:
    with pytest.raises(BadInput, match="thickness"):
        panel_plate(material("birch_ply_9"), 0)


def test_a_sheet_of_the_makers_own_has_its_own_plate() -> None:
    """Twice as stiff as the shipped one of that name, under another key."""
    shipped = sheet("birch_ply_6_5")
    stiffer = replace(shipped, key="my_ply", moe_along_mpa=2 * shipped.moe_along_mpa)
    row = materials(OwnRows(sheets=(stiffer,)))["my_ply"]

    own, usual = panel_plate(row, 6.4), panel_plate(material("birch_ply_6_5"), 6.4)

    assert own.along_x == pytest.approx(2 * usual.along_x)


def test_own_rows_bear_what_their_figures_say() -> None:
    shipped = wood("yellow_poplar")
    stronger = replace(shipped, key="my_poplar", mor_mpa=2 * shipped.mor_mpa)
    row = materials(OwnRows(species=(stronger,)))["my_poplar"]

    assert allowed_of(row).bending_mpa == pytest.approx(2 * allowed("yellow_poplar").bending_mpa)
    assert allowed_of(material("yellow_poplar")).steps == allowed("yellow_poplar").steps
