"""A rule's formula is shown as the maker reads it: what it returns, in the names of its needs."""

# The functions below are read as text, never called: what they return need not make sense.
from __future__ import annotations

import re
from typing import Any

from model.book import open_book
from model.errors import CannotBuild
from model.formula import formula_of
from model.units import Count, Mm, ShopGrid


def test_a_one_line_rule_is_its_own_formula() -> None:
    def slat_pitch(slat_width: float, slat_spacer: float) -> float:
        """From one slat to the next."""
        return slat_width + slat_spacer

    assert formula_of(slat_pitch) == "slat_width + slat_spacer"


def test_names_inside_a_rule_give_way_to_what_they_stand_for() -> None:
    def wall(rail: float, groove: float) -> float:
        """What the groove leaves."""
        left = rail - groove
        half = left / 2
        return 3 * half

    assert formula_of(wall) == "3 * ((rail - groove) / 2)"


def test_brackets_keep_a_substituted_sum_together() -> None:
    def share(run: float, a: float, b: float) -> float:
        """A share of the run."""
        parts = a + b
        return run / parts

    formula = formula_of(share)

    assert formula is not None
    assert eval(formula, {"run": 12.0, "a": 2.0, "b": 4.0}) == share(12.0, 2.0, 4.0) == 2.0


def test_refusals_are_left_out() -> None:
    def wall(rail: float, groove: float) -> float:
        """What the groove leaves."""
        left = rail - groove
        if left < 6:
            raise CannotBuild("rail", "Too little wood.")
        return left

    assert formula_of(wall) == "rail - groove"


def test_cases_are_told_as_cases() -> None:
    def rail_top(is_fixed: bool, rail_height: float, opening: float, rails: float) -> float:
        """One of two heights."""
        if is_fixed:
            return rail_height
        return opening + rails

    assert formula_of(rail_top) == "rail_height if is_fixed else opening + rails"


def test_a_second_case_follows_the_first() -> None:
    def height(by: str, a: float, b: float, c: float) -> float:
        """One of three heights."""
        if by == "a":
            return a
        if by == "b":
            return b
        return c

    formula = formula_of(height)

    assert formula is not None
    sizes = {"a": 1.0, "b": 2.0, "c": 3.0}
    assert [eval(formula, sizes | {"by": by}) for by in "abx"] == [1.0, 2.0, 3.0]


def test_a_name_given_twice_stands_for_its_last_value() -> None:
    def width(stock: float) -> float:
        """Twice, then less one."""
        size = 2 * stock
        size = size - 1
        return size

    assert formula_of(width) == "2 * stock - 1"


def test_a_rule_with_a_loop_is_no_formula() -> None:
    def total(spots: tuple[float, ...]) -> float:
        """A sum by hand."""
        found = 0.0
        for spot in spots:
            found += spot
        return found

    assert formula_of(total) is None


def test_a_rule_with_cases_that_end_nowhere_is_no_formula() -> None:
    def size(is_fixed: bool, a: float) -> Any:
        """A size, or nothing."""
        if is_fixed:
            return a

    assert formula_of(size) is None


def test_the_docstring_is_no_part_of_the_formula() -> None:
    def size(stock: float) -> float:
        """A size.

        Source: a maker's notebook
        """
        return stock

    assert formula_of(size) == "stock"


def _halved(size: float, grid: ShopGrid) -> float:
    if size < 0:
        raise ValueError
    if size == 0:
        return 0.0
    half = size / 2
    return grid.down(half)


def test_a_helper_of_the_same_file_is_written_out() -> None:
    """The maker who asks why cannot look up `_halved`."""

    def reveal(post_width: Mm, frame_thickness: Mm, grid: ShopGrid) -> Mm:
        """Rails stand in the middle."""
        return _halved(post_width - frame_thickness, grid)

    assert formula_of(reveal) == (
        "0.0 if post_width - frame_thickness == 0 "
        "else grid.down((post_width - frame_thickness) / 2)"
    )


def test_no_formula_of_the_bed_hides_behind_a_private_name() -> None:
    book = open_book()
    shown = {n: book.formula(n) or "" for n in book.rules if book.kinds[n] in (Mm, Count)}

    assert {n: text for n, text in shown.items() if re.search(r"(?<![\w.])_[a-z]", text)} == {}
