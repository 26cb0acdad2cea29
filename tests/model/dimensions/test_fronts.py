"""Fronts: what they cover, and what stands in their way."""

import pytest

from model.dimensions.fronts import (
    front_bottom,
    front_face,
    front_gap,
    front_lap,
    front_places,
    front_reach,
    front_width,
)
from model.errors import CannotBuild
from model.units import GRIDS

MM = GRIDS["1 mm"]


def test_an_overlay_front_covers_the_opening_and_the_overlay() -> None:
    width = front_width(550.0, front_reach("overlay", 12.0, 2.0, 19.0, 22.0, 3), 3, MM)

    assert width == 574.0
    assert front_lap(width, 550.0) == 12.0
    assert front_places((100.0,), 12.0, 1) == (88.0,)


def test_an_inset_front_leaves_the_reveal_all_round() -> None:
    width = front_width(550.0, front_reach("inset", 12.0, 2.0, 19.0, 22.0, 3), 3, MM)

    assert width == 546.0
    assert front_lap(width, 550.0) == -2.0


def test_an_inset_front_thicker_than_its_frame_is_refused() -> None:
    with pytest.raises(CannotBuild) as refusal:
        front_reach("inset", 12.0, 2.0, 25.0, 22.0, 3)

    assert refusal.value.field == "front_thickness"


def test_fronts_that_meet_are_refused_with_the_overlay_that_works() -> None:
    with pytest.raises(CannotBuild) as refusal:
        front_gap("overlay", 50.0, 24.0, 2, 3.0, 60.0)

    assert refusal.value.field == "overlay"


def test_a_single_front_has_no_neighbour_to_meet() -> None:
    assert front_gap("overlay", 50.0, 24.0, 1, 3.0, 60.0) == 2.0


def test_a_front_wider_than_the_rails_is_refused() -> None:
    with pytest.raises(CannotBuild):
        front_bottom(65.0, 50.0, 1, 102.0, 45.0)


def test_an_overlay_front_stands_on_the_face_of_the_frame() -> None:
    assert front_face(6.0, 19.0) == -13.0
