"""Joints of headboard and footboard."""

from __future__ import annotations

import re

import numpy as np
import pytest

from model.bed import Bed
from model.checks.record import Verdict
from model.checks.strength.end_joints import _joints
from model.checks.strength.glued_ends import Woods, glued_ends, used
from model.checks.strength.joint_forces import lasting
from model.checks.strength.member_ends import Asked
from model.checks.strength.rail_ends import HANDLED
from model.checks.strength.screwed_ends import ScrewedEnd, on_screws, screwed_ends
from model.checks.strength.screwed_ends import used as screws_used
from model.materials import materials
from model.mechanics.fasteners.strengths import Design
from tests.model.checks.strength.made import bed, carried, said, silent


@pytest.mark.parametrize("end", ["head", "foot"])
@pytest.mark.parametrize("joint", ["mortise and tenon", "dowel"])
def test_the_usual_ends_hold(end: str, joint: str) -> None:
    found = said(bed(end_joint=joint), f"{end}.end_glue_holds")

    assert found.verdict is Verdict.HOLDS
    assert 1 < found.value < 100


def test_rails_are_asked_at_both_posts_and_stiles_at_both_rails() -> None:
    of = bed()
    joints = _joints(carried(of), of.pieces, is_head=True)
    names = sorted(
        (of.pieces.made_by(int(a))[0], of.pieces.made_by(int(b))[0])
        for a, b in zip(joints.one, joints.other, strict=True)
    )

    assert names == [
        ("head.end_rail", "head.post_left"), ("head.end_rail", "head.post_right"),
        ("head.panel_stiles", "head.end_rail"), ("head.panel_stiles", "head.upper_rail"),
        ("head.upper_rail", "head.post_left"), ("head.upper_rail", "head.post_right"),
    ]  # fmt: skip


def test_a_stronger_push_uses_more_of_the_footboards_glue() -> None:
    weak, strong = (said(bed(push_force=push), "foot.end_glue_holds") for push in (300.0, 600.0))

    assert "pushed sideways" in strong.reason
    assert strong.value > 1.5 * weak.value


def worst_use(of: Bed, *, tilts: bool) -> float:
    """The most that any joint of the headboard takes of its glue, the bed not being moved, %."""
    joints = _joints(carried(of), of.pieces, is_head=True)
    woods = Woods(materials(), of["stock_grade"])
    ends, asked = glued_ends(joints, of.pieces, of["end_joinery"], woods, tilts=tilts)
    cases = carried(of).cases
    kept = [i for i, case in enumerate(cases) if case.key not in HANDLED]
    return 100 * float((used(ends, asked)[0] / lasting(cases)[:, None])[kept].max())


@pytest.mark.parametrize("joint", ["mortise and tenon", "dowel"])
def test_a_rail_that_tilts_out_of_its_plane_counts(joint: str) -> None:
    of = bed(end_joint=joint)

    assert said(of, "head.end_glue_holds").value == pytest.approx(worst_use(of, tilts=True))
    assert worst_use(of, tilts=True) > 1.2 * worst_use(of, tilts=False)


def test_a_tilted_rail_draws_its_pocket_screws() -> None:
    """About the face that presses, half the thickness away: 10 N m on 2 screws in 25 mm."""
    end = ScrewedEnd((0, 1), (12.0, 38.0), 50.0, 25.0, Design(200.0), Design(250.0))
    asked = Asked(*(np.array([[each]]) for each in (0.0, 0.0, 30.0, 0.0, 10_000.0)))

    side, out = on_screws([end], asked)

    assert side[0, 0] == 15
    assert out[0, 0] == pytest.approx(10_000 / 12.5 / 2)


def test_the_check_of_screwed_ends_counts_it() -> None:
    of = bed(end_joint="pocket screw")
    joints = _joints(carried(of), of.pieces, is_head=True)
    points = [p for p in of.proof.screws if p.screw.kind == "pocket screw"]
    ends, asked = screwed_ends(joints, of.pieces, points, materials(), tilts=True)
    cases = carried(of).cases
    kept = [i for i, case in enumerate(cases) if case.key not in HANDLED]

    most = (screws_used(ends, asked) / lasting(cases)[:, None])[kept].max()

    assert (asked.tilt > 0).any()
    assert said(of, "head.end_screws_hold").value == pytest.approx(100 * most)


def test_dragging_the_bed_is_advice() -> None:
    found = said(bed(), "foot.end_glue_holds.moved")

    assert found.verdict is Verdict.NOTE
    assert "dragged" in found.reason and found.reason.endswith("and lift.")
    assert re.search(r"bent with \d+ N m, \d+ N m out of its plane", found.reason)


def test_screwed_ends_are_asked_for_their_screws() -> None:
    of = bed(end_joint="pocket screw")

    assert silent(of, "head.end_glue_holds")
    found = said(of, "head.end_screws_hold")
    assert re.search(r"pocket screws? between .* of the headboard bears \d+ N", found.reason)
    assert said(of, "foot.end_screws_hold.moved").verdict in (Verdict.NOTE, Verdict.HOLDS)


def test_glued_ends_are_not_asked_for_screws() -> None:
    assert silent(bed(), "head.end_screws_hold")
