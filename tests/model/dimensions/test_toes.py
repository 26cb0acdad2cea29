"""Slanting screws from both edges of one piece: they bite, and keep clear of each other."""

from __future__ import annotations

import math

import pytest

from model.dimensions.toes import Toe, toe_from_both_edges


def between_points(toe: Toe, width: float) -> float:
    """Wood between the shanks of two such screws, by their nearest points: mirror images that have
    not crossed come nearest at their very points.
    """
    across = toe.fastener.length * math.sin(math.radians(toe.lean))
    assert across < width / 2
    return width - 2 * across - toe.fastener.screw.shank_mm


@pytest.mark.parametrize(("width", "thickness"), [(38.1, 19.05), (64.0, 19.0), (89.0, 25.4)])
def test_points_from_both_edges_keep_a_diameter_of_wood_between_them(
    width: float, thickness: float
) -> None:
    toe = toe_from_both_edges(width, thickness, 120.0, 76.0)

    assert toe is not None
    shank = toe.fastener.screw.shank_mm
    assert between_points(toe, width) >= shank - 1e-9
    assert 2.5 * shank <= thickness / 2  # NDS 2018 commentary, edge distance in a pilot hole


def test_a_third_of_the_screw_is_in_the_piece_and_four_diameters_bite() -> None:
    """Along the piece's length; by its axis the first third is longer by the slant."""
    toe = toe_from_both_edges(38.1, 19.05, 120.0, 76.0)

    assert toe is not None
    assert toe.start == pytest.approx(toe.fastener.length / 3)
    bite = toe.fastener.length - toe.start / math.cos(math.radians(toe.lean))
    assert bite >= 4 * toe.fastener.screw.shank_mm


def test_points_stay_in_a_low_bearer() -> None:
    toe = toe_from_both_edges(89.0, 25.4, 120.0, 19.0)

    assert toe is not None
    down = toe.fastener.length * math.cos(math.radians(toe.lean)) - toe.start
    assert down <= 19.0 - 3.0


def test_where_no_screw_bites_there_is_none() -> None:
    assert toe_from_both_edges(38.1, 19.05, 120.0, 6.0) is None
    assert toe_from_both_edges(38.1, 19.05, 5.0, 76.0) is None
