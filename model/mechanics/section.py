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


def shear_stress(shear: Floats, width: Floats, height: Floats) -> Floats:
    """Greatest shear stress of rectangles under a shear force in N: 3 V / 2 A, MPa.

    Source: Wood Handbook 2021 (FPL-GTR-282), equation 9-14
    """
    return np.asarray(1.5 * np.abs(shear) / (width * height))


def torsion_constant(width: Floats, height: Floats) -> Floats:
    """Torsion constant of rectangles, mm4: a b^3 (1/3 - 0.21 b/a (1 - b^4 / 12 a^4)), a >= b.

    Source: Roark's Formulas for Stress and Strain, table of torsion of solid sections, rectangle,
    from memory; within 0.5 % of the exact series
    """
    long, short = np.maximum(width, height), np.minimum(width, height)
    ratio = short / long
    return np.asarray(long * short**3 * (1 / 3 - 0.21 * ratio * (1 - ratio**4 / 12)))


def torsion_stress(moment: Floats, width: Floats, height: Floats) -> Floats:
    """Greatest shear stress of rectangles twisted by a moment in N mm, MPa.

    3 T / (a b^2) (1 + 0.6095 r + 0.8865 r^2 - 1.8023 r^3 + 0.91 r^4) with r = b / a, a >= b.

    Source: Roark's Formulas for Stress and Strain, table of torsion of solid sections, rectangle,
    from memory; within 0.3 % of the exact series
    """
    long, short = np.maximum(width, height), np.minimum(width, height)
    r = short / long
    uneven = 1 + r * (0.6095 + r * (0.8865 + r * (-1.8023 + 0.91 * r)))
    return np.asarray(3 * np.abs(moment) / (long * short**2) * uneven)
