"""The yield model: how a dowel pushed sideways crushes the wood, turns in it, and bends.

Each mode is a way to give; the least one counts. Loads are nominal: `lateral` divides them by the
terms of the design standard. Source: NDS 2018, tables 12.3.1A and 12.3.1B, from memory; tables 12L,
12M, 12A and 12F are reproduced by them.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from math import sqrt
from typing import Literal

from model.mechanics.fasteners.strengths import UltimateStress, Yield, above_zero
from model.units import Mm

Mode = Literal["Im", "Is", "II", "IIIm", "IIIs", "IV"]
CRUSHING: tuple[Mode, ...] = ("Im", "Is")
TURNING: tuple[Mode, ...] = ("II",)


@dataclass(frozen=True, kw_only=True)
class Shear:
    """A dowel through a side member into a main one: its diameter and bending yield strength, and
    for each member the dowel bearing strength (MPa) and the length of dowel in it (mm).

    For double shear, `side_length` is one of two like sides and the main member lies between.
    """

    diameter: Mm
    bending_yield: UltimateStress
    main_bearing: UltimateStress
    main_length: Mm
    side_bearing: UltimateStress
    side_length: Mm

    def __post_init__(self) -> None:
        above_zero(
            diameter=self.diameter, bending_yield=self.bending_yield,
            main_bearing=self.main_bearing, length_in_the_main_member=self.main_length,
            side_bearing=self.side_bearing, length_in_the_side_member=self.side_length,
        )  # fmt: skip

    @property
    def ratio(self) -> float:
        """R_e: bearing strength of main over side."""
        return self.main_bearing / self.side_bearing

    def single(self) -> Mapping[Mode, Yield]:
        """What each mode bears in single shear, N."""
        found = {
            "Im": self._main(),
            "Is": self._side(),
            "II": self._both(),
            "IV": self._two_hinges(),
        }
        found |= {"IIIm": self._hinge_in_main(), "IIIs": self._hinge_in_side()}
        return found  # type: ignore[return-value]

    def double(self) -> Mapping[Mode, Yield]:
        """What each mode bears in double shear, N: the main member crushes, or both sides give."""
        return {
            "Im": self._main(),
            "Is": Yield(2 * self._side()),
            "IIIs": Yield(2 * self._hinge_in_side()),
            "IV": Yield(2 * self._two_hinges()),
        }

    def _main(self) -> Yield:
        return Yield(self.diameter * self.main_length * self.main_bearing)

    def _side(self) -> Yield:
        return Yield(self.diameter * self.side_length * self.side_bearing)

    def _both(self) -> Yield:
        r, t = self.ratio, self.main_length / self.side_length
        root = sqrt(r + 2 * r**2 * (1 + t + t**2) + t**2 * r**3)
        return Yield((root - r * (1 + t)) / (1 + r) * self._side())

    def _hinge_in_main(self) -> Yield:
        r, d = self.ratio, self.diameter
        bend = 2 * self.bending_yield * (1 + 2 * r) * d**2
        bend /= 3 * self.main_bearing * self.main_length**2
        return Yield((sqrt(2 * (1 + r) + bend) - 1) * self._main() / (1 + 2 * r))

    def _hinge_in_side(self) -> Yield:
        r, d = self.ratio, self.diameter
        bend = 2 * self.bending_yield * (2 + r) * d**2
        bend /= 3 * self.main_bearing * self.side_length**2
        share = (sqrt(2 * (1 + r) / r + bend) - 1) / (2 + r)
        return Yield(share * d * self.side_length * self.main_bearing)

    def _two_hinges(self) -> Yield:
        both = 2 * self.main_bearing * self.bending_yield / (3 * (1 + self.ratio))
        return Yield(self.diameter**2 * sqrt(both))
