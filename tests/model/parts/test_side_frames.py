"""A long side is a solid rail or the two rails of a frame, hung on its posts so that it comes
off.
"""

from __future__ import annotations

from typing import Any

import pytest

from model.frame import side_frame_at
from model.joints.end_joint import EndJoint
from model.joints.rail_work import RailWork
from model.joints.work import Work
from model.materials import material
from model.part import Face, Hole, Part
from model.parts.side_frames import bottom_rail, side_rail, side_rail_blank, top_rail

TENON = EndJoint(kind="mortise and tenon", adds=25, reach=26.6, tenon_thickness=7)
STILES = ((66.0, 116.0), (1070.0, 1120.0), (2074.0, 2124.0))
WORK = RailWork(
    joint=TENON, stiles=STILES, shoulders=((6, 6),) * 3, grooves=(), groove_width=6,
    groove_depth=10, starts_at=66.0,
)  # fmt: skip
PLATE = Work(holes=(Hole("pilot hole", Face.NEAR, (0.0, 51.0, 11.0), (1.0, 0.0, 0.0), 3.0, 20.0),))
BLANK = side_rail_blank(
    side_frame_at(-803, 1), run_from=66.0, front_plane=6.0, rail_length=2058.0, rail_width=184.0,
    frame_thickness=22.0, frame_wood=material("yellow_poplar"), row_name="left",
)  # fmt: skip
SHARED = {"side_rail_blank": BLANK}


def solid(**changes: Any) -> tuple[Part, ...]:
    needs = {
        "is_framed": False, "side_rail_bottom": 216.0,
        "rail_connector_work": PLATE,
    }  # fmt: skip
    return side_rail(**(SHARED | needs | changes))


def top(**changes: Any) -> tuple[Part, ...]:
    needs = {
        "is_framed": True, "opening_top": 298.0, "top_rail_width": 102.0,
        "frame_rail_work": WORK, "top_rail_connector_work": PLATE,
    }  # fmt: skip
    return top_rail(**(SHARED | needs | changes))


def bottom(**changes: Any) -> tuple[Part, ...]:
    needs = {
        "is_framed": True, "frame_bottom": 20.0, "bottom_rail_width": 45.0,
        "frame_rail_work": WORK, "bottom_rail_connector_work": Work(),
    }  # fmt: skip
    return bottom_rail(**(SHARED | needs | changes))


def test_a_side_has_a_solid_rail_or_a_frame_and_never_both() -> None:
    assert len(solid()) == len(top()) == len(bottom()) == 1
    assert solid(is_framed=True) == top(is_framed=False) == bottom(is_framed=False) == ()


@pytest.mark.parametrize("made", [solid, top, bottom])
def test_rails_run_the_full_length_between_the_posts(made: Any) -> None:
    (rail,) = made()

    assert rail.length == 2058
    assert rail.at[:2] == (66, 6)
    assert rail.lies == "uzv"  # on edge, the face outwards


@pytest.mark.parametrize("made", [solid, top, bottom])
def test_a_side_hangs_on_both_its_posts_without_glue(made: Any) -> None:
    """A four-poster that was glued up whole could not leave the shop."""
    (rail,) = made()

    assert [hold.by for hold in rail.held] == ["foot.post_left", "head.post_left"]
    assert all(hold.knock_down and not hold.glued for hold in rail.held)


def test_the_rails_of_a_frame_stand_at_both_ends_of_the_opening() -> None:
    (upper,), (lower,) = top(), bottom()

    assert upper.at[2] == 298
    assert lower.at[2] == 20
    assert upper.at[2] - (lower.at[2] + lower.width) == 298 - 20 - 45


def test_mortises_of_both_rails_look_at_the_opening() -> None:
    (upper,), (lower,) = top(), bottom()

    assert {cut.face for cut in upper.cuts if cut.kind == "mortise"} == {Face.LOWER}
    assert {cut.face for cut in lower.cuts if cut.kind == "mortise"} == {Face.UPPER}


def test_each_rail_has_a_mortise_for_every_stile() -> None:
    (upper,), (lower,) = top(), bottom()

    for rail in (upper, lower):
        assert len([cut for cut in rail.cuts if cut.kind == "mortise"]) == len(STILES)


def test_rails_carry_the_work_of_their_connectors() -> None:
    (rail,), (upper,) = solid(), top()

    assert set(PLATE.holes) <= set(rail.holes)
    assert set(PLATE.holes) <= set(upper.holes)
