"""Lengths are read as makers write them, exactly; what is no length is refused in a sentence.

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
from model.read_length import parse_length

_PINT: pint.UnitRegistry[Fraction] = pint.UnitRegistry(non_int_type=Fraction)

denominators = st.sampled_from((2, 4, 8, 16, 32, 64))


def in_mm(amount: Fraction | int, unit: str) -> float:
    return float(_PINT.Quantity(Fraction(amount), unit).to("mm").magnitude)


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
