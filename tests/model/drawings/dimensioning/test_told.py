"""Sizes as a drawing tells them: in a row they add up as printed."""

from __future__ import annotations

import random

import pytest

from model.drawings.dimensioning.told import Told
from model.read_length import parse_length


def read(words: str, unit: str) -> float:
    return parse_length(words.partition(" [")[0], unit)


def test_millimetres_carry_no_sign_and_inches_do() -> None:
    assert Told("mm").size(695.3) == "695.3"
    assert Told("inch").size(695.325) == '27 3/8"'


def test_both_units_stand_one_behind_the_other() -> None:
    assert Told("mm", has_both=True).size(25.4) == '25.4 [1"]'
    assert Told("inch", has_both=True).size(25.4) == '1" [25.4]'


def test_a_row_whose_rounded_sizes_add_up_is_told_plainly() -> None:
    # 3/8 + 1/4 + 3/8 = 1 in; the groove of 6.2 mm is 0.244 in
    assert Told("inch").row((9.6, 6.2, 9.6)) == ('~3/8"', '~1/4"', '~3/8"')


def test_a_row_that_rounding_would_break_is_told_by_a_finer_step() -> None:
    # three of 8.25 mm: to 0.1 mm each would be 8.3, which is 24.9 and not 24.75
    assert Told("mm").row((8.254, 8.248, 8.248)) == ("~8.25", "~8.25", "~8.25")


@pytest.mark.parametrize("unit", ["mm", "inch"])
def test_any_row_adds_up_as_printed(unit: str) -> None:
    draw = random.Random(5)
    for _ in range(400):
        sizes = [draw.uniform(2, 400) for _ in range(draw.randint(1, 9))]
        told = Told(unit)  # type: ignore[arg-type]

        words = told.row(sizes)

        total = read(told.size(sum(sizes)), unit)
        assert sum(read(each, unit) for each in words) == pytest.approx(total, abs=1e-6)
        for each, size in zip(words, sizes, strict=True):
            # within two of the finest steps, 1/128 in: one rounding, and one shared step
            assert read(each, unit) == pytest.approx(size, abs=25.4 / 64)
            assert each.startswith("~") or read(each, unit) == pytest.approx(size, abs=0.0006)
