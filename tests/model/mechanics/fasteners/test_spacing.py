"""Least distances of NDS 2018 and its commentary (from memory), in multiples of the diameter."""

from __future__ import annotations

import pytest

from model.errors import BadInput
from model.mechanics.fasteners.spacing import bolt_distances, screw_distances


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


def test_tables_12_5_1_bolts() -> None:
    """Along the grain an end in softwood is 7 D away, in hardwood 5; across it an edge 4 D."""
    soft, hard = (bolt_distances(8, 0, is_softwood=soft) for soft in (True, False))

    assert in_diameters(soft, 8) == [1.5, 7, 4, 4, 4]
    assert hard.loaded_end == 40
    assert in_diameters(bolt_distances(8, 90, is_softwood=True), 8) == [4, 4, 4, 4, 4]


def test_other_angles_are_not_tabled() -> None:
    with pytest.raises(BadInput, match="along and across"):
        bolt_distances(8, 45, is_softwood=True)
