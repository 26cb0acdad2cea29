"""Lengths are read, shown and rounded without losing or hiding anything.

Expected values come from `fractions` and from Pint's own definitions of inch and foot.
"""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from model.errors import BadInput
from model.units import GRIDS, ShopGrid, parse_length, show_bare, show_length

_PINT: pint.UnitRegistry[Fraction] = pint.UnitRegistry(non_int_type=Fraction)

grids = st.sampled_from(sorted(GRIDS)).map(GRIDS.__getitem__)
lengths = st.floats(min_value=0, max_value=5000, allow_nan=False)
denominators = st.sampled_from((2, 4, 8, 16, 32, 64))


def in_mm(amount: Fraction | int, unit: str) -> float:
    return float(_PINT.Quantity(Fraction(amount), unit).to("mm").magnitude)


# ---------------------------------------------------------------- reading


@pytest.mark.parametrize(
    ("text", "inches"),
    [
        ("27 3/8", Fraction(219, 8)),
        ('27 3/8"', Fraction(219, 8)),
        ('27-3/8"', Fraction(219, 8)),
        ("27⅜″", Fraction(219, 8)),
        ("27 3⁄8 in", Fraction(219, 8)),
        ("27.375in", Fraction(219, 8)),
        ("27,375 inches", Fraction(219, 8)),
        ("2' 3 3/8\"", Fraction(219, 8)),
        ("2'-3 3/8\"", Fraction(219, 8)),
        ("2′ 3⅜″", Fraction(219, 8)),
        ("2 ft 3 3/8 in", Fraction(219, 8)),
        ("2’3", Fraction(27)),
        ("2'½\"", Fraction(49, 2)),
        ("2'-½\"", Fraction(49, 2)),
        ('1/2"', Fraction(1, 2)),
        (".5", Fraction(1, 2)),
        ('~27 3/8"', Fraction(219, 8)),
        ("6'", Fraction(72)),
        ("2'6''", Fraction(30)),
    ],
)
def test_inches_are_read_as_makers_write_them(text: str, inches: Fraction) -> None:
    assert parse_length(text, "inch") == in_mm(inches, "inch")


@pytest.mark.parametrize(
    ("text", "mm"),
    [("695 mm", 695), ("69.5cm", 695), ("69,5 cm", 695), ("0.695 m", 695), ("695", 695), ("0", 0)],
)
def test_metric_lengths_are_read_with_either_decimal_mark(text: str, mm: float) -> None:
    assert parse_length(text) == mm


@pytest.mark.parametrize(
    ("text", "unit", "mm"),
    [
        ("60 + 1/2", "inch", 60.5 * 25.4),
        ("2*19+3", "mm", 41),
        ("2 × 19 + 3", "mm", 41),
        ("(60 + 1/2) * 2", "inch", 121 * 25.4),
        ("100 - 40/2", "mm", 80),
        ("100-40/2", "mm", 80),
        ("3/4-1/8", "inch", 0.625 * 25.4),
        ("27 - 3/8", "inch", 26.625 * 25.4),
        ("10-2-1/2", "inch", 7.5 * 25.4),
        ("1/2/2", "inch", 0.25 * 25.4),
        ('60" + 3 mm', "mm", 1527),
        ('60 + 1/2"', "inch", 60.5 * 25.4),
        ("(10 + 2) cm", "mm", 120),
        ("3 * 2' 1\"", "mm", 75 * 25.4),
        ("-3 + 5", "mm", 2),
    ],
)
def test_small_sums_are_worked_out(text: str, unit: str, mm: float) -> None:
    assert parse_length(text, unit) == pytest.approx(mm, abs=1e-9)


@pytest.mark.parametrize(
    ("text", "why"),
    [
        ("", "No length is given"),
        ("   ", "No length is given"),
        ("wide", "not understood"),
        ("nan", "not understood"),
        ("inf", "not understood"),
        ("1e5", "not understood"),
        ("1.234,5", "not understood"),
        ("5 6", "not understood"),
        ("27 11/8", "not understood"),
        ("½½", "not understood"),
        ("3 mm mm", "not understood"),
        ("2*", "not understood"),
        ("{x}", "not understood"),
        ("__import__('os')", "not understood"),
        ("(3", "does not close"),
        ("-5", "less than nothing"),
        ("3 - 5", "less than nothing"),
        ("1/0", "divides by zero"),
        ("3 / (2 - 2)", "divides by zero"),
        ("2 in * 3 in", "an area"),
        ("8 / 2 in", "divides by a length"),
        ("2' 3 mm", "mixes feet"),
        ("9" * 100, "too long"),
        ("(" * 70, "not understood"),
    ],
)
def test_what_is_no_length_is_refused_with_a_sentence(text: str, why: str) -> None:
    with pytest.raises(BadInput) as refused:
        parse_length(text, field="mattress_width")

    assert why in str(refused.value)
    assert str(refused.value).endswith(".")
    assert refused.value.field == "mattress_width"


@pytest.mark.parametrize(("text", "unit"), [('60" + 1/2', "mm"), ("1524 + 2 cm", "mm")])
def test_a_sum_that_can_be_meant_in_two_units_is_refused(text: str, unit: str) -> None:
    """Half an inch and half a millimetre look alike until the mattress does not fit."""
    with pytest.raises(BadInput, match="write the unit with each"):
        parse_length(text, unit)


@given(st.text(max_size=100))
def test_any_text_is_a_length_or_a_sentence(text: str) -> None:
    try:
        assert parse_length(text) >= 0
    except BadInput as refused:
        assert str(refused).endswith(".")


@given(st.integers(0, 200), st.integers(1, 63), denominators)
def test_mixed_numbers_are_exact(whole: int, upper: int, lower: int) -> None:
    upper = upper % lower or 1

    read = parse_length(f"{whole} {upper}/{lower}", "inch")

    assert read == in_mm(whole + Fraction(upper, lower), "inch")


@given(st.integers(0, 12), st.integers(0, 11), st.integers(1, 15))
def test_feet_and_inches_add_up(feet: int, inches: int, sixteenths: int) -> None:
    read = parse_length(f"{feet}' {inches} {sixteenths}/16\"")

    part = inches + Fraction(sixteenths, 16)
    assert read == pytest.approx(in_mm(feet, "foot") + in_mm(part, "inch"), abs=1e-9)


@given(
    st.decimals(min_value=0, max_value=3000, places=3),
    st.sampled_from(("mm", "cm", "m", "in", "ft")),
    st.sampled_from(".,"),
)
def test_decimals_agree_with_pint(value: Decimal, unit: str, mark: str) -> None:
    text = f"{value:f}".replace(".", mark) + f" {unit}"

    assert parse_length(text) == in_mm(Fraction(value), unit)


# ---------------------------------------------------------------- showing


@pytest.mark.parametrize(
    ("mm", "unit", "shown"),
    [
        (695, "mm", "695 mm"),
        (695.3, "mm", "695.3 mm"),
        (19.05, "mm", "19.05 mm"),
        (695.325, "mm", "~695.3 mm"),
        (0, "mm", "0 mm"),
        (-3, "mm", "-3 mm"),
        (27.375 * 25.4, "inch", '27 3/8"'),
        (0.5 * 25.4, "inch", '1/2"'),
        (27 * 25.4, "inch", '27"'),
        (-0.125 * 25.4, "inch", '-1/8"'),
        (695, "inch", '~27 23/64"'),
        ((20 + 5 / 128) * 25.4, "inch", '20 5/128"'),
        (0.01, "inch", '~0"'),
    ],
)
def test_lengths_are_shown_as_a_tape_reads(mm: float, unit: str, shown: str) -> None:
    assert show_length(mm, unit) == shown


def test_a_coarser_step_says_that_it_rounds() -> None:
    assert show_length(27.375 * 25.4, "inch", 25.4 / 4) == '~27 1/2"'
    assert show_length(27.25 * 25.4, "inch", 25.4 / 4) == '27 1/4"'
    assert show_length(695.3, "mm", 1) == "~695 mm"


def test_a_table_cell_leaves_the_unit_to_its_heading() -> None:
    assert show_bare(27.375 * 25.4, "inch") == "27 3/8"
    assert show_bare(695.3, "mm") == "695.3"


def test_an_unknown_unit_is_refused() -> None:
    with pytest.raises(BadInput, match="neither"):
        show_length(1, "cubit")


@given(lengths, st.sampled_from(("mm", "inch")))
def test_what_is_shown_can_be_typed_in_again(mm: float, unit: str) -> None:
    half_step = (25.4 / 64 if unit == "inch" else 0.1) / 2

    shown = show_length(mm, unit)

    assert abs(parse_length(shown) - mm) <= half_step + 1e-6  # one rounding to the shown step
    assert parse_length(show_bare(mm, unit), unit) == parse_length(shown)


@given(lengths, st.sampled_from(("mm", "inch")))
def test_a_size_without_a_tilde_is_true(mm: float, unit: str) -> None:
    shown = show_length(mm, unit)

    if not shown.startswith("~"):
        assert abs(parse_length(shown) - mm) <= 0.0005 + 1e-9  # half a micron counts as true


# ---------------------------------------------------------------- the shop grid


@given(grids, lengths)
def test_down_near_and_up_are_in_order_and_within_a_step(grid: ShopGrid, size: float) -> None:
    down, near, up = grid.down(size), grid.near(size), grid.up(size)

    assert down <= near <= up
    assert down - 2e-6 <= size <= up + 2e-6
    assert up - down <= grid.step + 2e-6
    assert abs(near - size) <= grid.step / 2 + 2e-6


@given(grids, st.integers(-5000, 5000))
def test_a_size_on_the_grid_stays(grid: ShopGrid, steps: int) -> None:
    size = grid.near(steps * grid.step)

    assert grid.down(size) == grid.near(size) == grid.up(size) == size
    assert grid.holds(size)


@given(grids, st.integers(1, 3000), st.integers(1, 12))
def test_sums_of_grid_sizes_stay_on_the_grid(grid: ShopGrid, steps: int, count: int) -> None:
    """Floating-point dust must not push a column of dimensions to the next step."""
    size = grid.near(steps * grid.step)

    assert grid.down(sum([size] * count)) == pytest.approx(steps * count * grid.step, abs=1e-6)


def test_half_way_goes_up() -> None:
    assert GRIDS["1 mm"].near(10.5) == 11
    assert GRIDS["1/16 in"].near(25.4 / 32) == pytest.approx(25.4 / 16)


def test_grids_are_named_as_makers_say_them() -> None:
    assert {name: grid.name for name, grid in GRIDS.items()} == {name: name for name in GRIDS}
    assert ShopGrid(25.4 / 128, "inch").name == "1/128 in"


def test_finer_steps_follow_the_unit() -> None:
    assert [g.name for g in GRIDS["1/16 in"].finer()] == [
        "1/16 in",
        "1/32 in",
        "1/64 in",
        "1/128 in",
    ]
    assert [g.name for g in GRIDS["1 mm"].finer()] == ["1 mm", "0.5 mm", "0.1 mm"]
    assert [g.name for g in GRIDS["0.5 mm"].finer()] == ["0.5 mm", "0.1 mm"]


@pytest.mark.parametrize(
    ("grid", "low", "high", "size", "step"),
    [
        ("1 mm", 100.6, 101.2, 101, "1 mm"),
        ("1 mm", 100.2, 100.8, 100.5, "0.5 mm"),
        ("1 mm", 100.55, 100.75, 100.7, "0.1 mm"),
        ("1/16 in", 25.4, 26.0, 25.4, "1/16 in"),
        ("1/16 in", 26.1, 26.3, 26.19375, "1/32 in"),
        ("1/16 in", 26.5, 26.7, 26.590625, "1/64 in"),
    ],
)
def test_a_tolerance_is_met_on_the_coarsest_step_inside_it(
    grid: str, low: float, high: float, size: float, step: str
) -> None:
    landing = GRIDS[grid].within(low, high)

    assert landing.size == pytest.approx(size, abs=1e-6)
    assert landing.grid.name == step


@given(grids, lengths)
def test_a_slides_play_is_always_met(grid: ShopGrid, low: float) -> None:
    """0.6 mm in all is the play of a side-mount slide: a 1/64 in step always lands in it."""
    landing = grid.within(low, low + 0.6)

    assert low - 1e-6 <= landing.size <= low + 0.6 + 1e-6
    assert landing.grid.holds(landing.size)
    coarser = [g for g in grid.finer() if g.step > landing.grid.step]
    assert not any(low < g.up(low) < low + 0.6 for g in coarser)


def test_a_tolerance_finer_than_any_step_is_refused() -> None:
    with pytest.raises(BadInput, match="wider tolerance"):
        GRIDS["1 mm"].within(100.01, 100.02)
