"""Of any bed, fasteners that are placed by rule keep clear, and what cannot is told."""

from __future__ import annotations

from model.bed import Bed
from model.checks.record import Verdict
from model.cost.joint_screws import reckoned_joints
from tests.properties.conftest import Drawn

# Pairs of which a rule places one clear of the other.
PLACED = (
    *("cleat_screw_and_slat_screw", "cleat_screw_and_top_rail", "cleat_screw_and_side_rail"),
    *("angle_bracket_screw_and_slide_outer", "cleat_screw_and_end_stile", "cleat_screw_and_mid"),
    *("cleat_screw_and_hook_plate", "cleat_screw_and_keyhole_plate", "cleat_screw_and_cleat"),
    *("angle_bracket_screw_and_bottom_rail_bolt", "angle_bracket_screw_and_bottom_rail_nut"),
    *("angle_bracket_screw_and_skid", "angle_bracket_screw_and_runner", "skid_screw_and_slide"),
    *("angle_bracket_screw_and_rear_stop", "runner_screw_and_slide"),
    *("bearer_leg_screw_and_skid", "bearer_leg_screw_and_runner"),
)

PLACED_PARTS = {"skid", "runner", "front block, near", "front block, far", "angle bracket"}


def too_near(bed: Bed) -> set[str]:
    """What the check says fails, by the pair it names."""
    begins = "fasteners_stand_clear."
    return {
        each.id.removeprefix(begins)
        for each in bed.findings
        if each.id.startswith(begins) and each.verdict is Verdict.FAILS
    }


def test_what_is_placed_by_rule_never_meets(drawn: Drawn) -> None:
    for bed in drawn.beds:
        assert [each for each in too_near(bed) if each.startswith(PLACED)] == [], bed.design.name


def test_cleat_screws_stand_where_no_slat_is_screwed_down(drawn: Drawn) -> None:
    """Looked at along the cleat alone: their axes cross at right angles in one plane, so that two
    shanks and one of wood between must fit beside each other.
    """
    seen = 0
    for bed in drawn.beds:
        shank = bed["cleat_screw"].shank_mm
        for side in ("left", "right"):
            for at in bed[f"{side}.cleat_slat_screws"]:
                near = min(abs(at - each) for each in bed[f"{side}.cleat_screw_places"])
                assert near >= 2 * shank - 1e-6, bed.design.name
                seen += 1

    assert seen > 100


def test_cleat_screws_of_any_bed_keep_their_spacing(drawn: Drawn) -> None:
    for bed in drawn.beds:
        for side in ("left", "right"):
            places = bed[f"{side}.cleat_screw_places"]
            widest = max(b - a for a, b in zip(places, places[1:], strict=False))
            assert widest <= bed["cleat_screw_spacing"] + 1e-6, bed.design.name


def test_nine_beds_in_ten_have_no_fasteners_that_meet(drawn: Drawn) -> None:
    failing = [bed.design.name for bed in drawn.beds if too_near(bed)]

    assert len(failing) <= len(drawn.beds) / 10


def test_what_is_fixed_beside_brackets_has_its_screws_in_place_or_none(drawn: Drawn) -> None:
    """Screws that are only counted are seen by no check of what they meet."""
    seen = set()
    for bed in drawn.beds:
        counted = {bed.pieces.form(each.one).name for each in reckoned_joints(bed)}
        seen |= {part.name for part in bed.pieces.parts}
        assert not counted & PLACED_PARTS, bed.design.name
        assert "rear stop" not in counted or bed["has_centre_runner"], bed.design.name

    assert seen >= PLACED_PARTS - {"runner"}  # which few beds have: none of those kept
