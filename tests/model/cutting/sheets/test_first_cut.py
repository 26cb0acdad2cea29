"""Limits of the wishes, by hand: half a sheet, and a tenth more let pass."""

from model.cutting.merit import is_better
from model.cutting.plan import first_plan, plan
from model.cutting.record import Piece, Stock, Task, Wishes
from model.cutting.sheets.first_cut import Handling, handling, parted
from model.cutting.sheets.tree import Leaf, Stack, Tree
from tests.model.cutting.sheets.stacks import crosscut, leaf, rip

LIMITS = Handling(most=0.5, area=100 * 60, kerf=0, strips=False)


def extent(tree: Tree | None) -> tuple[str, int]:
    """The way of the first cut, and what it is set to."""
    if isinstance(tree, Leaf):
        return "rip", tree.y
    assert isinstance(tree, Stack)
    first = tree.members[0]
    return tree.way, first.y if tree.way == "rip" else first.x


def test_a_sheet_of_narrow_strips_is_parted_near_the_middle() -> None:
    tree = rip(*(crosscut(leaf(50, 10), leaf(50, 10)) for _ in range(6)))

    for each in parted(tree, 100, 60, LIMITS):
        assert each.steps == 0
        assert extent(each.tree) == ("rip", 30)


def test_where_any_cut_will_do_the_order_stays_open() -> None:
    tree = rip(*(crosscut(leaf(50, 30), leaf(50, 30)) for _ in range(2)))

    assert parted(tree, 100, 60, LIMITS)[0].tree == tree


def test_a_single_piece_may_be_as_large_as_it_is() -> None:
    tree = rip(leaf(100, 50), leaf(100, 10))

    assert parted(tree, 100, 60, LIMITS)[0].steps == 0


def test_each_further_tenth_of_the_sheet_counts() -> None:
    """50 of 60 is five sixths: 0.33 over a half, 0.23 over what is let pass."""
    tree = rip(crosscut(leaf(50, 50), leaf(50, 50)), leaf(100, 10))

    assert parted(tree, 100, 60, LIMITS)[0].steps == 3


def test_heavy_sheets_are_parted_by_weight() -> None:
    stock = Stock(key="s", length=2440.0, width=1220.0, kg_per_m2=12.0)

    limits = handling(stock, Wishes(largest_share=0.5, heaviest_kg=10.0), 1, 0)

    assert round(limits.most, 4) == round(10 / (2.44 * 1.22 * 12), 4)


def test_strips_come_first_where_the_maker_wishes_that() -> None:
    tree = crosscut(leaf(30, 20), leaf(40, 20))

    ways = [extent(each.tree) for each in parted(tree, 100, 60, LIMITS._replace(strips=True))]

    assert ways == [("rip", 20)]


def test_no_sheet_is_wasted_to_make_an_offcut_easier_to_carry() -> None:
    """Four fronts fit two by two; what is left of the sheet stays in one, however large."""
    task = Task(
        kind="sheets",
        pieces=(Piece(mark="R3", length=870.0, width=133.0, quantity=4),),
        stock=(Stock(key="sheet", length=2440.0, width=1220.0, kg_per_m2=7.0),),
        kerf=3.0,
    )

    first, best = first_plan(task), plan(task)

    assert not is_better(first, best)
    assert best.layouts[0].offcuts[0].area == 2440.0 * (1220.0 - 2 * (133.0 + 3.0))
