"""How sizes are told on a drawing: in the maker's unit, or in both, so that rows of them add up."""

from __future__ import annotations

import math
from collections.abc import Sequence
from fractions import Fraction
from functools import lru_cache
from typing import Literal, NamedTuple

from model.units import INCH, Mm, show_bare, show_length

Unit = Literal["mm", "inch"]
OTHER: dict[Unit, Unit] = {"mm": "inch", "inch": "mm"}

# Steps that a row is told by, coarsest first: show_length's own, then the finer ones it allows.
STEPS: dict[Unit, tuple[Mm, ...]] = {
    "mm": (0.1, 0.01),
    "inch": (INCH / 64, INCH / 128),
}
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

    def row(self, sizes: Sequence[Mm]) -> tuple[str, ...]:
        """Sizes that stand in one row: what is told of them adds up to what is told of their sum.

        Where plain rounding would break the sum they are told by a finer step; where none helps,
        the step that is over goes to the size that it is nearest to.
        """
        first = row_words(sizes, self.unit)
        if not self.has_both:
            return first
        second = row_words(sizes, OTHER[self.unit])
        return tuple(f"{a} [{b}]" for a, b in zip(first, second, strict=True))


@lru_cache(maxsize=4096)
def told_in(mm: Mm, unit: Unit) -> str:
    """A length in one unit, mm without the sign."""
    return show_bare(mm, "mm") if unit == "mm" else show_length(mm, "inch")


def row_words(sizes: Sequence[Mm], unit: Unit) -> tuple[str, ...]:
    """Words for sizes in a row, of which the sum is told as `told_in` tells it."""
    total = shown_value(sum(sizes), unit)
    values = [shown_value(size, unit) for size in sizes]
    if sum(values) == total:
        return tuple(told_in(size, unit) for size in sizes)
    for step in STEPS[unit]:
        counts = [_count(size, step) for size in sizes]
        if sum(counts) * _exact(step) == total:
            return _said(sizes, counts, step, unit)
    step = STEPS[unit][-1]
    return _said(sizes, _shared(sizes, total, step), step, unit)


@lru_cache(maxsize=4096)
def shown_value(mm: Mm, unit: Unit) -> Fraction:
    """The length, exactly, that the words for it say, mm."""
    words = show_bare(mm, unit).removeprefix("~")
    value = sum((Fraction(part) for part in words.split()), Fraction(0))
    return value * Fraction(254, 10) if unit == "inch" else value


def _said(sizes: Sequence[Mm], counts: Sequence[int], step: Mm, unit: Unit) -> tuple[str, ...]:
    """Whole steps as words; a `~` where they are not the size itself."""
    words = []
    for size, count in zip(sizes, counts, strict=True):
        about = "~" if abs(count * step - size) > _TRUE else ""
        words.append(about + told_in(count * step, unit).removeprefix("~"))
    return tuple(words)


def _shared(sizes: Sequence[Mm], total: Fraction, step: Mm) -> list[int]:
    """Whole steps that add up to the total: rounded down, what is left over to all of them alike,
    and the rest of it to the largest remainders.
    """
    counts = [math.floor(size / step + 1e-9) for size in sizes]
    over = round(total / _exact(step)) - sum(counts)
    each, rest = divmod(over, len(counts))
    by_rest = sorted(range(len(sizes)), key=lambda k: (counts[k] * step - sizes[k], k))
    for place, k in enumerate(by_rest):
        counts[k] += each + (place < rest)
    return counts


def _count(size: Mm, step: Mm) -> int:
    return math.floor(size / step + 0.5)


def _exact(step: Mm) -> Fraction:
    """A step as the fraction it stands for."""
    inches = INCH / step
    if abs(inches - round(inches)) < 1e-9:
        return Fraction(254, 10) / round(inches)
    return Fraction(step).limit_denominator(1000)
