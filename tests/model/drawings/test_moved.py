"""Items moved over the paper, and the room that they take."""

from __future__ import annotations

import pytest

from model.cutting.record import Box
from model.drawings.measures import measure_ink
from model.drawings.moved import around, moved
from model.drawings.paper import Area, Fill, Hatch, Item, Measure, Ring, Stroke, Text

SQUARE = ((0.0, 0.0), (4.0, 0.0), (4.0, 4.0), (0.0, 4.0))
ITEMS: list[Item] = [
    Stroke(SQUARE), Ring((2.0, 2.0), 1.0), Hatch(SQUARE, 1.0, holes=(SQUARE,)), Fill(SQUARE),
    Text((1.0, 1.0), "oak", 2.0), Area(Box(0, 0, 4, 4), "B1"),
    Measure((0.0, 0.0), (40.0, 0.0), -10.0, False, "400", 400.0),
    Measure((0.0, 0.0), (0.0, 40.0), -10.0, True, "400", 400.0, (-12.0, 20.0)),
]  # fmt: skip


@pytest.mark.parametrize("item", ITEMS, ids=lambda item: type(item).__name__)
def test_room_moves_as_far_as_the_item(item: Item) -> None:
    before, after = around([item]), around([moved(item, 7.0, -3.0)])

    assert before is not None and after is not None
    assert after == pytest.approx((before.x0 + 7, before.y0 - 3, before.x1 + 7, before.y1 - 3))


def test_a_dimension_keeps_its_form_when_it_is_moved() -> None:
    measure = Measure((0.0, 0.0), (40.0, 0.0), -10.0, False, "400", 400.0)

    ink = [moved(each, 7.0, -3.0) for each in measure_ink(measure)]
    of_moved = moved(measure, 7.0, -3.0)

    assert isinstance(of_moved, Measure)
    assert list(measure_ink(of_moved)) == ink


def test_nothing_takes_no_room() -> None:
    assert around([]) is None
