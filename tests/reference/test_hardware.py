"""Slides, screws and connectors against pages of the trade.

Sources: a slide maker's help page (side space); Architectural Woodwork Standards 2009, appendix B
(load classes); the Wood Handbook 2021 (FPL-GTR-282), table 8-9 (screw shanks); a woodworking
article and common practice, no source (pocket screws); a boat-builders' chart (pilot holes).
"""

from __future__ import annotations

import pytest

from model.materials import connector, pocket_screw_for, slide, slides, wood_screw

INCH = 25.4
POUND = 0.45359237


def test_a_12_7_mm_slide_wants_12_9_to_13_2_mm() -> None:
    """A slide maker's help page: thickness + 0.2 to + 0.5 mm."""
    usual = [row for row in slides().values() if row.thickness_mm == 12.7]

    assert len(usual) == 6  # three travels, inch and metric
    for row in usual:
        assert row.side_space_low_mm == pytest.approx(12.9), row.key
        assert row.side_space_high_mm == pytest.approx(13.2), row.key


def test_the_heavier_series_wants_more_play() -> None:
    """The same page: thickness + 0.5 to + 0.9 mm."""
    row = slide("side_mount_full_heavy")

    assert (row.play_low_mm, row.play_high_mm) == (0.5, 0.9)


def test_an_opening_less_one_inch_leaves_no_play() -> None:
    """The rule of thumb binds: a box needs 25.8 to 26.4 mm less than its opening."""
    row = slide("side_mount_full")

    assert 2 * row.side_space_low_mm == pytest.approx(25.8)
    assert 2 * row.side_space_high_mm == pytest.approx(26.4)
    assert 2 * row.side_space_low_mm > INCH


@pytest.mark.parametrize(
    ("key", "pounds"), [("side_mount_three_quarter", 75), ("side_mount_full", 100)]
)
def test_load_classes_of_the_woodwork_standards(key: str, pounds: float) -> None:
    assert slide(key).load_kg == pytest.approx(pounds * POUND, abs=0.5)


def test_no_slide_claims_less_than_a_residential_load_but_the_centre_runner() -> None:
    weak = [key for key, row in slides().items() if row.load_kg < 50 * POUND]

    assert weak == ["centre_runner"]


@pytest.mark.parametrize(
    ("stock", "length"),
    [
        (1 / 2, 1), (5 / 8, 1), (3 / 4, 1.25), (7 / 8, 1.5), (1, 1.5), (1.125, 1.5),
        (1.25, 2), (1.375, 2), (1.5, 2.5), (1.75, 2.5),
    ],
)  # fmt: skip
def test_pocket_screws_follow_the_stock(stock: float, length: float) -> None:
    assert pocket_screw_for(stock * INCH) == pytest.approx(length * INCH)


@pytest.mark.parametrize(
    ("gauge", "shank"),
    [
        (4, 2.84), (5, 3.18), (6, 3.51), (7, 3.84), (8, 4.17),
        (9, 4.50), (10, 4.83), (12, 5.49), (14, 6.15),
    ],
)  # fmt: skip
def test_table_8_9_shank_of_a_wood_screw(gauge: int, shank: float) -> None:
    screw = wood_screw(gauge)

    assert screw.shank_mm == shank
    assert screw.root_mm == pytest.approx(shank * 2 / 3, abs=0.005)  # chapter 8: about two thirds


@pytest.mark.parametrize(
    ("gauge", "hardwood", "shank_hole", "counterbore"),
    [(6, 3 / 32, 9 / 64, 5 / 16), (8, 7 / 64, 11 / 64, 3 / 8), (10, 1 / 8, 3 / 16, 7 / 16)],
)
def test_holes_of_a_wood_screw(
    gauge: int, hardwood: float, shank_hole: float, counterbore: float
) -> None:
    screw = wood_screw(gauge)

    assert screw.pilot_hardwood_mm == pytest.approx(hardwood * INCH, abs=0.01)
    assert screw.shank_hole_mm == pytest.approx(shank_hole * INCH, abs=0.01)
    assert screw.counterbore_mm == pytest.approx(counterbore * INCH, abs=0.01)


def test_a_barrel_nut_of_5_16_in_asks_for_a_rail_of_1_1_2_in() -> None:
    """A magazine on bed building, 2007."""
    assert connector("cross_bolt_5_16").least_rail_thickness_mm == pytest.approx(1.5 * INCH)


def test_a_bed_bolt_sits_in_a_1_in_pocket_7_8_in_deep() -> None:
    """A builder's page and a published bed plan."""
    row = connector("bed_bolt_3_8")

    assert row.nut_diameter_mm == pytest.approx(INCH)
    assert row.nut_length_mm == pytest.approx(7 / 8 * INCH, abs=0.05)
