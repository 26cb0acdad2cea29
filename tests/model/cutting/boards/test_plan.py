"""Plans of boards: bad spans, rows, what is left out, bounds, and never worse than by the board."""

from dataclasses import replace
from random import Random

import pytest

from model.cutting.boards.plan import board_plan
from model.cutting.boards.rack import rack
from model.cutting.boards.shelf import MANNERS, shelf
from model.cutting.lengths.lots import at_least, lots
from model.cutting.plan import first_plan, plan
from model.cutting.record import Box, Effort, Piece, Plan, Region, Stock, Task, Trim
from model.units import INCH
from tests.checkers.plans import faults

QUICK = Effort(tries=12, moves=0, nodes=40)


def piece(mark: str, length: float, width: float, quantity: int = 1, **more: object) -> Piece:
    return Piece(mark=mark, length=length, width=width, quantity=quantity, **more)  # type: ignore[arg-type]


def board(key: str, length: float, width: float, **more: object) -> Stock:
    return Stock(key=key, length=length, width=width, **{"quantity": 1, **more})  # type: ignore[arg-type]


def task(pieces: tuple[Piece, ...], *stock: Stock, kerf: float = 3.0) -> Task:
    return Task(kind="boards", pieces=pieces, stock=stock, kerf=kerf)


def quick(asked: Task) -> Plan:
    return board_plan(asked, QUICK, lambda _: None, lambda: False)


def regions(found: Plan) -> list[Region]:
    return [region for layout in found.layouts for region in layout.tree.all()]


def made_up(seed: int, pieces: int = 30, spoiled: bool = False) -> Task:
    """Rough parts of 8 sizes, and a rack of random boards with half as much again."""
    random = Random(seed)
    asked = []
    for number in range(8):
        length, width = random.choice((325, 450, 700, 925, 1300, 1950)), random.randint(50, 130)
        asked.append(piece(f"A{number}", float(length), float(width), pieces // 8 + 1))
    wanted = 1.6 * sum(each.length * each.width * each.quantity for each in asked)
    stock: list[Stock] = []
    while wanted > 0:
        length = random.randint(72, 144) * INCH
        width = round(random.triangular(102, 254, 165), 1)
        bad = _bad(random, length, width) if spoiled else ()
        ends = Trim(left=25.0, right=25.0)
        stock.append(board(f"B{len(stock)}", length, width, trim=ends, bad=bad))
        wanted -= length * width * (0.8 if spoiled else 1.0)
    return task(tuple(asked), *stock)


def _bad(random: Random, length: float, width: float) -> tuple[Box, ...]:
    found = []
    for _ in range(random.randint(0, 2)):
        x, y = random.uniform(0, length - 200), random.choice((0.0, random.uniform(0, width * 0.7)))
        high = width if random.random() < 0.4 else min(width, y + random.uniform(15, 60))
        found.append(Box(x, y, x + random.uniform(30, 180), high))
    return tuple(found)


@pytest.mark.parametrize("seed", range(4))
def test_every_piece_is_there_and_none_touches_a_bad_span(seed: int) -> None:
    asked = made_up(seed, spoiled=True)

    for found in (first_plan(asked), quick(asked)):
        assert faults(found) == [] and found.left_out == ()
        assert found.lower_bound <= found.value


@pytest.mark.parametrize("seed", range(3))
def test_boards_chosen_together_take_less_than_board_by_board(seed: int) -> None:
    """Never more than the best of the simple rules; on lists like these, a tenth less or better."""
    asked = made_up(seed)
    sizes = lots(asked)
    boards = rack(asked, min(lot.across for lot in sizes))
    demand = tuple(lot.demand for lot in sizes)
    simple = [
        sum(boards[pattern.board].cost for pattern in patterns)
        for manner in MANNERS
        for patterns, missing in [shelf(boards, sizes, demand, at_least(asked.kerf), manner)]
        if not any(missing)
    ]

    found = quick(asked)

    assert faults(found) == []
    assert found.value * 1e12 <= 0.9 * min(simple)


def test_rip_first_is_chosen_where_it_alone_holds_the_list() -> None:
    """Two strips of 1000: long and short in each; no crosscut of the whole board serves both."""
    pieces = (piece("A", 700, 50), piece("B", 297, 50), piece("C", 400, 47), piece("D", 597, 47))

    found = plan(task(pieces, board("B1", 1000, 100), board("B2", 1000, 100)))

    assert faults(found) == []
    assert [layout.tree.cut for layout in found.layouts] == ["rip"]
    assert found.is_proven


def test_crosscut_first_is_chosen_where_it_alone_holds_the_list() -> None:
    """Sections of 400 and 597; one in three strips, the other in two."""
    pieces = (piece("A", 400, 31, 3), piece("B", 597, 48, 2))

    found = plan(task(pieces, board("B1", 1000, 99), board("B2", 1000, 99)))

    assert faults(found) == []
    assert [layout.tree.cut for layout in found.layouts] == ["crosscut"]


def test_a_knot_on_the_edge_is_ripped_off() -> None:
    """The long part lies beside it: crosscutting the knot out would leave two short ends."""
    knot = Box(800, 0, 900, 30)

    found = plan(task((piece("A", 1800, 100),), board("B1", 2000, 150, bad=(knot,))))

    assert faults(found) == [] and found.left_out == ()


def test_only_the_strip_that_meets_a_knot_is_crosscut_there() -> None:
    knot = Box(900, 10, 1000, 40)
    pieces = (piece("A", 1900, 90), piece("B", 880, 50, 2))

    found = plan(task(pieces, board("B1", 2000, 150, bad=(knot,)), board("B2", 3000, 200)))

    assert faults(found) == []
    assert [layout.stock.key for layout in found.layouts] == ["B1"]


def test_pieces_of_a_row_leave_the_saw_in_one_strip() -> None:
    pieces = (
        piece("F", 300, 80, 3, row="fronts"),
        piece("G", 150, 60, 4, row="blocks", stays_whole=True),
    )

    found = plan(task(pieces, board("B1", 1500, 120), board("B2", 1500, 170)))

    assert faults(found) == []
    rows = {region.row: region for region in regions(found) if region.row}
    assert (rows["fronts"].length, rows["fronts"].width) == (906, 80)
    assert (rows["blocks"].length, rows["blocks"].stays_whole) == (609, True)
    assert [layout.stock.key for layout in found.layouts] == ["B2"]


def test_what_is_too_wide_is_to_be_glued_up() -> None:
    found = plan(task((piece("A", 500, 190), piece("B", 500, 90, 2)), board("B1", 2000, 120)))

    assert faults(found) == []
    (left,) = found.left_out
    assert (left.mark, left.quantity) == ("A", 1)
    assert "glue it up" in left.sentence and "500 x 190 mm" in left.sentence


def test_what_is_too_long_says_which_board_would_do() -> None:
    split = Box(1400, 0, 1600, 120)

    found = plan(task((piece("A", 1500, 90),), board("B1", 2000, 120, bad=(split,))))

    assert "1400 mm" in found.left_out[0].sentence
    assert "1500 x 90 mm clear" in found.left_out[0].sentence


def test_a_used_up_rack_says_how_much_is_missing() -> None:
    found = plan(task((piece("A", 900, 90, 5),), board("B1", 2000, 120), board("B2", 1000, 120)))

    assert faults(found) == []
    (left,) = found.left_out
    assert left.quantity == 2
    assert "used up" in left.sentence and "0.16 m²" in left.sentence  # 2 x 0.9 x 0.09
    assert found.lower_bound <= found.value


@pytest.mark.parametrize("stock", [(), (board("B1", 2000, 120, quantity=0),), (board("B1", 0, 0),)])
def test_no_stock_is_a_sentence(stock: tuple[Stock, ...]) -> None:
    found = plan(task((piece("A", 900, 90),), *stock))

    assert found.layouts == () and "no board" in found.left_out[0].sentence


def test_a_board_that_its_trims_eat_is_no_board() -> None:
    eaten = board("B1", 2000, 120, trim=Trim(lower=60, upper=60))

    found = plan(task((piece("A", 900, 90, 2),), eaten, board("B2", 2000, 120), kerf=0.0))

    assert faults(found) == []
    assert [layout.stock.key for layout in found.layouts] == ["B2"]


def test_sold_sizes_of_one_kind_are_counted() -> None:
    found = plan(task((piece("A", 900, 90, 5),), board("1x6", 2000, 140, quantity=None)))

    assert (found.measure, found.value, found.lower_bound) == ("stock", 3.0, 3.0)


def test_the_cheapest_boards_are_taken_where_all_are_priced() -> None:
    dear, cheap = board("dear", 1000, 100, price=9.0), board("cheap", 1500, 120, price=5.0)

    found = plan(task((piece("A", 900, 90),), dear, cheap))

    assert (found.measure, found.value, found.lower_bound) == ("price", 5.0, 5.0)
    assert found.layouts[0].stock == cheap


def test_the_bound_says_which_plans_it_covers() -> None:
    found = quick(made_up(1))

    assert found.covers.startswith("any plan of rips then crosscuts, or crosscuts then rips")
    assert 0 < found.lower_bound <= found.value


def test_a_stopped_search_answers_with_its_first_plan() -> None:
    asked = made_up(2)

    found = board_plan(asked, QUICK, lambda _: None, lambda: True)

    assert faults(found) == [] and found.left_out == ()


def test_the_same_question_has_the_same_answer() -> None:
    asked = made_up(3, pieces=16)

    assert quick(asked) == quick(replace(asked))


def test_each_better_plan_is_told_and_the_first_at_once() -> None:
    told: list[Plan] = []

    found = board_plan(made_up(0, pieces=16), QUICK, told.append, lambda: False)

    assert len(told) > 1
    assert told[-1].value == found.value <= told[0].value
    assert all(faults(each) == [] for each in told)
