"""Plans of sticks: kerf, trims, bad spans, stock on hand, limited stock, prices, and proof."""

from dataclasses import replace
from random import Random

import pytest

from model.cutting.lengths.plan import length_plan
from model.cutting.plan import AT_ONCE, USUAL, plan
from model.cutting.record import Box, Effort, Piece, Plan, Region, Stock, Task, Trim
from model.units import INCH
from tests.checkers.plans import faults

FOOT = 12 * INCH


def pieces(*asked: tuple[float, int]) -> tuple[Piece, ...]:
    return tuple(
        Piece(mark=f"A{at}", length=length, width=38.0, quantity=quantity)
        for at, (length, quantity) in enumerate(asked, 1)
    )


def stick(length: float, **more: object) -> Stock:
    return Stock(key=f"{length:g}", length=length, width=38.0, **more)  # type: ignore[arg-type]


def task(asked: tuple[Piece, ...], *stock: Stock, kerf: float = 3.0) -> Task:
    return Task(kind="lengths", pieces=asked, stock=stock, kerf=kerf)


def cuts(found: Plan) -> list[Region]:
    return [region for layout in found.layouts for region in layout.tree.all() if region.cut]


def keys(found: Plan) -> list[str]:
    return [layout.stock.key for layout in found.layouts]


def test_a_kerf_lies_between_pieces_but_not_behind_the_last() -> None:
    """Two of 500 and a kerf of 3 just fill 1003; a hair less holds only one."""
    assert plan(task(pieces((500, 2)), stick(1003))).value == 1
    assert plan(task(pieces((500, 2)), stick(1002.99))).value == 2


def test_the_blade_runs_off_the_end_where_less_than_a_kerf_is_left() -> None:
    (cut,) = cuts(plan(task(pieces((500, 1)), stick(501))))

    assert (cut.at, cut.kerf, cut.high) == (500.0, 1.0, None)


def test_sixths_of_a_stick_fill_it() -> None:
    """A size on a 1/64 in is no whole number of 0.01 mm; six of them still fit."""
    sixth = 15 * INCH + INCH / 64

    assert plan(task(pieces((sixth, 6)), stick(6 * sixth), kerf=0.0)).value == 1


def test_ends_are_trimmed_first() -> None:
    found = plan(task(pieces((500, 2)), stick(1053, trim=Trim(left=25, right=25))))

    assert faults(found) == []
    assert [cut.is_trim for cut in cuts(found)] == [True, True, False]
    assert plan(task(pieces((500, 2)), stick(1052, trim=Trim(left=25, right=25)))).value == 2


def test_no_piece_touches_a_bad_span() -> None:
    knot = stick(2100, bad=(Box(600, 0, 700, 38), Box(1500, 10, 1501, 20)))

    found = plan(task(pieces((500, 5), (300, 4)), knot, stick(2400)))

    assert faults(found) == []
    assert found.is_proven
    assert found.value == 4500  # 2 + 2 in the one, 3 + 2 in the other: 2116 of 2400 mm


def test_what_is_on_hand_is_used_before_anything_is_bought() -> None:
    found = plan(task(pieces((500, 5)), stick(1100, quantity=2, on_hand=True), stick(2400)))

    assert keys(found) == ["1100", "1100", "2400"]
    assert (found.measure, found.value, found.is_proven) == ("stock", 1.0, True)


def test_the_cheapest_lengths_are_bought() -> None:
    """Five of 500: three of 1100 at 4.00 cost 12, one of 2400 and one of 1100 cost 14."""
    found = plan(task(pieces((500, 5)), stick(1100, price=4.0), stick(2400, price=10.0)))

    assert (found.measure, found.value, found.lower_bound) == ("price", 12.0, 12.0)


def test_the_least_length_is_used_where_a_price_is_missing() -> None:
    """Five of 500: 1100 + 2400 is 3500; three of 1100 only 3300."""
    found = plan(task(pieces((500, 5)), stick(1100, price=4.0), stick(2400)))

    assert (found.measure, found.value, found.lower_bound) == ("length", 3300.0, 3300.0)


def test_limited_stock_makes_a_plan_dearer_and_never_the_bound_too_low() -> None:
    """With one 8 ft left, the rest comes from 12 ft: 2 x 1100 in each of three, 1 in the 8 ft.

    Without limit 8 ft alone would do: four of them hold eight.
    """
    free = plan(task(pieces((1100, 7)), stick(8 * FOOT), stick(12 * FOOT)))
    short = plan(task(pieces((1100, 7)), stick(8 * FOOT, quantity=1), stick(12 * FOOT)))

    assert free.is_proven and short.is_proven
    assert free.value == pytest.approx(28 * FOOT)  # 3 + 2 + 2: 12 + 8 + 8 ft
    assert short.value == pytest.approx(32 * FOOT)  # 3 + 3 + 1: 12 + 12 + 8 ft


def test_a_row_is_cut_from_one_strip_in_order() -> None:
    row = (
        Piece(mark="F1", length=300, width=38, quantity=2, row="left"),
        Piece(mark="F2", length=400, width=38, row="left"),
        Piece(mark="G1", length=100, width=38, quantity=3, row="blocks", stays_whole=True),
    )

    found = plan(task(row, stick(2400)))

    assert faults(found) == []
    strips = {r.row: r for layout in found.layouts for r in layout.tree.all() if r.row}
    names = [r.placed.name for r in strips["left"].all() if r.placed]
    assert names == ["F1-1", "F1-2", "F2-1"]
    assert strips["left"].length == 1006  # with two kerfs
    assert [strips[name].stays_whole for name in ("left", "blocks")] == [False, True]


def test_what_is_too_long_is_left_out_with_what_would_do() -> None:
    found = plan(task(pieces((2500, 1), (500, 2)), stick(2000)))

    assert faults(found) == []
    (left,) = found.left_out
    assert (left.mark, left.quantity) == ("A1", 1)
    assert "2000 mm" in left.sentence and "at least 2500 mm" in left.sentence
    assert (found.value, found.is_proven) == (1.0, True)


def test_used_up_stock_leaves_out_as_little_as_can_be() -> None:
    found = plan(task(pieces((900, 1), (300, 4)), stick(1000, quantity=2)))

    assert faults(found) == []
    assert [(left.mark, left.quantity) for left in found.left_out] == [("A2", 1)]
    assert "used up" in found.left_out[0].sentence


@pytest.mark.parametrize(
    "stock",
    [(), (stick(0),), (stick(900, quantity=0),), (stick(100, trim=Trim(left=60, right=60)),)],
)
def test_no_stock_is_a_sentence(stock: tuple[Stock, ...]) -> None:
    found = plan(task(pieces((500, 2)), *stock))

    assert found.layouts == ()
    assert [(left.mark, left.quantity) for left in found.left_out] == [("A1", 2)]
    assert "no stock" in found.left_out[0].sentence


def test_nothing_to_cut_is_an_empty_plan() -> None:
    assert plan(task((), stick(2400))).layouts == ()


def test_a_kerf_wider_than_the_parts_is_planned_all_the_same() -> None:
    found = plan(task(pieces((2, 5)), stick(20), kerf=3.2))

    assert faults(found) == []
    assert found.value == 2  # 4 x 2 + 3 x 3.2 = 17.6; a fifth would need 22.8


def made_up(seed: int, *feet: int) -> Task:
    """A maker's list: 40 to 120 parts of 6 to 15 sizes."""
    random = Random(seed)
    sizes = random.randint(6, 15)
    counts = [1] * sizes
    for _ in range(random.randint(40, 120) - sizes):
        counts[random.randrange(sizes)] += 1
    asked = [(round(random.uniform(200, 1900) * 2) / 2, count) for count in counts]
    return task(pieces(*asked), *(stick(each * FOOT) for each in feet), kerf=3.2)


@pytest.mark.parametrize("seed", range(6))
def test_a_makers_list_from_one_length_is_proven(seed: int) -> None:
    found = plan(made_up(seed, 8))

    assert faults(found) == []
    assert found.is_proven


@pytest.mark.parametrize("seed", range(3))
def test_a_makers_list_from_four_lengths_is_proven(seed: int) -> None:
    found = plan(made_up(seed, 8, 10, 12, 16))

    assert faults(found) == []
    assert found.measure == "length" and found.is_proven


def test_each_better_plan_is_told_and_the_first_at_once() -> None:
    told: list[Plan] = []

    found = length_plan(made_up(1, 8, 10, 12, 16), USUAL, told.append, lambda: False)

    assert told[0].value >= told[-1].value == found.value
    assert all(faults(each) == [] for each in told)


def test_a_stopped_search_answers_with_its_first_plan() -> None:
    found = length_plan(made_up(1, 8, 10), USUAL, lambda _: None, lambda: True)

    assert faults(found) == [] and found.left_out == ()


def test_the_same_question_has_the_same_answer() -> None:
    asked = made_up(2, 8, 10, 12, 16)

    assert plan(asked) == plan(replace(asked))
    assert plan(asked, AT_ONCE) == plan(asked, Effort(tries=12, moves=0, nodes=0, racks=0))
