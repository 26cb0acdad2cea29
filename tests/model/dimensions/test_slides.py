"""What a slide takes beside and along the box."""

import pytest

from model.dimensions.runners import slide_up_most
from model.dimensions.slides import (
    slide_over_rail,
    slide_screw_up,
    slide_side_space,
    slide_thickness,
)
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
    up = slide_screw_up(True, 45.0, 25.0, 6.5, 200.0, 0.0, 177.5)

    assert up >= 25.0 + 6.5 + 4.2  # half the shank of the thickest screw sold for slides, doubled


def test_a_slide_taller_than_its_box_is_refused() -> None:
    with pytest.raises(CannotBuild) as refusal:
        slide_screw_up(True, 76.0, 10.0, 6.5, 60.0, 0.0, 22.0)

    assert refusal.value.field == "slide"


def test_a_slide_hangs_above_the_rail_of_a_side_that_is_lifted_onto_its_hooks() -> None:
    """The box runs 6 mm over the rail, hooks ask for 19 mm, and 3 mm are for the hand."""
    over = slide_over_rail(19.0, 2, 0, 6.0)

    assert 6.0 + over == 19.0 + 3.0
    assert slide_screw_up(True, 45.0, 9.5, 6.5, 187.0, over, 164.5) == 45.0 / 2 + over


def test_bolted_sides_and_sides_without_drawers_are_not_lifted_past_slides() -> None:
    assert slide_over_rail(0.0, 2, 2, 6.0) == 0.0
    assert slide_over_rail(19.0, 0, 0, 6.0) == 0.0


def test_a_slide_stays_within_its_box_side_and_before_its_bearer() -> None:
    """A bearer 64 mm high that begins at skids of 19 mm keeps 8.8 mm above the screws."""
    box = slide_up_most(55.0, 45.0, False, 64.0, 19.0)
    bearer = slide_up_most(187.0, 45.0, True, 64.0, 19.0)

    assert slide_screw_up(True, 45.0, 9.5, 6.5, 55.0, 16.0, box) == 55.0 - 45.0 / 2
    assert slide_screw_up(True, 45.0, 9.5, 6.5, 187.0, 16.0, bearer) == pytest.approx(
        64.0 - 19.0 - 8.8
    )
