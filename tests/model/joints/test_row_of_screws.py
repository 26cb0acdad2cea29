"""A row of screws: each in its place along the middle of a part, with the hole it goes through."""

from __future__ import annotations

from typing import Any

import pytest

from model.joints.row_of_screws import row_of_screws
from model.part import Face, Hole, Screw

CLEAT = (2058.0, 38.0, 30.0)


def row(
    size: tuple[float, float, float] = CLEAT, **changes: Any
) -> tuple[tuple[Hole, ...], tuple[Screw, ...]]:
    options = {
        "through": Face.FACE, "places": (40.0, 1000.0, 2018.0), "into": "side_rail",
        "length": 44.45, "diameter": 4.17, "shank_hole": 4.4,
    }  # fmt: skip
    return row_of_screws(size, **(options | changes))


def test_screws_stand_at_the_places_along_the_length_that_were_given() -> None:
    holes, screws = row()

    assert [screw.at[0] for screw in screws] == [40, 1000, 2018]


def test_screws_stand_in_the_middle_of_the_width() -> None:
    holes, screws = row()

    assert {screw.at[1] for screw in screws} == {hole.at[1] for hole in holes} == {38 / 2}


def test_every_screw_has_its_hole_through_the_part() -> None:
    holes, screws = row()

    assert [hole.at for hole in holes] == [screw.at for screw in screws]
    assert {(hole.diameter, hole.depth) for hole in holes} == {(4.4, 30)}


@pytest.mark.parametrize(("through", "start", "way"), [(Face.FACE, 30, -1), (Face.BACK, 0, 1)])
def test_screws_go_in_at_the_face_that_they_are_driven_from(
    through: Face, start: float, way: float
) -> None:
    holes, screws = row(through=through)

    assert {screw.at[2] for screw in screws} == {start}
    assert {each.toward for each in (*holes, *screws)} == {(0, 0, way)}


@pytest.mark.parametrize(("through", "head"), [(Face.FACE, 27), (Face.BACK, 3)])
def test_a_sunk_head_starts_inside_the_wood(through: Face, head: float) -> None:
    holes, screws = row(through=through, sunk=3)

    assert {screw.at[2] for screw in screws} == {head}
    assert {hole.at[2] for hole in holes} == {30 if through is Face.FACE else 0}


def test_screws_know_what_they_bite() -> None:
    _, screws = row(into="top_rail")

    assert {(screw.into, screw.length, screw.diameter) for screw in screws} == {
        ("top_rail", 44.45, 4.17)
    }
