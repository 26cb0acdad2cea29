"""Cleat screws stand clear of those of the slats, and of what is bored into the rail behind."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from typing import Any

import pytest

from model.frame import side_frame_at
from model.materials import wood_screw
from model.part import Face, Hole, Part, Place
from model.parts.cleat_screws import cleat_screw_places, cleat_screws_shun, cleat_slat_screws

SCREW = wood_screw(8)  # 4.17 mm thick
SHANK = 4.17
LENGTH = 2026.0
SLATS = tuple(44.5 + 149 * i for i in range(14))
RAIL = Part(
    name="top rail", assembly="left side", length=2000, width=100, thickness=27, lies="uzv",
    at=(60.0, 6.0, 266.0), material="beech", frame=side_frame_at(-800, 1),
)  # fmt: skip


def places(
    slats: tuple[float, ...] = SLATS, shun: Any = (), spacing: float = 152.4
) -> tuple[float, ...]:
    return cleat_screw_places(LENGTH, SCREW, spacing, slats, shun)


def shunned(rail: Part, up: float) -> tuple[tuple[float, float], ...]:
    """Of a cleat whose middle stands at the height `up`."""
    return cleat_screws_shun((rail,), (), (), (), 60, up - 19, 38, SCREW)


def test_slats_are_screwed_in_their_middles() -> None:
    assert cleat_slat_screws((60.0, 209.0), 89, "screws", 60) == (44.5, 193.5)
    assert cleat_slat_screws((60.0, 209.0), 89, "webbing", 60) == ()


def test_cleat_screws_stand_in_the_middle_of_the_gaps_between_slats() -> None:
    """Slats' screws at 44.5, 193.5 ...: the middles are 119, 268 ... The outermost stand two
    thicknesses from the slat's screw, for one of wood between: 44.5 + 2 * 4.17 = 52.84.
    """
    found = places()

    assert found[:3] == pytest.approx((44.5 + 2 * SHANK, 119, 268))
    assert found[-2:] == pytest.approx((1907, 1981.5 - 2 * SHANK))
    assert len(found) == 13 + 2


@pytest.mark.parametrize("spacing", [60.0, 100.0, 152.4, 400.0])
def test_cleat_screws_are_no_farther_apart_than_was_chosen(spacing: float) -> None:
    for slats in (SLATS, ()):
        found = places(slats, spacing=spacing)

        assert max(b - a for a, b in pairwise(found)) <= spacing + 1e-6
        assert min(abs(a - b) for a in found for b in slats or (-99,)) >= 2 * SHANK - 1e-6


def test_a_rail_does_not_split_along_the_cleats_last_screws() -> None:
    """One did when someone sat down at the foot corner. Seven diameters from the end grain are
    the least for screws with lead holes: common practice, no source."""
    for slats in (SLATS, ()):
        found = places(slats)

        assert min(found[0], LENGTH - found[-1]) >= 7 * SHANK


def test_cleat_screws_keep_clear_of_a_dowel_that_reaches_their_height() -> None:
    """A 10 mm dowel at 500: half of it, half of the screw and one screw's thickness of wood."""
    dowel = Hole("dowel hole", Face.LOWER, (500.0, 0.0, 13.5), (0.0, 1.0, 0.0), 10, 40)
    near = 10 / 2 + SHANK / 2 + SHANK

    (stretch,) = shunned(replace(RAIL, holes=(dowel,)), up=266 + 30)

    assert stretch == pytest.approx((500 - near, 500 + near))
    assert min(abs(at - 500) for at in places((), (stretch,))) >= near - 1e-6


def test_what_ends_far_enough_below_is_no_hindrance() -> None:
    dowel = Hole("dowel hole", Face.LOWER, (500.0, 0.0, 13.5), (0.0, 1.0, 0.0), 10, 40)
    near = 10 / 2 + SHANK / 2 + SHANK

    assert shunned(replace(RAIL, holes=(dowel,)), up=266 + 40 + near + 0.1) == ()


def test_every_piece_of_a_part_is_in_the_way() -> None:
    dowel = Hole("dowel hole", Face.LOWER, (500.0, 0.0, 13.5), (0.0, 1.0, 0.0), 10, 40)
    rails = replace(RAIL, holes=(dowel,), places=(Place(), Place(u=300.0)))

    found = shunned(rails, up=266 + 30)

    assert [(a + b) / 2 for a, b in found] == pytest.approx([500, 800])
