"""Bearers, brackets and dividers as parts."""

from model.dimensions.fasteners import longest_screw
from model.frame import side_frame_at
from model.materials import material
from model.parts.bearers import bearer_legs, bearer_screws, bearers, divider_legs, dividers
from model.parts.brackets import far_brackets, near_brackets

FRAME = side_frame_at(-850.0, 1)
POPLAR = material("yellow_poplar")
SCREW = longest_screw(38.1)


def test_bearers_that_need_a_divider_are_held_by_it() -> None:
    sizes = (30.0, 0.0, 65.0, 720.0, 64.0, 19.0)
    (to_divider,) = bearers((81.0, 650.0), False, *sizes, (), True, FRAME, POPLAR)
    (to_frame,) = bearers((81.0, 650.0), False, *sizes, (), False, FRAME, POPLAR)

    assert to_divider.held[1].by == "dividers"
    assert "dividers" not in to_frame.held[1].by
    assert all(hold.knock_down for hold in to_frame.held)


def test_brackets_leave_bearers_without_screws() -> None:
    assert bearer_screws(25.4, 720.0, 64.0, 9.5, 9.5, SCREW, SCREW) == ()
    assert len(bearer_screws(0.0, 720.0, 64.0, 9.5, 9.5, SCREW, SCREW)) == 4


def test_slanting_screws_end_beyond_the_runners_ends() -> None:
    screws = bearer_screws(0.0, 720.0, 64.0, 9.5, 6.0, SCREW, SCREW)

    points = [screw.at[0] + screw.toward[0] * screw.length for screw in screws]
    assert all(point < 0 or point > 720.0 for point in points)


def test_one_screw_comes_from_each_edge() -> None:
    for end in (-1, 1):
        screws = [
            s for s in bearer_screws(0.0, 720.0, 64.0, 9.5, 6.0, SCREW, SCREW)
            if s.toward[0] * end > 0
        ]  # fmt: skip

        assert [s.at[1] for s in screws] == [0.0, 64.0]
        assert all(s.toward[1] * (1 if s.at[1] == 0 else -1) > 0 for s in screws)
        assert {s.at[2] for s in screws} == {6.0}


def test_brackets_at_both_ends_are_one_piece_of_hardware() -> None:
    (near,) = near_brackets((84.0,), 30.0, 40.0, 25.4, 14.0, 2.0, SCREW, SCREW, FRAME)
    (far,) = far_brackets((84.0,), 724.6, 40.0, 25.4, 14.0, 2.0, SCREW, SCREW, FRAME)

    assert near.hardware == far.hardware == "BRACKET"
    assert len(near.screws) == len(far.screws) == 4


def test_heads_of_a_brackets_screws_have_room_in_its_leaves() -> None:
    """Heads of No. 8 screws, 8.3 mm: clear of the bend, of the leaf's end and of each other."""
    (near,) = near_brackets((84.0,), 30.0, 40.0, 25.4, 14.0, 2.0, SCREW, SCREW, FRAME)
    half = SCREW.screw.head_mm / 2

    for axis, screws in ((0, near.screws[:2]), (1, near.screws[2:])):
        places = sorted(s.at[axis] for s in screws)
        from_bend = places if axis == 0 else [25.4 - at for at in reversed(places)]
        assert from_bend[0] - half > 2.0
        assert from_bend[1] + half <= 25.4 + 0.2
        assert from_bend[1] - from_bend[0] > 2 * half


def test_legs_stand_on_the_floor() -> None:
    (leg,) = bearer_legs((81.0,), (400.0, 900.0), 65.0, 64.0, 19.0, FRAME, POPLAR, None)
    (under,) = divider_legs((0.0, 900.0), 750.0, 40.0, 64.0, 19.0, FRAME, POPLAR)

    assert leg.at[2] == under.at[2] == 0.0
    assert len(leg.places) == 2


def test_a_divider_too_low_for_legs_stands_on_the_floor() -> None:
    (board,) = dividers(True, 81.0, 750.0, 0.0, 1500.0, 90.0, 19.0, (), "left", FRAME, POPLAR)

    assert board.held[0].by == "floor"
    assert dividers(False, 81.0, 750.0, 0.0, 1500.0, 90.0, 19.0, (), "left", FRAME, POPLAR) == ()
