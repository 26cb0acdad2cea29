"""Sizes as a drawing tells them: in a row they add up as printed."""

from __future__ import annotations

import random
from itertools import accumulate

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


def test_a_few_sizes_are_told_by_a_finer_step_where_that_helps() -> None:
    # a tenon of 5/16 in in 1 in: 8.7 + 7.9 + 8.7 would be 25.3
    assert Told("mm").row((8.73125, 7.9375, 8.73125)) == ("~8.73", "~7.94", "~8.73")


def test_the_largest_of_a_few_takes_what_rounding_leaves() -> None:
    # a tongue of 7 mm on a plank of 97: 9/32 + 3 35/64 would be 3 53/64, and 97 mm are 3 52/64
    assert Told("inch").row((90.0, 7.0)) == ('~3 17/32"', '~9/32"')


def test_many_sizes_that_rounding_would_break_are_told_by_a_finer_step() -> None:
    # to 0.1 mm each would be 16.7, in all 100.2; places at 16.67, 33.33, 50 ...
    sixths = ("~16.67", "~16.66", "~16.67", "~16.67", "~16.66", "~16.67")
    assert Told("mm").row((100 / 6,) * 6) == sixths


def test_a_row_without_its_sum_beside_it_keeps_the_usual_step() -> None:
    assert Told("mm").row((100 / 3,) * 3, is_closed=False) == ("~33.3", "~33.4", "~33.3")


@pytest.mark.parametrize(("unit", "step"), [("mm", 0.1), ("inch", 25.4 / 64)])
@pytest.mark.parametrize("is_closed", [True, False])
def test_any_row_adds_up_as_printed(unit: str, step: float, is_closed: bool) -> None:
    draw = random.Random(5)
    for _ in range(400):
        sizes = [draw.uniform(2, 400) for _ in range(draw.randint(1, 14))]
        told = Told(unit)  # type: ignore[arg-type]

        words = told.row(sizes, is_closed)

        total = read(told.size(sum(sizes)), unit)
        values = [read(each, unit) for each in words]
        assert sum(values) == pytest.approx(total, abs=1e-6)
        for word, value, size in zip(words, values, sizes, strict=True):
            assert word.startswith("~") or value == pytest.approx(size, abs=0.0006)
        piled = step * (2 if is_closed and len(sizes) <= 4 else 0.76)
        for place, true in zip(accumulate(values), accumulate(sizes), strict=True):
            assert place == pytest.approx(true, abs=piled)
