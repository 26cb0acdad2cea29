"""Corners of drawer boxes, by hand."""

from __future__ import annotations

from dataclasses import replace

import pytest

from model.checks.strength.box_corner import Corner, pocket_screws
from model.materials import allowed
from model.mechanics.duration import duration_factor
from model.part import Screw
from model.solids.screwing import ScrewPoint

PLY, MAPLE, MDF = allowed("birch_ply_12"), allowed("sugar_maple"), allowed("mdf_1_2in")
CORNER = Corner(joint="rabbet", sheet=PLY, thickness=12.0, height=180.0)


def screw(into: str = "box_near_sides", bite: float = 12.0) -> ScrewPoint:
    return ScrewPoint(
        piece=3, name="box front", rules=("left.box_fronts", "left.box_near_sides"),
        screw=Screw("pocket screw", (0, 20, 6), (1, 0, 0), 25.4, 3.51, into), into=1, bite=bite,
        cover=3.0, has_walls=True,
    )  # fmt: skip


def test_half_the_veneers_of_a_plywood_edge_hold_glue() -> None:
    """12 x 180 mm, half of it, at the shear that plywood bears between its layers."""
    holds, by = CORNER.holds()

    assert holds == pytest.approx(0.5 * 12 * 180 * PLY.shear_mpa * PLY.lasting("ten minutes"))
    assert by == "the glue of its rabbet"


def test_end_grain_glued_into_a_rabbet_counts_for_nothing() -> None:
    assert replace(CORNER, sheet=MAPLE).holds()[0] == 0


def test_dovetails_of_solid_wood_hold_by_their_cheeks() -> None:
    """Six cheeks of 12 x 12 mm."""
    holds, by = replace(CORNER, joint="dovetail", sheet=MAPLE, cheeks=6).holds()

    assert holds == pytest.approx(6 * 12 * 12 * MAPLE.shear_mpa * 1.6)
    assert by == "the glue of its dovetail"


def test_fibreboard_has_no_end_grain() -> None:
    holds, _ = replace(CORNER, sheet=MDF).holds()

    assert holds == pytest.approx(12 * 180 * MDF.shear_mpa * MDF.lasting("ten minutes"))


def test_wood_behind_a_dado_holds_a_back_of_solid_wood() -> None:
    """12.7 mm of side behind the back, sheared off along its grain at 1.5 V / A."""
    holds, by = replace(CORNER, joint="dado", sheet=MAPLE, behind=12.7).holds()

    assert holds == pytest.approx(12.7 * 180 * MAPLE.shear_mpa * 1.6 / 1.5)
    assert by == "the wood behind its dado"


def test_pocket_screws_hold_a_butted_corner_of_solid_wood() -> None:
    one, two = (replace(CORNER, joint="butt", sheet=MAPLE, screws=(screw(),) * n) for n in (1, 2))

    assert two.holds()[0] == pytest.approx(2 * one.holds()[0])
    assert one.holds()[0] > 100 * duration_factor("ten minutes")
    assert two.holds()[1] == "its pocket screws"


def test_a_screw_that_hardly_bites_holds_nothing() -> None:
    barely = replace(CORNER, joint="butt", sheet=MAPLE, screws=(screw(bite=2.0),))

    assert barely.holds()[0] == 0


def test_the_screws_of_one_end_are_counted() -> None:
    points = (screw(), screw("box_far_sides"), screw(), replace(screw(), into=-1))

    assert len(pocket_screws(points, "left.box_fronts")) == 2
    assert pocket_screws(points, "right.box_fronts") == ()
