"""Random-width lumber: board feet, racks as they might come, and how often a quantity suffices."""

from dataclasses import replace

import pytest

from model.cutting.plan import plan
from model.cutting.racks import (
    FOOT,
    RackOdds,
    Recipe,
    board_feet,
    longest_clear,
    rack_odds,
    sample_rack,
    wilson,
)
from model.cutting.record import Effort, Piece, Task
from model.units import INCH

FAS = Recipe(clear_share=5 / 6)
PIECES = (
    Piece(mark="R", length=1990.0, width=150.0, quantity=2),
    Piece(mark="S", length=1025.0, width=78.0, quantity=14),
    Piece(mark="B", length=425.0, width=63.0, quantity=20),
)
TASK = Task(kind="boards", pieces=PIECES, stock=(), kerf=3.2)
NET = 2 * 1990 * 150 + 14 * 1025 * 78 + 20 * 425 * 63


@pytest.mark.parametrize(
    ("thickness", "width", "feet", "expected"),
    [(1, 12, 1, 1.0), (2, 4, 16, 32 / 3), (2, 8, 12, 16.0), (1.25, 8, 12, 10.0)],
)
def test_board_feet_are_thickness_by_width_by_feet_over_twelve(
    thickness: float, width: float, feet: float, expected: float
) -> None:
    """The rule of the trade, T (in) x W (in) x L (ft) / 12.

    Source: American Softwood Lumber Standard PS 20, board measure; the 2 x 4 of 16 ft with its
    10 2/3 board feet is the usual printed example (both from memory).
    """
    assert board_feet(width * INCH * feet * FOOT, thickness * INCH) == pytest.approx(expected)


def test_less_than_an_inch_is_billed_as_an_inch() -> None:
    """Common practice, no source."""
    assert board_feet(144 * INCH**2, 0.75 * INCH) == pytest.approx(1.0)


@pytest.mark.parametrize(
    ("fitting", "tried", "low", "high"),
    [(81, 263, 0.2553, 0.3662), (15, 148, 0.0624, 0.1605), (0, 20, 0.0, 0.1611)],
)
def test_the_interval_of_a_share_is_the_published_one(
    fitting: int, tried: int, low: float, high: float
) -> None:
    """Source: Newcombe, Two-sided confidence intervals for the single proportion, Statistics in
    Medicine 17, 1998, table I, score method at 95 % (from memory).
    """
    assert wilson(fitting, tried, 0.95) == pytest.approx((low, high), abs=5e-5)


@pytest.mark.parametrize("clear", [1.0, 5 / 6, 2 / 3, 0.5])
def test_every_board_is_clear_by_the_share_of_its_grade(clear: float) -> None:
    for each in sample_rack(replace(FAS, clear_share=clear), 20e6, seed=3):
        bad = sum(span.x1 - span.x0 for span in each.bad)
        assert 1 - bad / each.length == pytest.approx(clear, abs=1e-3)  # spans under 0.05 mm
        assert all((span.y0, span.y1) == (0.0, each.width) for span in each.bad)
        assert each.is_assumed and each.quantity == 1


def test_boards_are_as_wide_and_long_as_the_recipe_says() -> None:
    rack = sample_rack(Recipe(), 200e6, seed=1)
    widths = [each.width for each in rack]

    assert min(widths) >= 4 * INCH and max(widths) <= 10 * INCH
    # The mean of a triangular distribution is that of its three corners; the standard error of
    # some 400 boards is about 1.6 mm.
    assert sum(widths) / len(widths) == pytest.approx((4 + 6.5 + 10) / 3 * INCH, abs=5)
    lengths = sorted({each.length / FOOT for each in rack})
    assert lengths == pytest.approx([6, 7, 8, 9, 10, 11, 12])


def test_clear_stretches_are_no_shorter_than_the_recipe_says() -> None:
    for each in sample_rack(FAS, 40e6, seed=2):
        inner = list(zip(each.bad, each.bad[1:], strict=False))
        assert all(after.x0 - before.x1 >= FAS.least_clear - 1e-2 for before, after in inner)


def test_a_larger_rack_of_one_seed_begins_alike() -> None:
    small, large = sample_rack(FAS, 3e6, seed=5), sample_rack(FAS, 6e6, seed=5)

    assert large[: len(small)] == small
    assert sum(each.length * each.width for each in small) >= 3e6


def test_the_quantity_to_ask_for_holds_the_list_in_that_share_of_racks() -> None:
    told: list[RackOdds] = []

    odds = rack_odds(TASK, FAS, Effort(racks=6), told.append)

    half, most = odds.area(0.5), odds.area(0.9)
    assert half is not None and most is not None
    assert odds.net == pytest.approx(NET)
    assert odds.least == pytest.approx(NET / FAS.clear_share)
    assert odds.least < half <= most
    assert (odds.fitting(half), odds.fitting(most)) == (3, 6)
    assert odds.interval(most) == pytest.approx((6 / (6 + 1.6449**2), 1.0), abs=1e-4)
    assert [each.racks for each in told] == [0, 1, 2, 3, 4, 5, 6]
    assert odds.board_feet(0.5) == pytest.approx(half / (144 * INCH**2))


def test_a_rack_that_was_called_too_small_cannot_be_cut_and_a_little_more_can() -> None:
    """The least boards less one hold the list in no plan; with two more a whole plan is found."""
    (enough,) = rack_odds(TASK, FAS, Effort(racks=1)).enough
    rack = sample_rack(FAS, enough - 1, seed=1)
    more = sample_rack(FAS, 2 * enough, seed=1)[: len(rack) + 2]
    quick = Effort(tries=12, moves=0, nodes=40)

    assert plan(replace(TASK, stock=rack[:-1]), quick).left_out != ()
    assert plan(replace(TASK, stock=more), quick).left_out == ()


def test_long_parts_need_boards_that_are_long_enough() -> None:
    """1990 mm and two trims of 25 need 7 ft (2134 mm) of clear boards; two rails of 150 side by
    side are wider than any board of 10 in.
    """
    (needed,) = rack_odds(TASK, Recipe(), Effort(racks=0)).needed

    assert needed.length == pytest.approx(7 * FOOT)
    assert (needed.width, needed.boards, needed.marks) == (150.0, 2, ("R",))


def test_a_part_longer_than_any_board_is_left_out_with_a_sentence() -> None:
    long = replace(TASK, pieces=(*PIECES, Piece(mark="L", length=4000.0, width=90.0)))

    odds = rack_odds(long, FAS, Effort(racks=0))

    assert [left.mark for left in odds.left_out] == ["L"]
    assert f"{longest_clear(FAS):.0f}" in odds.left_out[0].sentence
    assert odds.net == pytest.approx(NET)


def test_the_same_question_has_the_same_answer_and_stops_when_told() -> None:
    assert rack_odds(TASK, FAS, Effort(racks=2)) == rack_odds(TASK, FAS, Effort(racks=2))
    assert rack_odds(TASK, FAS, Effort(racks=2), stop=lambda: True).racks == 0
