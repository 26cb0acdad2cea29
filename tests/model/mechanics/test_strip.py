"""A strip on fasteners: shares that balance, and a long one against the elastic foundation."""

from __future__ import annotations

import numpy as np
import pytest

from model.errors import BadInput
from model.mechanics.strip import shares

POPLAR = 10_900 * 30 * 38**3 / 12


def test_forces_and_moments_balance() -> None:
    screws, loads = (40.0, 190.0, 340.0, 490.0), (60.0, 250.0, 460.0)

    found = shares(screws, loads, POPLAR, 1850.0)

    assert found.sum(axis=0) == pytest.approx(1)
    assert np.array(screws) @ found == pytest.approx(np.array(loads))


def test_a_stiff_strip_is_a_lever() -> None:
    """Rigid on three springs: P/3 and the moment over the sum of squares."""
    found = shares((0.0, 100.0, 200.0), (150.0,), 1e12, 1.0)

    assert found[:, 0] == pytest.approx([1 / 3 - 0.25, 1 / 3, 1 / 3 + 0.25], rel=1e-4)


def test_a_limp_strip_gives_all_to_the_screw_at_the_load() -> None:
    found = shares((0.0, 100.0, 200.0), (100.0,), 1.0, 1850.0)

    assert found[1, 0] == pytest.approx(1, abs=1e-3)


def test_a_long_strip_shares_as_a_beam_on_an_elastic_foundation() -> None:
    """Hetenyi, Beams on Elastic Foundation: the peak pressure is P / 2 l, l^4 = 4 E I / k."""
    apart, stiffness = 20.0, 300.0
    screws = tuple(apart * i for i in range(201))
    length = (4 * POPLAR * apart / stiffness) ** 0.25

    found = shares(screws, (2000.0,), POPLAR, stiffness)

    assert found.max() == pytest.approx(apart / (2 * length), rel=2e-3)
    assert found.min() < 0  # farther off the strip lifts a little


def test_one_screw_takes_all() -> None:
    assert shares((50.0,), (10.0, 90.0), POPLAR, 1850.0).tolist() == [[1, 1]]


def test_a_strip_without_screws_is_refused() -> None:
    with pytest.raises(BadInput, match="without screws"):
        shares((), (10.0,), POPLAR, 1850.0)
