"""Mattress sizes against published charts, typed here as they are printed.

Sources: US and Canadian size charts of shops and makers (inches); a UK bed maker's guide quoting
the national bed federation, and a UK bed shop's table of standard sizes (mm, and feet and inches);
an encyclopaedia article on bed sizes (Continental Europe, Japan); an Australian marketplace's
mattress guide; EN 1334:1998 on tolerance, as quoted by a mattress maker.
"""

from __future__ import annotations

import pytest

from model.materials import mattress, mattresses

INCH = 25.4


@pytest.mark.parametrize(
    ("key", "width", "length"),
    [
        ("us_twin", 38, 75),
        ("us_twin_xl", 38, 80),
        ("us_full", 54, 75),
        ("us_queen", 60, 80),
        ("us_king", 76, 80),
        ("us_california_king", 72, 84),
        ("us_short_queen", 60, 75),
        ("us_olympic_queen", 66, 80),
    ],
)
def test_us_charts_print_in_inches(key: str, width: float, length: float) -> None:
    row = mattress(key)

    assert row.width_mm == pytest.approx(width * INCH)
    assert row.length_mm == pytest.approx(length * INCH)
    assert row.pieces == 1


@pytest.mark.parametrize(
    ("key", "width", "length"),
    [("us_split_queen", 30, 80), ("us_split_king", 38, 80), ("us_split_california_king", 36, 84)],
)
def test_us_split_sizes_are_those_of_each_piece(key: str, width: float, length: float) -> None:
    row = mattress(key)

    assert row.pieces == 2
    assert (row.width_mm, row.length_mm) == pytest.approx((width * INCH, length * INCH))


@pytest.mark.parametrize(
    ("key", "width", "length"),
    [
        ("uk_small_single", 750, 1900),
        ("uk_single", 900, 1900),
        ("uk_small_double", 1200, 1900),
        ("uk_double", 1350, 1900),
        ("uk_king", 1500, 2000),
        ("uk_super_king", 1800, 2000),
    ],
)
def test_uk_metric_labels(key: str, width: float, length: float) -> None:
    assert (mattress(key).width_mm, mattress(key).length_mm) == (width, length)


@pytest.mark.parametrize(
    ("key", "width", "length"),
    [
        ("uk_imperial_single", (3, 0), (6, 3)),
        ("uk_imperial_double", (4, 6), (6, 3)),
        ("uk_imperial_king", (5, 0), (6, 6)),
        ("uk_imperial_super_king", (6, 0), (6, 6)),
    ],
)
def test_uk_feet_and_inches(key: str, width: tuple[int, int], length: tuple[int, int]) -> None:
    across, along = ((feet * 12 + inches) * INCH for feet, inches in (width, length))

    assert (mattress(key).width_mm, mattress(key).length_mm) == pytest.approx((across, along))


@pytest.mark.parametrize("width", [80, 90, 100, 120, 140, 160, 180, 200])
def test_continental_sizes_are_two_metres_long(width: int) -> None:
    """A size's name there is its width in centimetres."""
    row = next(
        r for k, r in mattresses().items() if k.startswith("eu_") and k.endswith(f"_{width}")
    )

    assert (row.width_mm, row.length_mm) == (width * 10, 2000)


@pytest.mark.parametrize(
    ("key", "width", "length"),
    [
        ("au_single", 920, 1880),
        ("au_double", 1380, 1880),
        ("au_queen", 1530, 2030),
        ("au_king", 1830, 2030),
    ],
)
def test_australian_sizes(key: str, width: float, length: float) -> None:
    assert (mattress(key).width_mm, mattress(key).length_mm) == (width, length)


@pytest.mark.parametrize(("key", "width"), [("jp_single", 980), ("jp_double", 1400)])
def test_japanese_sizes_are_1950_long(key: str, width: float) -> None:
    assert (mattress(key).width_mm, mattress(key).length_mm) == (width, 1950)


def test_en_1334_allows_20_mm_about_the_label() -> None:
    for key, row in mattresses().items():
        if key.startswith(("uk_", "eu_")):
            assert row.tolerance_mm == 20
            assert "EN 1334" in row.tolerance_source


def test_where_no_tolerance_is_published_the_row_says_so() -> None:
    assert "no published tolerance was found" in mattress("us_queen").tolerance_source
    assert mattress("us_queen").tolerance_mm == pytest.approx(INCH / 2)


def test_no_crib_mattress_is_offered() -> None:
    """16 CFR 1219 makes a crib another thing than a bed; nobody shall fit one here."""
    assert not any("crib" in key for key in mattresses())
