"""How a length is read as makers write it, small sums included.

Inches and fractions are counted as exact fractions on the way in, so that 27 3/8 in is 695.325 mm
and not a neighbour of it.
"""

from __future__ import annotations

import re
from fractions import Fraction
from typing import NamedTuple

from model.errors import BadInput
from model.units import UNIT_WORDS, Mm, unit_named

_IN_MM: dict[str, Fraction] = {
    "mm": Fraction(1),
    "cm": Fraction(10),
    "m": Fraction(1000),
    "inch": Fraction(254, 10),
    "foot": Fraction(3048, 10),
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
        return _Reading(_tokens(text), unit_named(default_unit)).length()
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
        unit = UNIT_WORDS.get("inch" if word == "''" else word.rstrip("."))
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
