"""The units of sizes, how lengths are shown, and how they are rounded to the shop grid.

Inside, a length is a float of millimetres. Inches and fractions exist only in the text that a maker
types or reads; `model/read_length.py` reads it.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from fractions import Fraction
from typing import Annotated, NamedTuple

from model.errors import BadInput

Mm = Annotated[float, "mm"]
Measured = Annotated[float | None, "mm, measured"]
Mm2 = Annotated[float, "mm2"]
Mm3 = Annotated[float, "mm3"]
Mm4 = Annotated[float, "mm4"]
Count = Annotated[int, "count"]
Share = Annotated[float, "share"]
Degrees = Annotated[float, "degrees"]
Percent = Annotated[float, "%"]
Celsius = Annotated[float, "°C"]
Kg = Annotated[float, "kg"]
KgPerM3 = Annotated[float, "kg/m3"]
KgPerM2 = Annotated[float, "kg/m2"]
Newton = Annotated[float, "N"]
Pascal = Annotated[float, "Pa"]
NewtonPerMm = Annotated[float, "N/mm"]
Mpa = Annotated[float, "MPa"]
Places = tuple[float, ...]
Masses = Annotated[tuple[float, ...], "kg"]
Spans = tuple[tuple[float, float], ...]  # from and to along a run, mm

INCH: Mm = 25.4

# ---------------------------------------------------------------- names of units

UNIT_WORDS: dict[str, str] = {
    **dict.fromkeys(("mm", "millimetre", "millimetres", "millimeter", "millimeters"), "mm"),
    **dict.fromkeys(("cm", "centimetre", "centimetres", "centimeter", "centimeters"), "cm"),
    **dict.fromkeys(("m", "metre", "metres", "meter", "meters"), "m"),
    **dict.fromkeys(("in", "inch", "inches", '"'), "inch"),
    **dict.fromkeys(("ft", "foot", "feet", "'"), "foot"),
}


def unit_named(name: str) -> str:
    """The unit that a word or sign stands for: `inch` for in, inches or ".

    Refused: a word for no unit of length.
    """
    unit = UNIT_WORDS.get(name.strip().lower().rstrip("."))
    if unit is None:
        raise BadInput("unit", f"Lengths are shown in mm or in inches; “{name}” is neither.")
    return unit


# ---------------------------------------------------------------- rounding: the shop grid

_SNAP = 6  # decimals: 1 nm, far below any saw, so that sums of grid sizes compare equal
_HAIR: Mm = 1e-6  # a size this near to a step is on it: what is left is floating-point dust
_FINER: dict[str, tuple[float, ...]] = {
    "inch": (INCH / 16, INCH / 32, INCH / 64, INCH / 128),
    "mm": (1.0, 0.5, 0.1),
}


class Landing(NamedTuple):
    """A size that meets a tolerance, and the step it had to be put on to do so."""

    size: Mm
    grid: ShopGrid


def snapped(size: Mm) -> Mm:
    """The size without floating-point dust, to 1 nm: what just fits is not 1e-13 mm short."""
    return round(size, _SNAP)


@dataclass(frozen=True)
class ShopGrid:
    """The steps that a maker's tape, fence and stops are set by.

    `step` in mm; `unit` is "inch" or "mm", which decides how the finer steps go on.
    """

    step: float
    unit: str

    @property
    def name(self) -> str:
        """The step as a maker says it: `1/32 in`, `0.5 mm`."""
        if self.unit == "inch":
            return f"{_inch_fraction(Fraction(1, round(INCH / self.step)))} in"
        return f"{self.step:g} mm"

    def down(self, size: Mm) -> Mm:
        """The greatest grid size that is no larger."""
        return self._at(math.floor((size + _HAIR) / self.step))

    def up(self, size: Mm) -> Mm:
        """The least grid size that is no smaller."""
        return self._at(math.ceil((size - _HAIR) / self.step))

    def near(self, size: Mm) -> Mm:
        """The nearest grid size; half-way goes up."""
        return self._at(math.floor((size + _HAIR) / self.step + 0.5))

    def holds(self, size: Mm) -> bool:
        """Whether the size lies on the grid already."""
        return abs(size - self.near(size)) <= _HAIR

    def finer(self) -> tuple[ShopGrid, ...]:
        """This grid and the finer ones that a careful maker can still set, coarsest first."""
        steps = (step for step in _FINER[self.unit] if step < self.step - _HAIR)
        return (self, *(ShopGrid(step, self.unit) for step in steps))

    def within(self, low: Mm, high: Mm) -> Landing:
        """A size that must meet a tolerance goes on the coarsest step that lands inside it.

        Of several sizes on that step the one nearest to the middle is taken. Refused: a tolerance
        too narrow for the finest step.
        """
        middle = (low + high) / 2
        for grid in self.finer():
            size = grid.near(middle)
            if low - _HAIR <= size <= high + _HAIR:
                return Landing(size, grid)
        raise BadInput(
            "tolerance",
            f"No size on a step of {self.finer()[-1].name} lies between {low:.3f} and "
            f"{high:.3f} mm; give a wider tolerance.",
        )

    def _at(self, steps: int) -> Mm:
        return round(steps * self.step, _SNAP)


GRIDS: dict[str, ShopGrid] = {
    "1/32 in": ShopGrid(INCH / 32, "inch"),
    "1/16 in": ShopGrid(INCH / 16, "inch"),
    "0.5 mm": ShopGrid(0.5, "mm"),
    "1 mm": ShopGrid(1.0, "mm"),
}


def tape_grid(unit: str) -> ShopGrid:
    """The steps that a tape is read by, sixteenths or mm: nobody saws or asks for wood closer."""
    return GRIDS["1/16 in" if unit == "inch" else "1 mm"]


# ---------------------------------------------------------------- showing

_FINEST_FRACTION = 64
_TRUE: Mm = 0.0005  # half a micron: a shown size this near is the size itself


def show_length(mm: Mm, unit: str, step: Mm | None = None) -> str:
    """A length as the maker reads it: `695.3 mm`, `27 3/8"`.

    `unit` is "mm" or "inch"; `step` (mm) is the fineness to show, by default 1/64 in or 0.1 mm.
    What cannot be said at that fineness carries a `~`, so that nobody cuts to a rounded figure
    unawares. A true 1/128 in or 0.01 mm is shown as it is.
    """
    return show_bare(mm, unit, step) + ('"' if unit_named(unit) == "inch" else " mm")


def show_bare(mm: Mm, unit: str, step: Mm | None = None) -> str:
    """A length without its unit sign, for table cells whose heading names the unit."""
    show = _bare_inches if unit_named(unit) == "inch" else _bare_mm
    sign = "-" if mm < 0 else ""
    shown, text = show(abs(mm), step)
    about = "~" if abs(shown - abs(mm)) > _TRUE else ""
    return about + (sign if shown else "") + text


def _bare_mm(mm: Mm, step: Mm | None) -> tuple[Mm, str]:
    if step is None:
        # Hundredths are shown only when they are the true size, as in a 19.05 mm sheet.
        step = 0.01 if abs(mm - round(mm, 2)) <= _TRUE else 0.1
    shown = round(math.floor(mm / step + 0.5) * step, _SNAP)
    return shown, f"{shown:.6f}".rstrip("0").rstrip(".")


def _bare_inches(mm: Mm, step: Mm | None) -> tuple[Mm, str]:
    fineness = _FINEST_FRACTION if step is None else max(1, round(INCH / step))
    inches = mm / INCH
    if step is None and abs(round(inches * 128) / 128 * INCH - mm) <= _TRUE:
        fineness = 128  # a size cut to meet a slide's tolerance may lie on this step, truly
    counted = Fraction(math.floor(inches * fineness + 0.5), fineness)
    return float(counted) * INCH, _inch_fraction(counted)


def _inch_fraction(inches: Fraction) -> str:
    whole, rest = divmod(inches, 1)
    return f"{whole}" if not rest else f"{whole} {rest}" if whole else f"{rest}"
