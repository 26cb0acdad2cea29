"""Least distances of the commentary on NDS 2018 (from memory), in multiples of the diameter."""

from __future__ import annotations

import pytest

from model.mechanics.fasteners.spacing import screw_distances


def in_diameters(found: tuple[float, ...], diameter: float) -> list[float]:
    return [round(each / diameter, 6) for each in found]


@pytest.mark.parametrize(
    ("has_pilot", "through_steel", "expected"),
    [
        (True, False, [2.5, 10, 5, 10, 5]), (False, False, [2.5, 15, 10, 15, 10]),
        (True, True, [2.5, 5, 3, 5, 2.5]), (False, True, [2.5, 10, 5, 10, 5]),
    ],
)  # fmt: skip
def test_table_c12_1_5_7_wood_screws(
    has_pilot: bool, through_steel: bool, expected: list[float]
) -> None:
    found = screw_distances(4.17, has_pilot=has_pilot, through_steel=through_steel)

    assert in_diameters(found, 4.17) == expected
