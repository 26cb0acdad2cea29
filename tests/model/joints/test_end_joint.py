"""The two halves of a corner joint fit each other, whichever kind it is."""

import math

import pytest

from model.errors import CannotBuild
from model.joints.end_joint import EndJoint, in_mate, member_dowels, on_end
from model.joints.pocket import screw_for
from model.part import Face

RAIL = (1050.0, 100.0, 21.0)  # 1000 between shoulders, two tenons of 25
POST = (900.0, 70.0, 66.0)
TENON = EndJoint(kind="mortise and tenon", adds=25, reach=26.6, tenon_thickness=7)
DOWEL = EndJoint(kind="dowel", reach=21.6, dowel_diameter=8, dowel_length=40)
POCKET = EndJoint(kind="pocket screw", screw=screw_for(21, "frame_stock"))
MEETS = {"along": (300.0, 400.0), "across": (6.0, 27.0), "lower": 6.0, "upper": 10.0}


def test_a_tenon_stands_back_from_both_edges_and_both_faces() -> None:
    cuts = on_end(TENON, RAIL, Face.FAR, lower=6, upper=10).cuts

    assert {(c.kind, c.face) for c in cuts} == {
        ("tenon cheek", Face.BACK),
        ("tenon cheek", Face.FACE),
        ("tenon shoulder", Face.LOWER),
        ("tenon shoulder", Face.UPPER),
    }
    assert all(c.low[0] == 1025 and c.high[0] == 1050 for c in cuts)


def test_a_mortise_is_its_tenon_but_for_the_relief_at_its_floor() -> None:
    (cut,) = in_mate(TENON, POST, Face.UPPER, **MEETS).cuts

    assert (cut.low[0], cut.high[0]) == (306, 390)
    assert (cut.low[2], cut.high[2]) == (13, 20)
    assert cut.high[1] - cut.low[1] == pytest.approx(26.6)  # 1.6 stay free at its floor


def test_dowel_holes_of_both_halves_face_each_other() -> None:
    member = on_end(DOWEL, RAIL, Face.NEAR, lower=6, upper=10).holes
    mate = in_mate(DOWEL, POST, Face.UPPER, **MEETS).holes

    assert [300 + h.at[1] for h in member] == [h.at[0] for h in mate]
    assert {6 + h.at[2] for h in member} == {h.at[2] for h in mate} == {16.5}
    assert all(h.toward == (0, -1, 0) and h.at[1] == 70 for h in mate)


def test_a_narrow_member_gets_one_dowel() -> None:
    assert member_dowels(DOWEL, 28, lower=6, upper=6) == (14,)


def test_a_pocket_screw_leaves_the_end_in_the_middle_of_the_stock() -> None:
    work = on_end(POCKET, RAIL, Face.FAR, lower=6, upper=10, into="post_right")
    screw, pilot = work.screws[0], work.holes[1]

    end = [a + pilot.depth * t for a, t in zip(pilot.at, pilot.toward, strict=True)]

    assert end == pytest.approx([1050, screw.at[1], 10.5])
    assert math.degrees(math.asin(-screw.toward[2])) == pytest.approx(15)
    assert screw.into == "post_right"


def test_a_pocket_begins_on_the_face_that_it_is_drilled_from() -> None:
    for face, height in ((Face.FACE, 21), (Face.BACK, 0)):
        holes = on_end(POCKET, RAIL, Face.NEAR, lower=0, upper=0, face=face).holes

        assert holes[0].at[2] == pytest.approx(height)
        assert holes[0].face is face


def test_a_stock_without_a_pocket_screw_is_refused_by_the_name_of_its_choice() -> None:
    with pytest.raises(CannotBuild) as refusal:
        screw_for(60, "frame_stock")

    assert refusal.value.field == "frame_stock"
