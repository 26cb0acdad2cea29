"""Rectangular sections: what their size does against bending, twisting and shear."""

from __future__ import annotations

import numpy as np
import numpy.typing as npt

Floats = npt.NDArray[np.float64]


def second_moment(width: Floats, height: Floats) -> Floats:
    """Second moment of area of rectangles about the axis along their width: b h^3 / 12, mm4.

    Source: Wood Handbook 2021 (FPL-GTR-282), equation 9-3
    """
    return np.asarray(width * height**3 / 12)


def section_modulus(width: Floats, height: Floats) -> Floats:
    """Section modulus of rectangles about the axis along their width: b h^2 / 6, mm3.

    Source: Wood Handbook 2021 (FPL-GTR-282), equation 9-13
    """
    return np.asarray(width * height**2 / 6)


def torsion_constant(width: Floats, height: Floats) -> Floats:
    """Torsion constant of rectangles, mm4: a b^3 (1/3 - 0.21 b/a (1 - b^4 / 12 a^4)), a >= b.

    Source: Roark's Formulas for Stress and Strain, table of torsion of solid sections, rectangle,
    from memory; within 4 % of the exact series
    """
    long, short = np.maximum(width, height), np.minimum(width, height)
    ratio = short / long
    return np.asarray(long * short**3 * (1 / 3 - 0.21 * ratio * (1 - ratio**4 / 12)))


def torsion_stress(moment: Floats, width: Floats, height: Floats) -> Floats:
    """Greatest shear stress of rectangles twisted by a moment in N mm, MPa.

    T (3 a + 1.8 b) / (a b)^2 with a >= b.

    Source: Roark's Formulas for Stress and Strain, torsion of a rectangle, approximate form, from
    memory; within 5 % of the exact series
    """
    long, short = np.maximum(width, height), np.minimum(width, height)
    return np.asarray(np.abs(moment) * (3 * long + 1.8 * short) / (long * short) ** 2)
