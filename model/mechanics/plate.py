"""Rectangular plates under an even load, held on four edges: sag and bending moments.

Thin plates, small sag. Left out: the membrane that forms when the edges cannot draw in and the sag
nears the thickness (a bottom in a groove can draw in, and without the membrane the sag comes out
larger, never smaller), and the shear between the layers of a sheet.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from math import pi, sqrt
from typing import Literal, NamedTuple

import numpy as np
import numpy.typing as npt

from model.errors import BadInput
from model.units import Mm, Mpa

Floats = npt.NDArray[np.float64]
Edges = Literal["resting", "clamped"]

_ODD = np.arange(1, 60, 2, dtype=float)  # terms of the series: sag to 1e-6, moments to 2e-4
_STATIONS = 25  # along each half centre line, where moments are looked for


@dataclass(frozen=True, kw_only=True)
class Plate:
    """A plate's stiffness in bending, N mm: along x, along y, by Poisson's effect, and in twist.

    `twist` is H = `poisson` + 2 D_xy, with D_xy = G t^3 / 12.
    """

    along_x: float
    along_y: float
    poisson: float
    twist: float

    def __post_init__(self) -> None:
        if not (self.along_x > 0 and self.along_y > 0 and self.twist > 0):
            raise BadInput("thickness", "A plate needs a thickness and a stiffness above zero.")


class Bent(NamedTuple):
    """Greatest sag, mm, and greatest bending moments about each axis, N mm per mm of width:
    `moment_x` bends fibres along x, in the field or, where edges are clamped, at them.
    """

    sag: Mm
    moment_x: float
    moment_y: float


def sheet_plate(moe_x: Mpa, moe_y: Mpa, thickness: Mm, twist_modulus: Mpa, ratio: float) -> Plate:
    """The plate of a sheet that is stiffer one way than the other; `ratio` is Poisson's, the
    geometric mean of both ways.

    Source: Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, chapter 11
    """
    if not (moe_x > 0 and moe_y > 0 and thickness > 0 and twist_modulus > 0 and 0 <= ratio < 1):
        raise BadInput("thickness", "A plate needs a thickness and a stiffness above zero.")
    cube = thickness**3 / 12
    bend = cube / (1 - ratio**2)
    poisson = ratio * sqrt(moe_x * moe_y) * bend
    return Plate(
        along_x=moe_x * bend, along_y=moe_y * bend, poisson=poisson,
        twist=poisson + 2 * twist_modulus * cube,
    )  # fmt: skip


def even_plate(moe: Mpa, thickness: Mm, ratio: float = 0.3) -> Plate:
    """The plate of a sheet that is as stiff in all directions."""
    return sheet_plate(moe, moe, thickness, moe / (2 * (1 + ratio)), ratio)


def bent(plate: Plate, x: Mm, y: Mm, load: Mpa, edges: Edges = "resting") -> Bent:
    """A plate of x by y mm under `load` (N per mm2) on all of it, its edges resting or clamped.

    Source: resting: Navier's series for orthotropic plates, Timoshenko and Woinowsky-Krieger,
    Theory of Plates and Shells, chapter 11; clamped: Ritz's method, polynomials
    """
    if not (x > 0 and y > 0):
        raise BadInput("bottom", "A plate needs a length and a width above zero.")
    if load == 0:
        return Bent(0.0, 0.0, 0.0)
    return (_resting if edges == "resting" else _clamped)(plate, x, y, load)


# ---------------------------------------------------------------- resting on four edges


@lru_cache(maxsize=1)
def _waves() -> tuple[Floats, Floats]:
    """sin(m pi s) at stations s from 0 to 1/2: (terms, stations); and 1 / (m n): (terms, terms)."""
    s = np.linspace(0, 0.5, _STATIONS)
    return np.sin(_ODD[:, None] * pi * s), 1 / np.outer(_ODD, _ODD)


def _resting(plate: Plate, x: Mm, y: Mm, load: Mpa) -> Bent:
    waves, share = _waves()
    a, b = (_ODD[:, None] * pi / x) ** 2, (_ODD[None, :] * pi / y) ** 2
    stiff = plate.along_x * a * a + 2 * plate.twist * a * b + plate.along_y * b * b
    part = 16 * load / pi**2 * share / stiff
    middle = waves[:, -1]
    bend_x, bend_y = (
        (plate.along_x * a + plate.poisson * b),
        (plate.along_y * b + plate.poisson * a),
    )
    return Bent(
        float(middle @ part @ middle),
        _greatest(part * bend_x, waves),
        _greatest(part * bend_y, waves),
    )


def _greatest(part: Floats, waves: Floats) -> float:
    """The greatest value on both centre lines."""
    middle = waves[:, -1]
    return float(max(np.max(middle @ part @ waves), np.max(waves.T @ (part @ middle))))


# ---------------------------------------------------------------- clamped on four edges

_SHAPES = 9  # even polynomials (1 - s^2)^2 P_k(s), k = 0, 2 ...: edge moments to 1e-3


class _Shapes(NamedTuple):
    """Integrals over -1 .. 1 of products of the shapes: none bent, one bent, both bent (k, k); of
    each alone (k,); each one's curvature at the middle and at the edge (k,), and its middle.
    """

    flat: Floats
    mixed: Floats
    bent: Floats
    alone: Floats
    middle: Floats
    curve_middle: Floats
    curve_edge: Floats


@lru_cache(maxsize=1)
def _shapes() -> _Shapes:
    held = np.polynomial.Polynomial([1, 0, -2, 0, 1])
    legendre = np.polynomial.Legendre
    shapes = [
        held * legendre.basis(2 * k).convert(kind=np.polynomial.Polynomial) for k in range(_SHAPES)
    ]
    at, weight = np.polynomial.legendre.leggauss(4 * _SHAPES + 8)
    value = np.array([each(at) for each in shapes])
    curve = np.array([each.deriv(2)(at) for each in shapes])
    ends = np.array([each.deriv(2)(np.array([0.0, 1.0])) for each in shapes])
    return _Shapes(
        (value * weight) @ value.T, (value * weight) @ curve.T, (curve * weight) @ curve.T,
        value @ weight, np.array([each(0.0) for each in shapes]), ends[:, 0], ends[:, 1],
    )  # fmt: skip


def _clamped(plate: Plate, x: Mm, y: Mm, load: Mpa) -> Bent:
    s = _shapes()
    p, q = x / 2, y / 2
    cross = np.kron(s.mixed, s.mixed.T)
    stiff = (
        plate.along_x * q / p**3 * np.kron(s.bent, s.flat)
        + plate.along_y * p / q**3 * np.kron(s.flat, s.bent)
        # Clamped edges turn the twisting energy into products of curvatures: 2 H in all.
        + plate.twist / (p * q) * (cross + cross.T)
    )
    size = np.linalg.solve(stiff, load * p * q * np.kron(s.alone, s.alone))
    shape = size.reshape(_SHAPES, _SHAPES)
    sag, middle = s.middle @ shape @ s.middle, s.middle
    curve_x, curve_y = s.curve_middle @ shape @ middle, middle @ shape @ s.curve_middle
    in_field = _moments(plate, float(curve_x) / p**2, float(curve_y) / q**2)
    at_x = _moments(plate, float(s.curve_edge @ shape @ middle) / p**2, 0.0)
    at_y = _moments(plate, 0.0, float(middle @ shape @ s.curve_edge) / q**2)
    return Bent(
        float(sag), max(abs(in_field[0]), abs(at_x[0])), max(abs(in_field[1]), abs(at_y[1]))
    )


def _moments(plate: Plate, curve_x: float, curve_y: float) -> tuple[float, float]:
    return (
        -plate.along_x * curve_x - plate.poisson * curve_y,
        -plate.along_y * curve_y - plate.poisson * curve_x,
    )
