"""Fronts, their panels and the bottoms of boxes over the year."""

from __future__ import annotations

import pytest

from model.checks.movement.fronts import bottom_free, front_slips_on_screws, inset_fronts_free
from model.checks.record import Finding, Verdict
from model.materials import material
from tests.model.checks.movement.beds import DAMP, built, movement

OAK, BOARD = material("white_oak"), material("birch_ply_6_5")
INSET = {"front_fit": "inset", "front_material": "white_oak", "front_stock": 19.05}
FRAMED = {
    "front_style": "frame and panel",
    "front_panel_material": "white_oak",
    "front_panel_stock": 9.0,
}


def verdict(finding: Finding | None) -> Verdict:
    assert finding is not None
    return finding.verdict


def test_an_inset_front_that_closes_its_gap_sticks() -> None:
    """A furniture forum: 1/16 in, and the season on top; 1/32 in at the least."""
    assert verdict(inset_fronts_free(3, "inset", True, 0.7)) is Verdict.FAILS
    assert verdict(inset_fronts_free(3, "inset", True, 1.2)) is Verdict.TIGHT
    assert verdict(inset_fronts_free(3, "inset", True, 1.6)) is Verdict.HOLDS
    assert inset_fronts_free(3, "overlay", True, 0.0) is None
    assert inset_fronts_free(3, "inset", False, 0.0) is None


def test_a_tall_front_of_solid_wood_needs_the_season_on_top() -> None:
    """Inset fronts: how big a gap? By height, wood and house."""
    bed = built(**INSET)
    points = bed["wood_wettest"] - bed["bench_moisture"]

    found = movement(bed)["left.inset_fronts_free"]

    swell = bed["left.front_height"] * 0.00365 * points
    assert found.value == pytest.approx(-bed["left.front_lap_up"] - swell / 2)
    assert movement(built(**INSET, **DAMP))["left.inset_fronts_free"].value < found.value


def test_an_inset_front_is_told_of_once() -> None:
    for choices in ({"front_fit": "inset"}, INSET):
        ids = [f.id for f in built(**choices).findings if "round the inset" in f.title]

        assert len([each for each in ids if each.startswith("left.")]) == 1


def test_a_framed_front_keeps_its_height_and_widens_by_its_stiles() -> None:
    bed = built(front_style="frame and panel", **INSET)

    assert bed["left.front_swell_up"] == 0
    # Yellow-poplar, two stiles.
    points = bed["wood_wettest"] - bed["bench_moisture"]
    wide = 2 * bed["front_stile_width"]
    assert bed["left.front_swell_across"] == pytest.approx(wide * 0.00289 * points)


def test_a_solid_panel_of_a_front_is_followed_and_a_sheet_is_not() -> None:
    solid = movement(built(**FRAMED))
    sheet = movement(built(front_style="frame and panel"))

    assert {"left.front_panel_free", "left.front_panel_held"} <= set(solid)
    assert not {"left.front_panel_free", "left.front_panel_held"} & set(sheet)


def test_a_front_that_moves_further_than_its_holes_allow_splits() -> None:
    assert verdict(front_slips_on_screws(3, "slab", OAK, 1.6)) is Verdict.FAILS
    assert verdict(front_slips_on_screws(3, "slab", OAK, 1.2)) is Verdict.TIGHT
    assert front_slips_on_screws(3, "slab", BOARD, 9.0) is None


def test_a_solid_bottom_in_a_groove_all_round_bursts_its_box() -> None:
    """From front to back: 500 mm of oak swell by 3.6 mm, and a groove gives 1.6."""
    assert verdict(bottom_free(1, OAK, "groove", 3.6, 0.8, 12.7)) is Verdict.FAILS
    assert verdict(bottom_free(1, OAK, "under back", 3.6, 0.8, 12.7)) is Verdict.HOLDS
    assert verdict(bottom_free(1, OAK, "under back", 13.0, 0.8, 12.7)) is Verdict.FAILS
    assert bottom_free(1, BOARD, "groove", 9.0, 0.8, 12.7) is None
