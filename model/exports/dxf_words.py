"""Words as DXF writes them: three signs have codes of their own, a few letters mean something."""

from __future__ import annotations

from fractions import Fraction

from model.drawings.dimensioning.told import Unit
from model.units import INCH, Mm

_STEPS_PER_INCH = 64
# The diameter sign, the degree and plus or minus by code: every font of every reader has them.
_SIGNS = {"⌀": "%%c", "Ø": "%%c", "°": "%%d", "±": "%%p"}


def line(words: str) -> str:
    """Words of a TEXT entity, which reads `%%` and `^` as the beginning of a code."""
    plain = words.replace("%%", "%%%%%%").replace("^", "^ ")
    return _with_signs(plain)


def dimension_words(words: str) -> str:
    """Words of a DIMENSION entity, which reads braces, strokes and `<>` besides."""
    for sign in "\\{}":
        words = words.replace(sign, f"\\{sign}")
    return line(words.replace("<>", "< >"))


def printed(size: Mm, unit: Unit) -> str:
    """What our dimension style prints for a length by itself: `695.5`, `27 3/8"`."""
    if unit == "mm":
        return f"{size:.2f}".rstrip("0").rstrip(".")
    steps = Fraction(round(size / INCH * _STEPS_PER_INCH), _STEPS_PER_INCH)
    whole, rest = divmod(steps, 1)
    told = [str(whole)] if whole or not rest else []
    return " ".join([*told, str(rest)] if rest else told) + '"'


def _with_signs(words: str) -> str:
    for sign, code in _SIGNS.items():
        words = words.replace(sign, code)
    return words
