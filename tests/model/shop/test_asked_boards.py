"""What a yard is asked for: no wider board than a plan must have, unless it says so."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from model.bed import Bed
from model.cutting.plan import first_plan
from model.cutting.racks import RackOdds
from model.cutting.record import Piece, Stock, Task
from model.shop.assumed_boards import Asked, asked_for, recipe_of
from model.shop.lumber import Lumber

Beds = Callable[..., Bed]
RAILS = Task(
    kind="boards", stock=(), kerf=3.0, name="oak-25.4",
    pieces=(
        Piece(mark="S1", length=2400.0, width=127.0, quantity=2),
        Piece(mark="S2", length=2400.0, width=70.0, quantity=2),
    ),
)  # fmt: skip


def sentences(bed: Bed, task: Task) -> tuple[str, ...]:
    recipe = recipe_of(bed.design, 25.4)
    odds = RackOdds(recipe=recipe, net=0.0, least=0.0)
    found = asked_for(task, recipe)
    told = Lumber(key=task.name, material="oak", material_name="Oak", asked=found, odds=odds)
    return told.sentences("mm")


def test_boards_for_strips_side_by_side_are_not_passed_off_as_needed(oak_bed: Beds) -> None:
    """127 and 70 mm and a kerf: 200 mm, of boards that are mostly 165 mm wide."""
    said, _ = sentences(oak_bed(), RAILS)

    assert said == (
        "2 boards at least 2400 mm clear and 200 mm wide, for S1, S2 side by side; or narrower "
        "ones as long, one for each piece: S1 127 mm, S2 70 mm wide."
    )


def test_narrower_boards_that_are_named_instead_do_hold_the_strips(oak_bed: Beds) -> None:
    (asked,) = asked_for(RAILS, recipe_of(oak_bed().design, 25.4))

    boards = tuple(
        Stock(key=f"{mark} {n}", length=asked.clear, width=width, quantity=1)
        for mark, width in asked.side_by_side
        for n in range(asked.boards)
    )

    assert first_plan(replace(RAILS, stock=boards)).left_out == ()


def test_a_piece_wider_than_a_usual_board_has_no_such_choice(oak_bed: Beds) -> None:
    wide = replace(RAILS, pieces=(Piece(mark="H3", length=1400.0, width=204.0),))

    said, _ = sentences(oak_bed(), wide)

    assert said == "One board at least 1400 mm clear and 204 mm wide, for H3."


def test_a_yard_that_bills_by_the_cubic_metre_is_told_cubic_metres(oak_bed: Beds) -> None:
    """A board of 1828.8 x 203.2 x 25.4 mm: 0.00944 m3, or 4 board feet (6 ft x 8 in x 1 in)."""
    recipe = recipe_of(oak_bed().design, 25.4)
    board = Asked(clear=1770.0, width=203.2, length=1828.8, boards=1, marks=("H3",))
    odds = RackOdds(recipe=recipe, net=0.0, least=0.0)
    told = Lumber(key="oak", material="oak", material_name="Oak", asked=(board,), odds=odds)

    assert told.sentences("mm", "cubic metre")[1] == "0.010 m3 in all."
    assert told.sentences("mm", "board foot")[1] == "4 board feet in all."
