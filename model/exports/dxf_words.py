"""Words as DXF writes them: three signs have codes of their own, a few letters mean something."""

from __future__ import annotations

from fractions import Fraction

from model.drawings.dimensioning.told import Unit
from model.units import INCH, Mm

_STEPS_PER_INCH = 64
# The diameter sign, the degree and plus or minus by code: every font of every reader has them.
_SIGNS = {"⌀": "%%c", "Ø": "%%c", "°": "%%d", "±": "%%p"}


def line(words: str) -> str:
    """Words of a TEXT entity, which reads `%%` and `^` as the beginning of a code, and ends where
    a line does.
    """
    shown = "".join(each if each.isprintable() else " " for each in words)
    return _with_signs(shown.replace("%%", "%%%%%%").replace("^", "^ "))


def dimension_words(words: str) -> str:
    """Words of a DIMENSION entity, which reads braces, strokes and `<>` besides."""
    for sign in "\\{}":
        words = words.replace(sign, f"\\{sign}")
    return line(words.replace("<>", "< >"))


def override(words: str, size: Mm, unit: Unit) -> str:
    """What a dimension of ours is given to say: nothing where its own figures say it, `<>"` where
    they lack no more than the sign, else the words.
    """
    if words == printed(size, unit):
        return ""
    if unit == "inch" and words == printed(size, unit) + '"':
        return '<>"'  # by itself: the library writes no DIMPOST into files of this version
    return dimension_words(words)


def printed(size: Mm, unit: Unit) -> str:
    """The figures of our dimension style for a length, without a sign: `695.5`, `27 3/8`."""
    if unit == "mm":
        return f"{size:.2f}".rstrip("0").rstrip(".")
    steps = Fraction(round(size / INCH * _STEPS_PER_INCH), _STEPS_PER_INCH)
    whole, rest = divmod(steps, 1)
    return " ".join(str(each) for each in (whole, rest) if each) or "0"


def _with_signs(words: str) -> str:
    for sign, code in _SIGNS.items():
        words = words.replace(sign, code)
    return words
