"""What a slide takes beside and along the box."""

import pytest

from model.dimensions.slides import slide_screw_up, slide_side_space, slide_thickness
from model.errors import CannotBuild
from model.materials import slide


def test_a_measured_slide_beats_the_table() -> None:
    full = slide("side_mount_full")

    assert slide_thickness(full, 12.9) == 12.9
    assert slide_thickness(full, None) == full.thickness_mm


def test_a_runner_takes_no_thickness_whatever_was_measured() -> None:
    assert slide_thickness(slide("wooden_runner"), 12.9) == 0.0


def test_play_is_added_to_the_slide() -> None:
    assert slide_side_space(12.7, 0.3) == pytest.approx(13.0)


def test_slide_screws_clear_the_groove_of_the_bottom() -> None:
    up = slide_screw_up(True, 45.0, 25.0, 6.5, 200.0)

    assert up >= 25.0 + 6.5 + 4.2  # half the shank of the thickest screw sold for slides, doubled


def test_a_slide_taller_than_its_box_is_refused() -> None:
    with pytest.raises(CannotBuild) as refusal:
        slide_screw_up(True, 76.0, 10.0, 6.5, 60.0)

    assert refusal.value.field == "slide"
