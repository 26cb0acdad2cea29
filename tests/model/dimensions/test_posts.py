"""Posts stand on their glides and taper below the rails."""

import pytest

from model.dimensions.posts import (
    glide_places,
    lowest_of_end,
    lowest_rail,
    post_foot,
    post_layer_thickness,
    post_layers_built,
    post_length,
    post_taper_length,
    taper_length,
)
from model.errors import CannotBuild


def test_a_post_reaches_from_its_glide_to_the_top_of_the_end() -> None:
    assert post_length(1220, 4) == 1216


def test_a_laminated_post_is_made_of_frame_stock() -> None:
    assert post_layers_built("laminated", 3) * post_layer_thickness("laminated", 22, 66) == 66
    assert post_layers_built("solid", 3) == 1
    assert post_layer_thickness("solid", 22, 70) == 70


def test_the_lowest_edge_at_a_post_is_that_of_any_rail_that_meets_it() -> None:
    assert lowest_of_end(260, True, 20, False, 0) == 20
    assert lowest_of_end(260, False, 20, True, 25) == 25
    assert lowest_rail(260, 216, 20) == 20


def test_a_taper_begins_below_the_lowest_rail() -> None:
    assert post_taper_length(5, taper_length(5, 80, 4)) == 76
    assert post_taper_length(0, taper_length(0, 80, 4)) == 0


def test_a_taper_that_would_meet_the_rails_is_refused() -> None:
    with pytest.raises(CannotBuild) as refusal:
        taper_length(5, 20, 4)

    assert refusal.value.field == "post_taper"


def test_posts_never_end_above_their_rails() -> None:
    with pytest.raises(CannotBuild) as refusal:
        taper_length(0, 20, 30)

    assert refusal.value.field == "glide_height"


def test_a_glide_fits_under_the_tapered_post() -> None:
    assert post_foot(70, 66, 10, 25) == 46
    with pytest.raises(CannotBuild):
        post_foot(38, 66, 10, 25)


def test_glides_sit_under_the_middle_of_both_posts() -> None:
    left, right = glide_places(700, 70, 30)

    assert left + 15 == -735  # the left post spans -770 to -700
    assert right + 15 == 735
