"""Twisted rectangles against the coefficients that textbooks print.

Timoshenko and Goodier, Theory of Elasticity, torsion of a rectangular bar: J = beta a b^3 and
greatest shear stress T / (alpha a b^2), a the longer side (from memory). Behind them stand the
series of the same chapter, which are summed here.
"""

from __future__ import annotations

import numpy as np
import pytest

from model.mechanics.section import torsion_constant, torsion_stress

SHORT = 19.0
PRINTED = [(1, 0.141, 0.208), (1.5, 0.196, 0.231), (2, 0.229, 0.246), (3, 0.263, 0.267),
           (10, 0.312, 0.312)]  # fmt: skip


def coefficients(ratio: float, *, upright: bool) -> tuple[float, float]:
    """Beta and alpha as our formulas have them."""
    long, short = np.array(ratio * SHORT), np.array(SHORT)
    sizes = (short, long) if upright else (long, short)
    beta = torsion_constant(*sizes) / (long * short**3)
    alpha = 1000.0 / (torsion_stress(np.array(-1000.0), *sizes) * long * short**2)
    return float(beta), float(alpha)


@pytest.mark.parametrize("upright", [False, True])
@pytest.mark.parametrize(("ratio", "beta", "alpha"), PRINTED)
def test_table_of_rectangles(ratio: float, beta: float, alpha: float, upright: bool) -> None:
    found = coefficients(ratio, upright=upright)

    # Three printed digits, and what the formulas leave out.
    assert found == (pytest.approx(beta, abs=0.0006), pytest.approx(alpha, abs=0.0008))


@pytest.mark.parametrize("ratio", [1.0, 1.2, 1.75, 2.5, 4.0, 4.7, 6.0, 10.0])
def test_series_of_rectangles(ratio: float) -> None:
    """J = a b^3 / 3 (1 - 192 b / pi^5 a sum tanh(n pi a / 2 b) / n^5); in the middle of the long
    side 1 - 8 / pi^2 sum 1 / (n^2 cosh(n pi a / 2 b)) of the stress in a thin strip; n odd.
    """
    n = np.arange(1, 200, 2, dtype=float)
    half = n * np.pi * ratio / 2
    beta = (1 - 192 / np.pi**5 / ratio * np.sum(np.tanh(half) / n**5)) / 3
    alpha = beta / (1 - 8 / np.pi**2 * np.sum(2 * np.exp(-half) / (n**2 * (1 + np.exp(-2 * half)))))

    found = coefficients(ratio, upright=False)

    assert found == (pytest.approx(beta, rel=5e-3), pytest.approx(alpha, rel=3e-3))
