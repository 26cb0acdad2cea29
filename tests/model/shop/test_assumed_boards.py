"""Boards drawn at random stand for a yard's pile until real ones are typed in."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from model.bed import Bed
from model.cutting.plan import first_plan
from model.cutting.record import Piece, Task
from model.materials.lumber_grade import lumber_grades
from model.shop.assumed_boards import (
    Asked,
    asked_for,
    assumed_boards,
    longest_asked,
    recipe_of,
    seldom,
    strips,
    usual,
)
from model.shop.tasks import tasks
from model.stock.rows import Board, StockRows

Beds = Callable[..., Bed]
FOOT = 304.8


def task(*pieces: Piece, kerf: float = 3.0) -> Task:
    return Task(kind="boards", pieces=pieces, stock=(), kerf=kerf, name="oak-25.4")


def test_grades_promise_what_the_rules_print() -> None:
    """NHLA: 83 1/3, 66 2/3 and 50 % of clear cuttings on the poorer face, as a trade article has
    it.
    """
    shares = {key: grade.clear_share for key, grade in lumber_grades().items()}

    assert shares["fas"] == pytest.approx(10 / 12)
    assert shares["no_1_common"] == pytest.approx(8 / 12)
    assert shares["no_2a_common"] == pytest.approx(6 / 12)


def test_the_makers_yard_is_drawn_from(oak_bed: Beds) -> None:
    bed = oak_bed(
        yard_narrowest=80.0, yard_usual_width=120.0, yard_widest=300.0, yard_shortest=1200.0,
        yard_longest=3000.0, lumber_grade="no_1_common", board_end_trim=40.0,
    )  # fmt: skip

    found = recipe_of(bed.design, 31.75)

    assert (found.narrowest, found.usual, found.widest) == (80, 120, 300)
    assert (found.shortest, found.longest, found.end_trim) == (1200, 3000, 40)
    assert (found.clear_share, found.least_clear) == (pytest.approx(2 / 3), 609.6)


def test_widths_in_the_wrong_order_are_put_in_order(oak_bed: Beds) -> None:
    found = recipe_of(oak_bed(yard_narrowest=250.0, yard_widest=100.0).design, 25.4)

    assert found.narrowest < found.usual < found.widest


def test_drawn_boards_hold_every_piece(oak_bed: Beds) -> None:
    of_boards = [each for each in tasks(oak_bed()) if each.task.kind == "boards"]

    assert of_boards
    for each in of_boards:
        assert first_plan(each.task).left_out == (), each.key


def test_drawn_boards_are_as_long_and_wide_as_a_yard_has_them(oak_bed: Beds) -> None:
    drawn = [board for each in tasks(oak_bed()) for board in each.task.stock if board.is_assumed]

    assert drawn
    for board in drawn:
        assert 6 * FOOT - 1e-6 <= board.length <= 12 * FOOT + 1e-6
        assert board.width <= 254 + 3.2  # to the next eighth of an inch
        assert (board.trim.left, board.trim.right) == (25, 25)


def test_the_same_list_has_the_same_boards(oak_bed: Beds) -> None:
    plain = recipe_of(oak_bed().design, 25.4)
    wanted = task(Piece(mark="S1", length=900.0, width=90.0, quantity=12))

    one = assumed_boards(wanted, plain)
    assumed_boards.cache_clear()

    assert assumed_boards(wanted, plain) == one
    assert len({board.key for board in one}) == len(one)


def test_what_no_yard_has_is_not_looked_for_for_ever(oak_bed: Beds) -> None:
    plain = recipe_of(oak_bed().design, 25.4)
    wanted = task(
        Piece(mark="S1", length=4000.0, width=90.0), Piece(mark="S2", length=900.0, width=90.0)
    )

    boards = assumed_boards(wanted, plain)

    assert asked_for(wanted, plain) == ()
    assert {
        each.mark
        for each in first_plan(
            Task(kind="boards", pieces=wanted.pieces, stock=boards, kerf=3.0)
        ).left_out
    } == {"S1"}


# ---------------------------------------------------------------- what has to be asked for


def test_wide_parts_are_asked_for_each_on_a_board_of_its_own(oak_bed: Beds) -> None:
    plain = recipe_of(oak_bed().design, 25.4)  # a yard's boards are mostly 165 mm wide
    wanted = task(Piece(mark="H3", length=1500.0, width=203.0, quantity=2))

    assert asked_for(wanted, plain) == (
        Asked(clear=1500.0, width=203.2, length=1828.8, boards=2, marks=("H3",)),
    )


def test_long_parts_lie_side_by_side_in_boards_that_are_asked_for(oak_bed: Beds) -> None:
    """Three strips of 80 mm and two kerfs are 246 mm, on a tape 9 3/4 in; a fourth would need more
    than the 10 in of a yard's widest board. One alone is 3 1/4 in.
    """
    plain = recipe_of(oak_bed().design, 25.4)
    wanted = task(Piece(mark="S1", length=2400.0, width=80.0, quantity=4))

    one, other = asked_for(wanted, plain)

    assert (one.clear, one.width, one.boards) == (2400, 247.65, 1)
    assert (other.clear, other.width, other.boards) == (2400, 82.55, 1)
    assert one.length == pytest.approx(9 * FOOT)  # 2400 mm and two ends of 25: more than 8 ft


def test_short_and_narrow_parts_are_not_asked_for(oak_bed: Beds) -> None:
    plain = recipe_of(oak_bed().design, 25.4)
    wanted = task(
        Piece(mark="S1", length=2400.0, width=80.0),
        Piece(mark="D1", length=700.0, width=90.0, quantity=9),
    )

    assert {each.mark for each in seldom(wanted, plain)} == {"S1"}
    assert [each.mark for each in usual(wanted, plain)] == ["D1"] * 9


def test_a_row_counts_as_long_as_it_is_end_to_end() -> None:
    wanted = task(
        Piece(mark="R1", length=600.0, width=100.0, quantity=2, row="left fronts"),
        Piece(mark="R2", length=500.0, width=100.0, row="left fronts"),
        Piece(mark="D1", length=700.0, width=90.0, quantity=2),
        kerf=4.0,
    )

    found = [(each.mark, each.length, each.quantity) for each in strips(wanted)]

    assert found == [("D1", 700, 1), ("D1", 700, 1), ("R1", 600 * 2 + 500 + 2 * 4, 1)]


def test_nothing_longer_is_asked_for_than_a_yards_longest_board(oak_bed: Beds) -> None:
    assert longest_asked(recipe_of(oak_bed().design, 25.4)) == pytest.approx(12 * FOOT - 2 * 25)


def test_a_rack_that_is_too_small_is_filled_up(oak_bed: Beds) -> None:
    board = Board(name="A", material="white_oak", thickness=38.1, length=2500.0, width=220.0)
    bed = oak_bed(StockRows(boards=(board,)), boards_from="rack")

    found = next(each for each in tasks(bed) if each.key == "white_oak-38.1")

    assert found.task.stock[0].key == "A" and not found.task.stock[0].is_assumed
    assert all(each.is_assumed for each in found.task.stock[1:])
    assert "rack does not hold all pieces" in found.notes[0]
    plan = first_plan(found.task)
    assert plan.left_out == ()
    assert any(layout.stock.key == "A" for layout in plan.layouts)
