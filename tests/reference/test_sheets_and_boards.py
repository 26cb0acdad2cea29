"""Sheets and boards against what mills and standards print.

Sources: a birch plywood mill's data sheet (EN 315); PS 1-19 performance categories, as printed by
a plywood association; ANSI A208.2 table 2, as printed in a buyers' guide; PS 20 dressed sizes, as
printed on an engineering page; hardwood thicknesses of trade pages after the association's rules.
"""

from __future__ import annotations

import pytest

from model.materials import lumber_size, sheet

INCH = 25.4


@pytest.mark.parametrize(
    ("key", "average", "least", "most", "density"),
    [
        ("birch_ply_6_5", 6.4, 6.1, 6.9, 670),
        ("birch_ply_9", 9.2, 8.8, 9.5, 710),
        ("birch_ply_12", 12.0, 11.5, 12.5, 695),
        ("birch_ply_18", 17.7, 17.1, 18.1, 685),
        ("birch_ply_21", 20.5, 20.0, 20.9, 680),
    ],
)
def test_birch_plywood_measures_what_the_mill_prints(
    key: str, average: float, least: float, most: float, density: float
) -> None:
    row = sheet(key)

    assert (row.actual_mm, row.least_mm, row.most_mm) == (average, least, most)
    assert row.density_kg_m3 == density


@pytest.mark.parametrize(
    ("key", "kg"), [("birch_ply_9", 19.0), ("birch_ply_12", 24.8), ("birch_ply_18", 36.7)]
)
def test_a_birch_sheet_weighs_what_the_mill_prints(key: str, kg: float) -> None:
    """Printed weights are nominal thickness times density."""
    row = sheet(key)
    length, width = row.sizes[0]

    weighed = length * width * row.nominal_mm * 1e-9 * row.density_kg_m3
    assert weighed == pytest.approx(kg, abs=0.1)


@pytest.mark.parametrize(
    ("key", "category"),
    [
        ("softwood_ply_15_32in", 15 / 32),
        ("softwood_ply_23_32in", 23 / 32),
        ("softwood_ply_3_4in", 3 / 4),
    ],
)
def test_ps_1_allows_a_32nd_about_the_category(key: str, category: float) -> None:
    row = sheet(key)

    assert row.nominal_mm == pytest.approx(category * INCH, abs=0.001)
    assert row.least_mm == pytest.approx((category - 1 / 32) * INCH, abs=0.01)
    assert row.most_mm == pytest.approx((category + 1 / 32) * INCH, abs=0.01)


@pytest.mark.parametrize("key", ["mdf_1_4in", "mdf_1_2in", "mdf_3_4in"])
def test_ansi_a208_2_allows_an_eighth_of_a_millimetre(key: str) -> None:
    row = sheet(key)

    assert row.most_mm - row.nominal_mm == pytest.approx(0.125, abs=0.001)
    assert row.nominal_mm - row.least_mm == pytest.approx(0.125, abs=0.001)


def test_three_quarter_mdf_weighs_100_pounds_a_sheet() -> None:
    """A woodworking magazine: 49 x 97 in, 3/4 in, 100 lb."""
    row = sheet("mdf_3_4in")
    length, width = row.sizes[0]

    assert length * width * row.nominal_mm * 1e-9 * row.density_kg_m3 == pytest.approx(
        45.4, abs=0.3
    )


@pytest.mark.parametrize(
    ("key", "inches"),
    [
        ("softwood_thickness_1_dry", 3 / 4),
        ("softwood_thickness_2_dry", 1.5),
        ("softwood_width_4_dry", 3.5),
        ("softwood_width_6_dry", 5.5),
        ("softwood_width_8_dry", 7.25),
        ("softwood_width_10_dry", 9.25),
        ("hardwood_thickness_4_4_rough", 1),
        ("hardwood_thickness_4_4_s2s", 13 / 16),
        ("hardwood_thickness_5_4_s2s", 17 / 16),
        ("hardwood_thickness_8_4_s2s", 1.75),
        ("hardwood_thickness_4_4_s4s", 3 / 4),
    ],
)
def test_boards_measure_what_the_standard_prints(key: str, inches: float) -> None:
    assert lumber_size(key).actual_mm == pytest.approx(inches * INCH, abs=0.001)
