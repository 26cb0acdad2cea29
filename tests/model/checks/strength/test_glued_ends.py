"""Tenons and dowels as they are read from what is cut into a bed's members."""

from __future__ import annotations

import numpy as np
import pytest

from model.bed import Bed
from model.checks.strength.glued_ends import GluedEnd, Woods, glued_ends, used, with_length
from model.checks.strength.joint_forces import forces_between, made_by
from model.checks.strength.member_ends import Asked
from model.checks.strength.stile_screws import RAILS
from model.materials import allowed, materials
from model.mechanics.fasteners.glued_end import DowelEnd, TenonEnd
from model.part import Face
from tests.model.checks.strength.made import bed, carried

SHEAR = allowed("yellow_poplar").shear_mpa
POPLAR = {"frame_wood": "yellow_poplar", "frame_stock": 25.4}


def stile_ends(of: Bed) -> tuple[tuple[GluedEnd, ...], Asked]:
    stiles, rails = made_by(of.pieces, "left.stiles"), made_by(of.pieces, *RAILS)
    joints = forces_between(carried(of), of.pieces, stiles, rails)
    woods = Woods(materials(), of["stock_grade"])
    return glued_ends(joints, of.pieces, of["frame_joinery"], woods)


@pytest.mark.parametrize(("joint", "length"), [("stub tenon", 9.525), ("mortise and tenon", 25.4)])
def test_a_tenon_is_read_as_it_is_cut(joint: str, length: float) -> None:
    of = bed(**POPLAR, frame_joint=joint)
    ends, _ = stile_ends(of)
    stiles = int(made_by(of.pieces, "left.stiles").sum())

    assert len(ends) == 2 * stiles
    for end in ends:
        assert isinstance(end.grip, TenonEnd)
        assert end.grip.length == pytest.approx(length)
        assert end.grip.thickness == pytest.approx(of["tenon_thickness"])
        assert (end.grip.lower, end.grip.upper) == pytest.approx((of["tenon_shoulder"],) * 2)
        assert end.grip.cheek < SHEAR / 3


def test_beside_a_panels_groove_the_shoulder_is_as_deep_as_the_groove() -> None:
    """The headboard's end rail is grooved in its upper edge."""
    of = bed()
    rails, posts = made_by(of.pieces, "head.end_rail"), made_by(of.pieces, "head.post_left")
    joints = forces_between(carried(of), of.pieces, rails, posts)
    woods = Woods(materials(), of["stock_grade"])

    ((_, grip),) = glued_ends(joints, of.pieces, of["end_joinery"], woods)[0]

    assert isinstance(grip, TenonEnd)
    assert (grip.lower, grip.upper) == pytest.approx((6.35, 9.525))


def test_dowels_are_read_as_they_are_bored() -> None:
    """Two in each end, a diameter from the edge at least; those of a bearer's stile give way to the
    screws of its bracket.
    """
    of = bed(frame_joint="dowel")
    ends, _ = stile_ends(of)
    bored = {
        tuple(sorted(hole.at[1] for hole in part.holes if hole.face is Face.NEAR))
        for part in of.parts["left.stiles"]
    }

    for end in ends:
        assert isinstance(end.grip, DowelEnd)
        assert len(end.grip.spots) == 2
        assert end.grip.depth == of["dowel_length"] / 2
        turned = tuple(sorted(end.grip.width - at for at in end.grip.spots))
        spots = (tuple(sorted(end.grip.spots)), turned)
        assert any(each == pytest.approx(own) for each in spots for own in bored)
        assert min(*end.grip.spots, *turned) >= of["dowel_diameter"] - 1e-6


def test_beside_a_closed_bays_groove_there_is_room_for_one_dowel() -> None:
    """A groove of 3/8 in, and a dowel's thickness of wood beside it, on both sides of 2 in."""
    of = bed(frame_joint="dowel", left__depth="half", foot__drawers=2, foot__depth="slide")
    if of["left.closed_bays"] or of["left.blind_bays"]:
        assert {len(end.grip.spots) for end in stile_ends(of)[0] if end.grip.width < 60} == {1}
    else:
        pytest.fail("this bed was to have a closed bay")


def test_a_pocket_screwed_end_is_not_glued() -> None:
    assert stile_ends(bed(frame_joint="pocket screw"))[0] == ()


def test_longer_tenons_take_less_of_what_they_bear() -> None:
    ends, asked = stile_ends(bed(**POPLAR, frame_joint="stub tenon"))

    short, _ = used(ends, asked)
    long, _ = used(with_length(ends, 30.0), asked)

    assert (long <= short + 1e-12).all()
    assert long.max() < short.max() / 2


def test_the_share_of_a_tenon_adds_up_by_hand() -> None:
    """Where glue gives first: all that opens, and the push across, over what the cheeks bear."""
    ends, asked = stile_ends(bed(**POPLAR, frame_joint="stub tenon"))
    share, way = used(ends, asked)
    case, at = np.unravel_index(int(share.argmax()), share.shape)
    grip = ends[at].grip
    assert isinstance(grip, TenonEnd) and way[case, at] == 0

    pull, across, bend = (float(each[case, at]) for each in (asked.pull, asked.across, asked.bend))
    opens = max(abs(bend) + pull * grip.width / 2, 0.0)
    last = grip.width - grip.upper
    polar = 2 * (grip.length * (last**3 - grip.lower**3) / 3 + grip.glued * grip.length**3 / 3)
    slip = opens * float(np.hypot(last, grip.length)) / polar
    slip += across / (2 * grip.glued * grip.length)

    assert share[case, at] == pytest.approx(slip / (0.23 * SHEAR))


def test_what_presses_a_tenon_in_keeps_its_joint_shut() -> None:
    ends, asked = stile_ends(bed(frame_joint="dowel"))
    pressed = asked._replace(pull=np.full_like(asked.pull, -1e6))

    assert used(ends, pressed)[0].max() <= used(ends, asked)[0].max()
