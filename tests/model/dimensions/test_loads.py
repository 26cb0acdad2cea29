"""What the bed carries, by plain call."""

import pytest

from model.dimensions.drawer_load import drawer_contents
from model.dimensions.loads import mattress_mass, sleepers_lying


def test_a_drawer_of_900_by_500_by_180_holds_33_kg() -> None:
    """718 Pa on 0.45 m2 is 323 N, 33 kg; 136 kg/m3 in 0.081 m3 is 11 kg: the larger counts.

    Source: ANSI/KCMA A161.1 and 16 CFR 1261.
    """
    held = drawer_contents(136.0, 718.0, 900.0, 500.0, 180.0)

    assert held == pytest.approx(32.9, abs=0.1)


def test_a_deep_drawer_of_books_is_heavier_than_its_floor_load() -> None:
    assert drawer_contents(350.0, 718.0, 900.0, 500.0, 300.0) == pytest.approx(350 * 0.135)


def test_a_mattress_weighs_by_its_area() -> None:
    assert mattress_mass(15.0, 1500.0, 2000.0) == pytest.approx(45.0)


def test_one_sleeper_lies_on_a_narrow_mattress() -> None:
    assert (sleepers_lying(2, 965.2), sleepers_lying(2, 1371.6)) == (1, 2)
