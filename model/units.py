"""How lengths are read, shown and rounded.

Inside, a length is a float of millimetres. Inches and fractions exist only in the text that a maker
types or reads; they are counted as exact fractions on the way in, so that 27 3/8 in is 695.325 mm
and not a neighbour of it.
"""

from __future__ import annotations

import math
import re
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

# ---------------------------------------------------------------- showing

_FINEST_FRACTION = 64
_TRUE: Mm = 0.0005  # half a micron: a shown size this near is the size itself


def show_length(mm: Mm, unit: str, step: Mm | None = None) -> str:
    """A length as the maker reads it: `695.3 mm`, `27 3/8"`.

    `unit` is "mm" or "inch"; `step` (mm) is the fineness to show, by default 1/64 in or 0.1 mm.
    What cannot be said at that fineness carries a `~`, so that nobody cuts to a rounded figure
    unawares. A true 1/128 in or 0.01 mm is shown as it is.
    """
    return show_bare(mm, unit, step) + ('"' if _unit(unit) == "inch" else " mm")


def show_bare(mm: Mm, unit: str, step: Mm | None = None) -> str:
    """A length without its unit sign, for table cells whose heading names the unit."""
    show = _bare_inches if _unit(unit) == "inch" else _bare_mm
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


def _unit(name: str) -> str:
    unit = _UNIT_WORDS.get(name.strip().lower().rstrip("."))
    if unit is None:
        raise BadInput("unit", f"Lengths are shown in mm or in inches; “{name}” is neither.")
    return unit


# ---------------------------------------------------------------- reading

_IN_MM: dict[str, Fraction] = {
    "mm": Fraction(1),
    "cm": Fraction(10),
    "m": Fraction(1000),
    "inch": Fraction(254, 10),
    "foot": Fraction(3048, 10),
}
_UNIT_WORDS: dict[str, str] = {
    **dict.fromkeys(("mm", "millimetre", "millimetres", "millimeter", "millimeters"), "mm"),
    **dict.fromkeys(("cm", "centimetre", "centimetres", "centimeter", "centimeters"), "cm"),
    **dict.fromkeys(("m", "metre", "metres", "meter", "meters"), "m"),
    **dict.fromkeys(("in", "inch", "inches", '"'), "inch"),
    **dict.fromkeys(("ft", "foot", "feet", "'"), "foot"),
}
_SIGNS = str.maketrans(
    {
        **dict.fromkeys("\u2032\u2018\u2019\u00b4\u02b9`", "'"),  # prime, quotes, accents
        **dict.fromkeys("\u2033\u201c\u201d\u02ba", '"'),  # double prime, double quotes
        **dict.fromkeys("\u2212\u2010\u2011\u2013\u2014", "-"),  # minus, hyphens, dashes
        **dict.fromkeys("\u00d7\u00b7\u22c5", "*"),  # times, dots
        **dict.fromkeys("\u2044\u2215\u00f7", "/"),  # fraction and division slashes
        **dict.fromkeys("\u00a0\u2009\u202f\t\n\r", " "),  # spaces of other widths
    }
)
_VULGAR: dict[str, str] = {
    "¼": "1/4", "½": "1/2", "¾": "3/4", "⅓": "1/3", "⅔": "2/3", "⅕": "1/5", "⅖": "2/5",
    "⅗": "3/5", "⅘": "4/5", "⅙": "1/6", "⅚": "5/6", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8",
    "⅞": "7/8", "⅒": "1/10", "⅐": "1/7", "⅑": "1/9",
}  # fmt: skip
_TOKEN = re.compile(
    r"""\s*(?:
        (?P<mixed>(?<!/)[0-9]+(?:\s+|-)[0-9]+/[0-9]+(?![0-9.,/])) # 27 3/8 and 27-3/8
      | (?P<fraction>(?<!/)[0-9]+/[0-9]+(?![0-9.,/]))        # 3/8, before any unit sign
      | (?P<number>[0-9]+(?:[.,][0-9]+)?|[.,][0-9]+)         # 27  27.375  27,375  .5
      | (?P<unit>[a-z]+\.?|''|"|')
      | (?P<dash>(?<=['t])(?<!'')-(?=[0-9]))                  # 2'-3" and 2ft-3in
      | (?P<sign>[-+*/()])
    )""",
    re.VERBOSE,
)
_LONGEST = 80  # characters: a longer text is a slip of the clipboard, not a length
_EXAMPLES = "27 3/8, 2' 3 3/8\", 27.375 in, 695 mm, 69,5 cm or a small sum such as 60 + 1/2"


def parse_length(text: str, default_unit: str = "mm", field: str = "length") -> Mm:
    """Read a length as makers write them, small sums included.

    A number without a unit is in `default_unit` ("mm" or "inch"; in a sum with another unit it is
    refused, because either reading could be meant). `27-3/8` is twenty-seven and three eighths and
    `2'-3"` two feet three: a minus has a space beside it there. A leading `~` is ignored.
    Refused with a sentence: what is not a length, what is below zero, division by zero.
    """
    try:
        return _Reading(_tokens(text), _unit(default_unit)).length()
    except _NotUnderstood as reason:
        raise BadInput(field, str(reason).format(text=text.strip())) from None


class _NotUnderstood(Exception):
    """Why a text is no length; `{text}` stands for what was typed."""


def _not_a_length(found: str = "") -> _NotUnderstood:
    where = f" (at “{found}”)" if found else ""
    where = where.replace("{", "{{").replace("}", "}}")
    return _NotUnderstood(f"“{{text}}” is not understood as a length{where}. Write {_EXAMPLES}.")


class _Token(NamedTuple):
    kind: str
    text: str


class _Amount(NamedTuple):
    """A number, or a length in mm when `unit` is named; `unit` "several" is a sum of two kinds."""

    value: Fraction
    unit: str = ""


def _tokens(typed: str) -> list[_Token]:
    plain = typed.translate(_SIGNS).strip().lower().removeprefix("~")
    for vulgar, spelt in _VULGAR.items():
        # Spaces keep 27½ from becoming 271/2; the dash of 2'-½" stays tight.
        plain = re.sub(f"(?<!-){vulgar}", f" {spelt} ", plain).replace(vulgar, f"{spelt} ")
    plain = plain.strip()
    if not plain:
        raise _NotUnderstood(f"No length is given. Write {_EXAMPLES}.")
    if len(plain) > _LONGEST:
        raise _NotUnderstood(f"The text is too long to be a length. Write {_EXAMPLES}.")
    found: list[_Token] = []
    place = 0
    while place < len(plain):
        match = _TOKEN.match(plain, place)
        if match is None:
            raise _not_a_length(plain[place:].strip())
        kind = match.lastgroup or ""
        text = match[kind]
        place = match.end()
        if kind == "mixed" and "-" in text and not _is_proper(text.partition("-")[2]):
            # 100-40/2 is a difference: only a proper fraction makes a dash part of a number.
            kind, text = "number", text.partition("-")[0]
            place = match.start(match.lastgroup or "") + len(text)
        found.append(_Token(kind, text))
    return found


def _is_proper(part: str) -> bool:
    upper, lower = part.split("/")
    return 0 < int(upper) < int(lower)


class _Reading:
    """One reading of a text, from left to right: sum, product, factor."""

    def __init__(self, tokens: list[_Token], default_unit: str) -> None:
        self._tokens = tokens
        self._next = 0
        self._default = default_unit

    def length(self) -> Mm:
        amount = self._in_default(self._sum())
        if self._next < len(self._tokens):
            raise _not_a_length(self._tokens[self._next].text)
        if amount.value < 0:
            raise _NotUnderstood("“{text}” is less than nothing; a length is zero or more.")
        return float(amount.value)

    def _sum(self) -> _Amount:
        total = self._product()
        while sign := self._take("sign", "+-"):
            term = self._product()
            total = self._added(total, term, -1 if sign == "-" else 1)
        return total

    def _product(self) -> _Amount:
        result = self._signed()
        while sign := self._take("sign", "*/"):
            factor = self._signed()
            result = _times(result, factor) if sign == "*" else _over(result, factor)
        return result

    def _signed(self) -> _Amount:
        if self._take("sign", "-"):
            value, unit = self._signed()
            return _Amount(-value, unit)
        return self._factor()

    def _factor(self) -> _Amount:
        if self._take("sign", "("):
            inner = self._sum()
            if not self._take("sign", ")"):
                raise _NotUnderstood("“{text}” opens a bracket that it does not close.")
            return self._with_unit(inner)
        amount = self._with_unit(_Amount(self._number()))
        return self._with_inches(amount) if amount.unit == "foot" else amount

    def _number(self) -> Fraction:
        if mixed := self._take("mixed"):
            whole, part = re.split(r"\s+|-", mixed)
            if not _is_proper(part):
                raise _not_a_length(mixed)
            return int(whole) + Fraction(part)
        if fraction := self._take("fraction"):
            upper, lower = (_Amount(Fraction(figure)) for figure in fraction.split("/"))
            return _over(upper, lower).value
        if number := self._take("number"):
            return Fraction(number.replace(",", "."))
        raise _not_a_length(self._peek().text)

    def _with_unit(self, amount: _Amount) -> _Amount:
        word = self._take("unit")
        if not word:
            return amount
        unit = _UNIT_WORDS.get("inch" if word == "''" else word.rstrip("."))
        if unit is None or amount.unit:
            raise _not_a_length(word)
        return _Amount(amount.value * _IN_MM[unit], unit)

    def _with_inches(self, feet: _Amount) -> _Amount:
        """Feet may be followed by inches, with or without the inch sign and a dash."""
        dashed = self._take("dash")
        if not dashed and self._peek().kind not in ("mixed", "fraction", "number"):
            return feet
        inches = self._with_unit(_Amount(self._number()))
        if inches.unit not in ("", "inch"):
            raise _NotUnderstood("“{text}” mixes feet with a unit other than inches.")
        value = inches.value if inches.unit else inches.value * _IN_MM["inch"]
        return _Amount(feet.value + value, "inch")

    def _added(self, one: _Amount, other: _Amount, sign: int) -> _Amount:
        if bool(one.unit) != bool(other.unit):
            named = one.unit or other.unit
            if named != self._default:
                raise _NotUnderstood(
                    "“{text}” gives a unit to one part of the sum and none to the other; "
                    "write the unit with each."
                )
            one, other = self._in_default(one), self._in_default(other)
        unit = one.unit if one.unit == other.unit else "several"
        return _Amount(one.value + sign * other.value, unit)

    def _in_default(self, amount: _Amount) -> _Amount:
        if amount.unit:
            return amount
        return _Amount(amount.value * _IN_MM[self._default], self._default)

    def _peek(self) -> _Token:
        return self._tokens[self._next] if self._next < len(self._tokens) else _Token("end", "")

    def _take(self, kind: str, texts: str = "") -> str:
        token = self._peek()
        if token.kind != kind or (texts and token.text not in texts):
            return ""
        self._next += 1
        return token.text


def _times(one: _Amount, other: _Amount) -> _Amount:
    if one.unit and other.unit:
        raise _NotUnderstood("“{text}” multiplies two lengths; that is an area, not a length.")
    return _Amount(one.value * other.value, one.unit or other.unit)


def _over(one: _Amount, other: _Amount) -> _Amount:
    if other.unit:
        raise _NotUnderstood("“{text}” divides by a length; divide by a plain number.")
    if not other.value:
        raise _NotUnderstood("“{text}” divides by zero.")
    return _Amount(one.value / other.value, one.unit)
