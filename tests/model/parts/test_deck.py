"""Slats, panels and battens lie where the rules put them, and rest on what carries them."""

from __future__ import annotations

from typing import Any

import pytest

from model.dimensions.deck import slat_screw_in
from model.materials import material, wood_screw
from model.part import Part
from model.parts.deck import batten_pieces, deck_panel_pieces, mattress_pieces_lie, slat_pieces

WELL, CLEAT, LENGTH = 1550.0, 30.0, 1546.0
CLEARANCE = (WELL - LENGTH) / 2
PLACES = (69.0, 220.0, 371.0)
POPLAR = material("yellow_poplar")


def slats(**changes: Any) -> tuple[Part, ...]:
    needs = {
        "slat_places": PLACES, "slat_from_x": -LENGTH / 2, "deck_bottom": 340.0,
        "slat_length": LENGTH, "slat_width": 89.0, "slat_thickness": 19.05, "slat_wood": POPLAR,
        "slat_fixing": "screws", "cleat_screw": wood_screw(8), "slat_screw_length": 50.8,
        "slat_screw_in": slat_screw_in(CLEARANCE, CLEAT), "screw_cover": 3.0,
    }  # fmt: skip
    return slat_pieces(**(needs | changes))


def panels(**changes: Any) -> tuple[Part, ...]:
    needs = {
        "deck_panel_places": (66.0, 752.0), "slat_from_x": -LENGTH / 2, "deck_bottom": 341.0,
        "slat_length": LENGTH, "deck_panel_length": 684.0, "deck_sheet_thickness": 18.0,
        "deck_sheet": material("birch_ply_18"), "vent_diameter": 25.0, "vent_rows": 2,
    }  # fmt: skip
    return deck_panel_pieces(**(needs | changes))


def battens(**changes: Any) -> tuple[Part, ...]:
    needs = {
        "batten_places": (706.5, 1392.5), "batten_halves": (0.0, 764.0), "batten_from_x": -744.0,
        "batten_bottom": 319.0, "batten_length": 725.0, "slat_width": 89.0,
        "frame_thickness": 22.0, "batten_gap": 0.5, "slat_wood": POPLAR,
    }  # fmt: skip
    return batten_pieces(**(needs | changes))


# ---------------------------------------------------------------- slats


def test_there_is_one_slat_at_each_place() -> None:
    (part,) = slats()

    assert [part.at[1] + place.v for place in part.places] == list(PLACES)
    assert part.size == (LENGTH, 89, 19.05)


def test_slats_lie_flat_across_the_bed_on_both_cleats() -> None:
    (part,) = slats()

    assert part.lies == "uvz"
    assert part.at[2] == 340
    assert [hold.by for hold in part.held] == ["left.cleat", "right.cleat"]
    assert all(hold.knock_down and not hold.glued for hold in part.held)


def test_slat_screws_go_down_into_the_middle_of_each_cleat() -> None:
    (part,) = slats()
    middle_of_cleat = WELL / 2 - CLEAT / 2

    x = [part.at[0] + screw.at[0] for screw in part.screws]

    assert x == pytest.approx([-middle_of_cleat, middle_of_cleat])
    assert [screw.into for screw in part.screws] == ["left.cleat", "right.cleat"]
    assert {screw.toward for screw in part.screws} == {(0, 0, -1)}
    assert {screw.at[2] for screw in part.screws} == {19.05}


def test_every_slat_screw_has_a_hole_through_the_slat() -> None:
    (part,) = slats()

    assert [hole.at for hole in part.holes] == [screw.at for screw in part.screws]
    assert {hole.depth for hole in part.holes} == {19.05}


def test_slats_on_a_strap_have_no_screws_and_no_screwed_joint() -> None:
    (part,) = slats(slat_fixing="strap")

    assert part.screws == part.holes == ()
    assert {hold.joint for hold in part.held} == {"rests"}


def test_a_deck_of_panels_has_no_slats() -> None:
    assert slats(slat_places=()) == ()


# ---------------------------------------------------------------- panels and battens


def test_deck_panels_lie_one_behind_the_other_on_both_cleats() -> None:
    (part,) = panels()

    assert part.size == (LENGTH, 684, 18)
    assert [part.at[1] + place.v for place in part.places] == [66, 752]
    assert [hold.by for hold in part.held] == ["left.cleat", "right.cleat"]
    assert all(hold.knock_down for hold in part.held)


def test_deck_panels_are_vented_unless_no_rows_were_chosen() -> None:
    (vented,) = panels()
    (closed,) = panels(vent_rows=0)

    assert {hole.kind for hole in vented.holes} == {"vent"}
    assert closed.holes == ()


def test_a_deck_of_slats_has_no_panels() -> None:
    assert panels(deck_panel_places=()) == ()


def test_with_a_beam_battens_come_in_two_to_each_joint() -> None:
    left, right = battens()

    assert right.at[0] - left.at[0] == 764
    assert len(left.places) == len(right.places) == 2
    for half in (left, right):
        assert [hold.by for hold in half.held] == ["beam_pieces", "left.cleat|right.cleat"]


def test_without_a_beam_a_batten_is_held_by_both_cleats() -> None:
    (part,) = battens(batten_halves=(0.0,), batten_length=1489.0)

    assert [hold.by for hold in part.held] == ["left.cleat", "right.cleat"]


def test_a_battens_joint_leaves_what_the_grid_left_over() -> None:
    assert {hold.within for half in battens() for hold in half.held} == {0.5}


def test_one_panel_needs_no_battens() -> None:
    assert battens(batten_places=()) == ()


# ---------------------------------------------------------------- the mattress


def test_two_mattresses_lie_side_by_side() -> None:
    (part,) = mattress_pieces_lie(
        mattress_pieces=2, mattress_across=1930.0, mattress_piece_width=965.0,
        mattress_along=2032.0, mattress_high=254.0, mattress_from_x=-965.0, mattress_foot_y=79.0,
        deck_top=359.0,
    )  # fmt: skip

    assert [part.at[0] + place.u for place in part.places] == [-965, 0]
    assert part.at[2] == 359
    assert part.hardware  # counted and proved, never cut
