"""Every solid part's change can be read, and slats, deck, closing panels and layers are asked."""

from __future__ import annotations

import pytest

from model.checks.movement.closing import closing_panel_free, closing_panel_held
from model.checks.movement.deck import deck_panels_apart, slats_apart
from model.checks.record import Finding, Verdict
from model.materials import material, materials
from tests.model.checks.movement.beds import DAMP, built, movement

OAK, BOARD = material("white_oak"), material("birch_ply_18")


def verdict(finding: Finding | None) -> Verdict:
    assert finding is not None
    return finding.verdict


def test_every_solid_part_is_named_with_its_change() -> None:
    bed = built()
    told = {f.place: f.reason for f in movement(bed).values() if "seasonal_widths" in f.id}

    for mark in bed.marks:
        if materials()[mark.material].kind == "solid":
            assert mark.part.name in told[mark.part.assembly], mark.part.name


def test_no_sheet_is_said_to_move() -> None:
    bed = built()
    told = " ".join(f.reason for f in movement(bed).values() if "seasonal_widths" in f.id)

    assert "box side" not in told
    assert "panel 7" not in told  # the MDF panels of the ends


def test_the_greatest_change_is_that_of_the_widest_part() -> None:
    """Wood Handbook, eq 13-2: 190.5 mm of poplar rail, 0.00289 per point."""
    bed = built()
    points = bed["wood_wettest"] - bed["wood_driest"]

    found = movement(bed)["seasonal_widths.headboard"]

    assert found.value == pytest.approx(bed["head.end_rail_high"] * 0.00289 * points)
    assert found.verdict is Verdict.HOLDS


def test_a_damper_house_moves_the_same_bed_more() -> None:
    wide = movement(built(**DAMP))["seasonal_widths.headboard"].value

    assert wide > 1.5 * movement(built())["seasonal_widths.headboard"].value


def test_slats_that_grow_together_fail() -> None:
    assert verdict(slats_apart("slats", OAK, -0.1)) is Verdict.FAILS
    assert slats_apart("panels", OAK, -0.1) is None
    assert slats_apart("slats", BOARD, -0.1) is None


def test_solid_deck_panels_grow_together_and_sheets_do_not() -> None:
    assert verdict(deck_panels_apart("panels", OAK, -0.1)) is Verdict.FAILS
    assert deck_panels_apart("panels", BOARD, -0.1) is None
    solid = built(deck="panels", deck_sheet="white_oak")
    assert movement(solid)["deck_panels_apart"].verdict is Verdict.FAILS


def test_a_closed_side_of_solid_panels_is_followed() -> None:
    choices = {
        "left.side": "closed frame", "panel_material": "yellow_poplar", "panel_stock": 10.0,
    }  # fmt: skip
    bed = built(**{name.replace(".", "__"): value for name, value in choices.items()})

    found = movement(bed)

    swell = (
        bed["left.closing_panel_width"] * 0.00289 * (bed["wood_wettest"] - bed["bench_moisture"])
    )
    room = bed["panel_groove_depth"] - bed["left.closing_panel_tuck"]
    assert found["left.closing_panel_free"].value == pytest.approx(room - swell / 2)
    assert "right.closing_panel_free" not in found


def test_closing_panels_without_room_or_hold_fail() -> None:
    assert verdict(closing_panel_free(600.0, OAK, -0.1)) is Verdict.FAILS
    assert verdict(closing_panel_held(600.0, OAK, 1.0)) is Verdict.FAILS
    assert closing_panel_free(0.0, OAK, -0.1) is None
    assert closing_panel_held(600.0, BOARD, -0.1) is None


def test_layers_of_one_wood_are_fine_and_told_to_be_of_one_cut() -> None:
    """Yellow-poplar: 0.00289 less 0.00158 per point, over the width of the post."""
    bed = built(frame_wood="yellow_poplar")
    found = movement(bed)["layers_move_alike.post"]

    points = bed["wood_wettest"] - bed["bench_moisture"]
    assert found.value == pytest.approx(bed["post_width"] * 0.00131 * points)
    assert found.verdict is Verdict.HOLDS
    assert "one cut" in found.reason
    assert "layers_move_alike.post" not in movement(built(post_build="solid", post_depth=60.0))
