"""How sizes are told on a drawing: in the maker's unit, or in both, so that rows of them add up."""

from __future__ import annotations

import math
from collections.abc import Sequence
from fractions import Fraction
from functools import lru_cache
from itertools import accumulate, pairwise
from typing import Literal, NamedTuple

from model.units import INCH, Mm, show_bare, show_length

Unit = Literal["mm", "inch"]
OTHER: dict[Unit, Unit] = {"mm": "inch", "inch": "mm"}

# The steps that lengths are told by, and the finer one for rows that would not add up by them.
STEPS: dict[Unit, Mm] = {"mm": 0.1, "inch": INCH / 64}
FINER: dict[Unit, Mm] = {"mm": 0.01, "inch": INCH / 128}
FEW = 4  # sizes in a row
_TRUE: Mm = 0.0005  # as in show_length: a told size this near is the size itself


class Told(NamedTuple):
    """The unit of a drawing; with `has_both`, the other one stands behind it in brackets.

    A drawing in mm says so once and leaves the sign away; inches carry theirs.
    """

    unit: Unit
    has_both: bool = False

    def size(self, mm: Mm) -> str:
        """`695`, `27 3/8"`, `695 [~27 23/64"]`."""
        words = told_in(mm, self.unit)
        return f"{words} [{told_in(mm, OTHER[self.unit])}]" if self.has_both else words

    def row(self, sizes: Sequence[Mm], is_closed: bool = True) -> tuple[str, ...]:
        """Sizes that stand in one row: what is told of them adds up to what is told of their sum.

        Where plain rounding would not, a finer step is tried, and if that does not help either, the
        largest of a few takes the difference: a tongue or tenon has to fit, what is beside it less
        so. Of many each is told as the difference between two rounded places, so that no rounding
        piles up. A row that `is_closed` has its sum beside it; another keeps the usual step.
        """
        first = row_words(sizes, self.unit, is_closed)
        if not self.has_both:
            return first
        second = row_words(sizes, OTHER[self.unit], is_closed)
        return tuple(f"{a} [{b}]" for a, b in zip(first, second, strict=True))


@lru_cache(maxsize=4096)
def told_in(mm: Mm, unit: Unit) -> str:
    """A length in one unit, mm without the sign."""
    return show_bare(mm, "mm") if unit == "mm" else show_length(mm, "inch")


def row_words(sizes: Sequence[Mm], unit: Unit, is_closed: bool = True) -> tuple[str, ...]:
    """Words for sizes in a row, of which the sum is told as `told_in` tells it."""
    places = list(accumulate(sizes))
    total = shown_value(places[-1], unit)
    told = list(accumulate(shown_value(size, unit) for size in sizes))
    strays = max(abs(float(a) - b) for a, b in zip(told, places, strict=True))
    if told[-1] == total and strays <= 0.75 * STEPS[unit]:
        return tuple(told_in(size, unit) for size in sizes)
    if is_closed and len(sizes) <= FEW:
        fine = [_rounded(size, FINER[unit]) for size in sizes]
        spans = fine if sum(fine) == total else _largest_gives(sizes, total, unit)
    else:
        spans = _between_places(places, total, (FINER if is_closed else STEPS)[unit])
    return tuple(_said(float(told), size, unit) for told, size in zip(spans, sizes, strict=True))


def _largest_gives(sizes: Sequence[Mm], total: Fraction, unit: Unit) -> list[Fraction]:
    """Every size as it is told alone, but the largest."""
    spans = [shown_value(size, unit) for size in sizes]
    largest = max(range(len(sizes)), key=lambda k: sizes[k])
    spans[largest] += total - sum(spans)
    return spans


def _between_places(places: Sequence[Mm], total: Fraction, step: Mm) -> list[Fraction]:
    """From each rounded place to the next, the last as it is told."""
    rounded = [_rounded(place, step) for place in places]
    return [b - a for a, b in pairwise([Fraction(0), *rounded[:-1], total])]


def _said(told: Mm, size: Mm, unit: Unit) -> str:
    """A size told as another; with a `~` where it is not quite that."""
    about = "~" if abs(told - size) > _TRUE else ""
    return about + told_in(told, unit).removeprefix("~")


@lru_cache(maxsize=4096)
def shown_value(mm: Mm, unit: Unit) -> Fraction:
    """The length, exactly, that the words for it say, mm."""
    words = show_bare(mm, unit).removeprefix("~")
    value = sum((Fraction(part) for part in words.split()), Fraction(0))
    return value * Fraction(254, 10) if unit == "inch" else value


def _rounded(size: Mm, step: Mm) -> Fraction:
    whole = _exact(step)
    return whole * math.floor(Fraction(size) / whole + Fraction(1, 2))


def _exact(step: Mm) -> Fraction:
    """A step as the fraction it stands for."""
    inches = INCH / step
    if abs(inches - round(inches)) < 1e-9:
        return Fraction(254, 10) / round(inches)
    return Fraction(step).limit_denominator(1000)
