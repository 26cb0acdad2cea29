"""Openings between pieces, measured by the ball that could pass."""

from __future__ import annotations

import numpy as np
import pytest

from model.solids.openings import openings

Box = tuple[float, float, float, float]


def of(*boxes: Box) -> tuple[float, ...]:
    found = np.array(boxes, float)
    return openings(found[:, :2].copy(), found[:, 2:].copy())


RAILS: tuple[Box, ...] = ((0, 0, 1000, 100), (0, 500, 1000, 600))
POSTS: tuple[Box, ...] = ((0, 0, 50, 600), (950, 0, 1000, 600))


def test_between_rails_and_posts_the_lesser_size_counts() -> None:
    assert of(*RAILS, *POSTS) == (400.0,)


def test_a_slat_parts_the_opening_in_two() -> None:
    """900 mm between the posts, a slat of 60 mm 240 mm from the first: 240 and 600, 400 high."""
    assert of(*RAILS, *POSTS, (290, 100, 350, 500)) == (240.0, 400.0)


def test_slats_let_into_their_rails_leave_the_same_gap() -> None:
    slats: tuple[Box, ...] = tuple((50 + k * 100, 80, 90 + k * 100, 520) for k in range(1, 9))

    assert of(*RAILS, *POSTS, *slats) == (60.0, 100.0)


def test_planks_whose_tongues_overlap_are_closed() -> None:
    planks: tuple[Box, ...] = tuple((40 + k * 100, 90, 150 + k * 100, 510) for k in range(9))

    assert of(*RAILS, *POSTS, *planks) == ()


@pytest.mark.parametrize("side", [0, 1])
def test_what_is_open_on_one_side_is_no_opening(side: int) -> None:
    assert of(*RAILS, POSTS[side]) == ()
    assert of(RAILS[side], *POSTS) == ()


def test_nothing_encloses_nothing() -> None:
    assert openings(np.zeros((0, 2)), np.zeros((0, 2))) == ()
