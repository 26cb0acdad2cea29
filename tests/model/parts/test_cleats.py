"""The cleat lies on the rail from post to post, screwed clear of its ends."""

from __future__ import annotations

from typing import Any

from model.frame import side_frame_at
from model.materials import material, wood_screw
from model.part import Part
from model.parts.cleats import cleat

SCREW = wood_screw(8)


def made(**changes: Any) -> Part:
    needs = {
        "frame": side_frame_at(-803, 1), "run_from": 66.0, "back_plane": 28.0,
        "cleat_bottom": 302.0, "rail_length": 2058.0, "cleat_width": 38.0, "cleat_stock": 30.0,
        "frame_wood": material("yellow_poplar"), "row_name": "left", "cleat_screw": SCREW,
        "cleat_screw_length": 44.45, "cleat_screw_places": (40.0, 1000.0, 2018.0),
        "screw_cover": 3.0,
    }  # fmt: skip
    (part,) = cleat(**(needs | changes))
    return part


def test_a_cleat_is_as_long_as_its_rail_and_ends_at_the_posts() -> None:
    part = made()

    assert part.size == (2058, 38, 30)
    assert part.at[0] == 66


def test_a_cleat_lies_against_the_rails_inner_face() -> None:
    assert made().at[1] == 28
    assert made().lies == "uzv"  # so that its thickness stands in under the slats


def test_a_cleat_holds_to_whichever_rail_its_side_has() -> None:
    (hold,) = made().held

    assert set(hold.by.split("|")) == {"side_rail", "top_rail"}
    assert hold.glued
    assert not hold.knock_down


def test_cleat_screws_are_driven_from_inside_the_bed_into_the_rail() -> None:
    for screw in made().screws:
        assert screw.at[2] == 30
        assert screw.toward == (0, 0, -1)
        assert set(screw.into.split("|")) == {"side_rail", "top_rail"}


def test_cleat_screws_stand_where_they_were_placed() -> None:
    assert [screw.at[0] for screw in made().screws] == [40, 1000, 2018]


def test_left_and_right_cleats_belong_to_their_sides() -> None:
    assert made().assembly == "left side"
    assert made(row_name="right").assembly == "right side"


def test_cleat_screws_are_asked_for_the_wood_that_the_maker_wants_before_their_points() -> None:
    assert {screw.cover for screw in made(screw_cover=5.0).screws} == {5.0}
