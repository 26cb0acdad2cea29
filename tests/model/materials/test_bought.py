"""Bought things weigh what their simple solid would, as far as metal fills it."""

from __future__ import annotations

import pytest

from model.bed import Design, solve
from model.materials.bought import bought_density, bought_weights


def test_a_code_is_known_by_its_beginning() -> None:
    assert bought_density("SLIDE-711") == bought_density("SLIDE-711-inner") > 0
    assert bought_density("DOWEL-10X50") == pytest.approx(720 * 0.785)


def test_what_has_no_row_weighs_nothing() -> None:
    assert bought_density("MATTRESS") == 0
    assert bought_density("SLI") == 0


def test_every_row_says_where_its_figures_come_from() -> None:
    assert all(row.source for row in bought_weights().values())
    assert all(0 < row.filled_share <= 1 for row in bought_weights().values())


@pytest.mark.parametrize(
    "choices",
    [
        {},
        {"connector": "keyhole_plate_125"},
        {"connector": "cross_bolt_m6"},
        {"connector": "bed_bolt_3_8", "frame_stock": 38.1, "bottom_rail_width": 88.9},
        {"slide": "wooden_runner", "frame_joint": "dowel", "pull": "cup_96"},
    ],
)
def test_all_hardware_of_a_bed_but_the_mattress_weighs_something(
    choices: dict[str, object],
) -> None:
    bed = solve(Design().with_choices(choices))

    assert [each.code for each in bed.hardware if not bought_density(each.code)] == []


def test_a_pair_of_long_slides_weighs_two_to_three_kilograms() -> None:
    """Four members of 711 x 6.35 x 45 mm, half a pair's weight being air; from memory."""
    pair = 4 * 711 * 6.35 * 45 / 1e9 * bought_density("SLIDE-711")

    assert 2.0 < pair < 3.0
