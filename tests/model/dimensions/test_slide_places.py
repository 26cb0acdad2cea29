"""Slides fill the room between bearer and box, but for their play."""

import pytest

from model.dimensions.slide_places import (
    slide_box_screw,
    slide_code,
    slide_holder_far_places,
    slide_mover_far_places,
    slide_mover_places,
)


def test_both_members_and_the_play_fill_the_room_beside_the_box() -> None:
    opening, width, box, member = 100.0, 550.0, 524.0, 6.35
    at = (opening + 13.0,)

    near = slide_mover_places(at, True, member)
    far_mover = slide_mover_far_places(near, member, box)
    far_holder = slide_holder_far_places((opening,), width, member)

    play_near = near[0] - (opening + member)
    play_far = far_holder[0] - (far_mover[0] + member)
    assert play_near == pytest.approx(0.3)
    assert play_far == pytest.approx(0.3)


def test_screws_do_not_come_through_the_box_side() -> None:
    """A millimetre stays before the point, through steel of 1.2 mm; none of 1/2 in is left in 12 mm
    ply that measures less.
    """
    assert slide_box_screw(11.5).length <= 11.5 + 1.2 - 1.0
    assert slide_box_screw(11.9).length == 9.525
    assert slide_box_screw(12.7).length == 12.7
    assert slide_box_screw(18.0).length > slide_box_screw(12.0).length


def test_slides_are_bought_by_their_length() -> None:
    assert slide_code(558.8) == "SLIDE-559"
