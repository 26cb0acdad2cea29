"""The centre beam stands on edge under the deck, on what was chosen to carry it."""

from __future__ import annotations

from typing import Any

import pytest

from model.frame import end_frame_at
from model.materials import material
from model.part import Part
from model.parts.beam import beam_leg_pieces, beam_packer_pieces, beam_pieces
from model.parts.beam_block import beam_block

POPLAR = material("yellow_poplar")


def beams(**changes: Any) -> tuple[Part, ...]:
    needs = {
        "beam": "legs", "beam_from_x": -19.0, "beam_from_y": 30.0, "beam_bottom": 276.0,
        "beam_length": 2130.0, "beam_height": 64.0, "beam_stock": 38.0, "slat_wood": POPLAR,
    }  # fmt: skip
    return beam_pieces(**(needs | changes))


def blocks(**changes: Any) -> tuple[Part, ...]:
    needs = {
        "beam": "ends", "frame": end_frame_at(2190, -1), "beam_block_from_x": -57.0,
        "end_rail_back_plane": 28.0, "beam_block_bottom": 238.0, "beam_block_length": 114.0,
        "cleat_width": 38.0, "cleat_stock": 30.0, "frame_wood": POPLAR,
    }  # fmt: skip
    return beam_block(**(needs | changes))


def test_a_beam_runs_along_the_bed_on_edge() -> None:
    (beam,) = beams()

    assert beam.lies == "vzu"  # length along the bed, width upwards
    assert beam.size == (2130, 64, 38)
    assert beam.at == (-19, 30, 276)


@pytest.mark.parametrize(
    ("kind", "carriers"),
    [
        ("legs", ["beam_leg_pieces"]),
        ("bearers", ["beam_packer_pieces"]),
        ("ends", ["head.beam_block", "foot.beam_block"]),
    ],
)
def test_a_beam_rests_on_what_was_chosen(kind: str, carriers: list[str]) -> None:
    (beam,) = beams(beam=kind)

    assert len(beam.held) == len(carriers)
    for hold, carrier in zip(beam.held, carriers, strict=True):
        assert carrier in hold.by.split("|")
    assert all(hold.knock_down and not hold.glued for hold in beam.held)


def test_no_beam_is_no_piece() -> None:
    assert beams(beam="none") == ()


def test_legs_stand_on_the_floor_and_reach_the_beam() -> None:
    (leg,) = beam_leg_pieces((720.0, 1400.0), -19.0, 276.0, 64.0, 38.0, POPLAR)
    (beam,) = beams()

    assert leg.at[2] == 0
    assert leg.at[2] + leg.length == beam.at[2]
    assert leg.lies[0] == "z"
    assert [leg.at[1] + place.v for place in leg.places] == [720, 1400]
    assert {hold.by for hold in leg.held} == {"floor", "beam_pieces"}


def test_a_leg_is_as_thick_as_its_beam_and_stands_under_it() -> None:
    (leg,) = beam_leg_pieces((720.0,), -19.0, 276.0, 64.0, 38.0, POPLAR)
    (beam,) = beams()

    assert (leg.at[0], leg.thickness) == (beam.at[0], beam.thickness)


def test_without_places_there_are_no_legs() -> None:
    assert beam_leg_pieces((), -19.0, 276.0, 64.0, 38.0, POPLAR) == ()


def packers(**changes: Any) -> tuple[Part, ...]:
    needs = {
        "packer_places": (400.0, 1000.0, 1600.0), "beam_rests_on_bearers": False,
        "beam_from_x": -19.0, "bearer_top": 236.0, "packer_height": 40.0, "bearer_stock": 19.05,
        "beam_stock": 38.0, "bearer_wood": POPLAR, "packer_toe": None,
    }  # fmt: skip
    return beam_packer_pieces(**(needs | changes))


def test_a_packer_stands_on_every_bearer_and_reaches_the_beam() -> None:
    (packer,) = packers()
    (beam,) = beams(beam="bearers")

    assert [packer.at[1] + place.v for place in packer.places] == [400, 1000, 1600]
    assert packer.at[2] == 236
    assert packer.at[2] + packer.length == beam.at[2]
    assert packer.lies[0] == "z"


def test_packers_stay_on_the_bearers_when_the_beam_is_taken_off() -> None:
    """The deck comes out before the bed is carried."""
    (packer,) = packers()

    on_bearers, under_beam = packer.held
    assert on_bearers.by == "left.bearers|right.bearers"
    assert not on_bearers.knock_down
    assert (under_beam.by, under_beam.knock_down) == ("beam_pieces", True)


def test_a_beam_right_on_the_bearers_needs_no_packers() -> None:
    assert packers(beam_rests_on_bearers=True) == ()
    assert packers(packer_places=()) == ()


def test_end_cleats_are_glued_to_the_end_rails_and_carry_the_beam() -> None:
    (block,) = blocks()
    (beam,) = beams(beam="ends")

    assert block.at[2] + block.width == beam.at[2]
    assert block.at[1] == 28
    assert [(hold.by, hold.glued) for hold in block.held] == [("end_rail", True)]


def test_other_beams_have_no_end_cleats() -> None:
    for kind in ("none", "legs", "bearers"):
        assert blocks(beam=kind) == ()
