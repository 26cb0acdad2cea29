"""Glue across the grain: what differs, and how much of the joint to glue."""

from __future__ import annotations

import pytest

from model.brief import all_choices
from model.checks.movement.glue import FREELY, SPLITS, glued_joints
from model.checks.movement.rates import Season, rates
from model.checks.record import Verdict
from model.materials import materials
from tests.model.checks.movement.beds import DAMP, built, movement

BOARDS = 0.00289, 0.00158  # yellow-poplar, tangential and radial, Wood Handbook table 13-5


def joints(bed):  # type: ignore[no-untyped-def]
    season = Season(8.0, 6.0, 10.0, "tangential", "radial")
    found = glued_joints(bed.pieces, bed.proof.holding, rates(bed.pieces, materials(), season))
    return {(joint.one.name, joint.other.name): joint for joint in found}


def test_a_tenoned_rail_moves_against_its_post_over_the_tenons_width() -> None:
    """The tenon is the rail less its shoulder below and the groove above."""
    bed = built()
    rail = joints(bed)["end rail", "post"]

    wide = bed["head.end_rail_high"] - bed["tenon_shoulder"] - bed["panel_groove_depth"]
    assert rail.across == pytest.approx(wide)
    assert rail.swell == pytest.approx(wide * BOARDS[0] * 2)
    assert rail.shrink == pytest.approx(wide * BOARDS[0] * 2)


def test_a_cleat_glued_along_its_rail_moves_with_it() -> None:
    cleat = joints(built())["cleat", "top rail"]

    assert cleat.by == pytest.approx(0.0, abs=1e-9)


def test_a_cap_differs_from_the_posts_end_grain_and_lies_still_along_the_rail() -> None:
    """Along the bed both move, along the cap only the post does."""
    found = joints(built(head__cap_thickness=25.4))

    post, rail = found["cap", "post"], found["cap", "upper rail"]
    assert post.across == pytest.approx(built()["post_width"])
    assert post.swell == pytest.approx(built()["post_width"] * BOARDS[0] * 2)
    assert rail.by < post.by


def test_sheets_are_no_wood_to_move() -> None:
    found = joints(built())

    assert not [names for names in found if "panel" in names or "box side" in names]


def test_narrow_rails_are_glued_all_over_and_wide_ones_in_part() -> None:
    narrow = movement(built(end_rail_width=80.0, head__style="low rail", head__low_rail_rise=0.0))
    wide = movement(built(end_rail_width=250.0))

    assert narrow["cross_grain_glue.headboard"].verdict is Verdict.HOLDS
    found = wide["cross_grain_glue.headboard"]
    assert found.verdict is Verdict.NOTE
    assert "Glue only" in found.reason and "of the tenon" in found.reason


def test_what_may_be_glued_differs_by_no_more_than_glue_gives() -> None:
    found = movement(built(end_rail_width=250.0))["cross_grain_glue.headboard"]
    over = float(found.reason.split("Over the ")[1].split(" mm")[0])

    glued = float(found.reason.split("Glue only ")[1].split(" mm")[0])

    assert glued / over * found.value <= FREELY + 0.01
    assert glued > 0.8 * over * FREELY / found.value


def test_a_very_wide_rail_in_a_damp_house_splits() -> None:
    """Planks pegged and glued at both ends split after 1/4 in: a woodworkers' forum, 2015."""
    bed = built(end_rail_width=300.0, frame_wood="american_beech", rail_height=480.0, **DAMP)

    found = movement(bed)["cross_grain_glue.headboard"]

    assert found.value > SPLITS
    assert found.verdict is Verdict.FAILS


def test_dowelled_rails_are_told_which_dowels_to_glue() -> None:
    found = movement(built(end_joint="dowel", end_rail_width=250.0))

    assert "dowels within" in found["cross_grain_glue.headboard"].reason


def test_the_choices_that_make_a_glued_board_narrower_are_named_first() -> None:
    found = movement(built(end_rail_width=250.0))["cross_grain_glue.footboard"]

    assert found.remedies[:2] == ("foot.low_rail_rise", "end_rail_width")
    assert set(found.remedies) <= set(all_choices())
