"""The wood that somebody buys who has none of the boards that the plans are drawn on."""

from __future__ import annotations

import pytest

from model.planset.wood_list import WoodList
from model.shop.cut_list import cut_list
from model.shop.plans import plans
from tests.model.building.beds import DEMOS, GUEST, QUEEN, demo


def number(cell: str) -> float:
    return float(cell.partition(" ")[0])


@pytest.mark.parametrize("name", DEMOS)
def test_a_third_more_than_net_is_asked_for_at_least(name: str) -> None:
    """A yard's boards have knots and odd widths; common practice, no source."""
    for row in WoodList(demo(name), "inch").lumber():
        net, asked = number(row.cells[2]), number(row.cells[3])
        assert asked >= (net - 0.1) * 4 / 3  # net is told rounded up to a tenth


@pytest.mark.parametrize("name", DEMOS)
def test_as_much_is_asked_for_as_the_plans_are_drawn_on(name: str) -> None:
    """Board feet count an inch where a board is thinner: 144 cubic inches are one."""
    bed = demo(name)
    drawn: dict[str, float] = {}
    for plan in plans(bed):
        if plan.plan.task.kind != "sheets":
            feet = sum(x.stock.length * x.stock.width for x in plan.plan.layouts)
            feet *= max(plan.thickness, 25.4) / (144 * 25.4**3)
            drawn[plan.material_name] = drawn.get(plan.material_name, 0.0) + feet

    asked: dict[str, float] = {}
    for row in WoodList(bed, "inch").lumber():
        asked[row.cells[0]] = asked.get(row.cells[0], 0.0) + number(row.cells[3])

    assert asked.keys() == drawn.keys()
    for wood, feet in drawn.items():
        assert asked[wood] >= feet - 1e-6


@pytest.mark.parametrize("name", DEMOS)
def test_every_solid_piece_is_counted(name: str) -> None:
    bed = demo(name)
    wanted = sum(piece.quantity for piece in cut_list(bed) if piece.source is not None)

    assert sum(int(row.cells[4]) for row in WoodList(bed, "mm").lumber()) == wanted


@pytest.mark.parametrize("name", DEMOS)
def test_every_board_and_sheet_of_the_plans_is_bought(name: str) -> None:
    """Nothing is left out because somebody else had it on hand."""
    bed = demo(name)
    layouts = [x for plan in plans(bed) for x in plan.plan.layouts if not x.stock.is_assumed]
    wood = WoodList(bed, "inch")

    rows = [*wood.boards(), *wood.sheets()]

    assert sum(number(row.cells[0]) for row in rows) == len(layouts)


def test_an_offcut_on_hand_is_one_more_whole_sheet_for_others() -> None:
    """Two box sides lie on an offcut of 1530 x 610; the sheet sold is 2440 x 1220."""
    rows = [r for r in WoodList(demo(QUEEN), "inch").sheets() if "12 mm" in r.cells[1]]

    assert len(rows) == 1
    assert rows[0].cells[0] == "2 sheets"
    assert "2440 mm x 1220 mm" in rows[0].cells[2]
    assert "B1-1" in rows[0].cells[3]
    assert "1530 mm x 610 mm" in rows[0].cells[3]


def test_a_metric_set_tells_lumber_in_cubic_metres() -> None:
    assert all(row.cells[3].endswith(" m3") for row in WoodList(demo(GUEST), "mm").lumber())
