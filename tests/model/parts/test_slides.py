"""Slides as two bars a side."""

from model.dimensions.fasteners import longest_screw
from model.frame import side_frame_at
from model.parts.slides import slide_holders, slide_movers

FRAME = side_frame_at(-850.0, 1)
SCREW = longest_screw(13.0, ("4",))
SIZES = (6.0, 71.0, 558.8, 45.0, 6.35)
SPOTS = (40.0, 280.0, 520.0)


def test_one_member_stays_and_one_moves() -> None:
    holders = slide_holders((100.0,), (643.65,), *SIZES, SPOTS, SCREW, "SLIDE-559", FRAME, "left")
    movers = slide_movers(
        (106.65,), (637.0,), *SIZES, 0.3, SPOTS, SCREW, "SLIDE-559", FRAME, "left"
    )

    assert {place.drawer for part in holders for place in part.places} == {0}
    assert {place.drawer for part in movers for place in part.places} == {1}
    assert {part.hardware for part in holders} == {"SLIDE-559"}


def test_screws_point_into_what_a_member_lies_on() -> None:
    near, far = slide_holders((100.0,), (643.65,), *SIZES, SPOTS, SCREW, "SLIDE-559", FRAME, "left")

    assert {screw.toward[2] for screw in near.screws} == {-1.0}
    assert {screw.toward[2] for screw in far.screws} == {1.0}


def test_a_row_on_runners_has_no_slides() -> None:
    assert slide_holders((), (), *SIZES, SPOTS, SCREW, "SLIDE-0", FRAME, "left") == ()
