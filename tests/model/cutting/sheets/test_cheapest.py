"""Fewest and cheapest sheets where the answer is known."""

from itertools import islice
from random import Random

from model.cutting.plan import AT_ONCE, plan
from model.cutting.record import Effort, Piece, Stock, Task
from model.cutting.sheets.blank import blanks
from model.cutting.sheets.cheapest import area_floor, at_once, floor, improved
from model.cutting.sheets.depot import Depot
from model.cutting.sheets.manners import at_random, plain, tried
from model.cutting.sheets.pool import Pool
from model.cutting.sheets.repack import Stowed, repacked
from model.cutting.whole import whole
from tests.checkers.plans import faults

# Furniture parts from boards of 2750 x 1220: instance A43 of Macedo, Alves, Valerio de Carvalho,
# Arc-flow model for the two-dimensional guillotine cutting stock problem, Computers & Operations
# Research 37(6):991-1001, 2010. Length, width, demand.
A43 = (
    *((987, 705, 1), (1903, 486, 2), (1120, 486, 2), (986, 433, 4), (623, 426, 1), (228, 210, 2)),
    *((2357, 935, 2), (1181, 733, 4), (2040, 320, 1), (1236, 143, 2), (1780, 740, 1)),
)


def depot(sheet: tuple[float, float], *sizes: tuple[int, int, int], grain: str = "length") -> Depot:
    pieces = tuple(
        Piece(mark=f"P{at}", length=x, width=y, quantity=n, grain=grain)  # type: ignore[arg-type]
        for at, (x, y, n) in enumerate(sizes, 1)
    )
    stock = Stock(key="s", length=sheet[0], width=sheet[1])
    made = whole(Task(kind="sheets", pieces=pieces, stock=(stock,), kerf=0.0))
    return Depot(made, blanks(made))


def test_a_published_list_that_may_not_turn_needs_seven_sheets() -> None:
    found = plan(depot((2750.0, 1220.0), *A43).whole.task)

    assert faults(found) == []
    assert found.value == 7


def test_a_published_list_that_may_turn_needs_six() -> None:
    found = plan(depot((2750.0, 1220.0), *A43, grain="free").whole.task)

    assert faults(found) == []
    assert found.value == 6


def test_at_once_nothing_is_left_out_that_can_be_cut() -> None:
    held = at_once(depot((2750.0, 1220.0), *A43), 0)

    assert not any(held.unplaced)


def test_the_floor_by_area_is_no_higher_than_that_by_all_means() -> None:
    made = depot((100.0, 100.0), (51, 51, 3))
    held = at_once(made, 2)

    assert area_floor(made, held).cost == 1
    assert floor(made, held).cost == 3  # no two of them share a sheet


def test_the_search_ends_where_nothing_can_be_cheaper() -> None:
    made = depot((100.0, 100.0), (50, 50, 8))
    held = at_once(made, 2)
    asked: list[bool] = []

    list(improved(made, held, floor(made, held), Effort(), lambda: bool(asked.append(True))))

    assert held.cost == 2 and asked == []


def test_offcuts_on_hand_are_used_before_a_sheet_is_bought() -> None:
    bought = Stock(key="s", length=2440.0, width=1220.0)
    left = Stock(key="o", length=900.0, width=500.0, quantity=2, on_hand=True)
    pieces = (Piece(mark="A", length=850.0, width=200.0, quantity=4),)

    found = plan(Task(kind="sheets", pieces=pieces, stock=(bought, left), kerf=3.0))

    assert found.value == found.lower_bound == 0.0
    assert {layout.stock.key for layout in found.layouts} == {"o"}


def test_the_cheaper_of_two_kinds_is_bought() -> None:
    large = Stock(key="large", length=2440.0, width=1220.0, price=60.0)
    half = Stock(key="half", length=1220.0, width=1220.0, price=36.0)

    def found(quantity: int) -> tuple[list[str], float]:
        pieces = (Piece(mark="A", length=600.0, width=600.0, quantity=quantity),)
        made = plan(Task(kind="sheets", pieces=pieces, stock=(large, half), kerf=3.0))
        return sorted(layout.stock.key for layout in made.layouts), made.value

    assert found(4) == (["half"], 36.0)
    assert found(8) == (["large"], 60.0)
    assert found(12) == (["half", "large"], 96.0)


def test_sheets_packed_anew_find_a_place_for_the_rest() -> None:
    """Each sheet takes one of each kind, 60 and 40 high; packed apart, one 60 has no place."""
    made = depot((100.0, 100.0), (100, 60, 3), (100, 40, 3))
    bins = made.bins((3,), [0])
    start = Stowed(bins, {}, made.demand)

    done = repacked(made, start, 200, Random(1), lambda: False)

    assert not any(done.unplaced)


def test_the_pool_chooses_ways_that_hold_exactly_what_is_wanted() -> None:
    made = depot((100.0, 100.0), (100, 60, 3), (100, 40, 3))
    pool = Pool(made, Random(1))
    pool.fill(5)

    sheets = pool.chosen(50)

    assert sheets is not None and len(sheets) == 3
    assert [sum(each) for each in zip(*(sheet.holds for sheet in sheets), strict=True)] == [3, 3]


def test_manners_are_the_same_every_time() -> None:
    sizes = depot((2750.0, 1220.0), *A43).whole.sizes

    assert list(islice(tried(sizes, 7), 80)) == list(islice(tried(sizes, 7), 80))
    assert len(set(plain(sizes))) > 60
    assert sorted(at_random(sizes, Random(3)).order) == list(range(len(sizes)))


def test_with_little_effort_the_first_plan_stands() -> None:
    task = depot((2750.0, 1220.0), *A43).whole.task

    assert plan(task, AT_ONCE).value >= plan(task).value
