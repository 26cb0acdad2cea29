"""A sheet on paper: true to scale, every piece named, every cut numbered, no words over others."""

from dataclasses import replace
from itertools import combinations

import pytest

from model.cutting.record import Box, Layout, Region, Stock, Trim
from model.drawings.cut_layout import cut_layout
from model.drawings.cut_sheet import Room
from model.drawings.cut_told import Shown, sawn
from model.drawings.letters import text_box
from model.drawings.paper import Area, Drawing, Hatch, Point, Ring, Stroke, Text, grown, touches
from tests.model.drawings.sample_layout import SHEET, sheet, small_sheet

A4, SCREEN, SMALL = Room(277.0, 170.0), Room(160.0, 100.0), Room(110.0, 60.0)
NAMES = {"B1": "box side", "B3": "box front"}


def drawn(layout: Layout, room: Room = A4, **shown: object) -> Drawing:
    return cut_layout(layout, room, Shown(**{"names": NAMES, "title": "Sheet 1 of 3", **shown}))


def area(drawing: Drawing, about: str) -> Box:
    return next(each.box for each in drawing.areas() if each.about == about)


def words(drawing: Drawing) -> list[str]:
    return [text.words for text in drawing.texts()]


def test_a_piece_is_as_large_as_the_scale_says() -> None:
    drawing = drawn(small_sheet())

    box = area(drawing, "piece/B1-2")

    assert (box.x1 - box.x0) / drawing.scale == pytest.approx(900.0)
    assert (box.y1 - box.y0) / drawing.scale == pytest.approx(300.0)


@pytest.mark.parametrize("room", [A4, SCREEN, SMALL])
def test_the_drawing_fills_the_room_and_stays_inside(room: Room) -> None:
    drawing = drawn(sheet(), room)

    assert drawing.width <= room.width + 1e-9 and drawing.height <= room.height + 1e-9
    filled = (drawing.width / room.width, drawing.height / room.height)
    assert max(filled) == pytest.approx(1.0)


def test_a_scale_that_is_asked_for_is_kept() -> None:
    drawing = cut_layout(small_sheet(), A4, Shown(), scale=1 / 20)

    assert drawing.scale == 1 / 20
    box = area(drawing, "piece/B2-1")
    assert box.x1 - box.x0 == pytest.approx(35.0)


@pytest.mark.parametrize("room", [A4, SCREEN])
@pytest.mark.parametrize("all_named", [True, False])
def test_no_words_lie_on_others(room: Room, all_named: bool) -> None:
    drawing = drawn(sheet(), room, all_named=all_named)

    # A hair off each side: words may stand edge to edge.
    boxes = [(text.words, grown(text_box(text), -0.05)) for text in drawing.texts()]
    hidden = [(a, b) for (a, one), (b, other) in combinations(boxes, 2) if touches(one, other)]
    assert hidden == []


def test_words_stay_on_the_paper() -> None:
    drawing = drawn(sheet())

    for text in drawing.texts():
        box = text_box(text)
        assert box.x0 >= 0 and box.y0 >= 0, text
        assert box.x1 <= drawing.width and box.y1 <= drawing.height, text


def test_every_piece_is_named_or_told_with_its_neighbours() -> None:
    layout = sheet()
    drawing = drawn(layout)

    named = {item.about for item in drawing.texts() if item.about.startswith("piece/")}

    told = {f"piece/{each.name}" for each in layout.placed}
    # Runs of alike small pieces share one name, led to the first of them.
    assert told - named == {
        *(f"piece/U7-{n}" for n in range(2, 12)), "piece/U8-2", "piece/U8-3",
    } - named  # fmt: skip
    assert any(each.startswith("U7") for each in words(drawing))
    assert "U8, 3 pieces" in words(drawing)


def test_every_size_is_on_the_drawing() -> None:
    layout = sheet()

    said = " ".join(words(drawn(layout)))

    for each in layout.placed:
        assert f"{each.length:g} × {each.width:g}" in said, each.name


def test_a_large_piece_tells_its_part_too() -> None:
    assert "box side" in words(drawn(small_sheet()))


def test_sizes_are_in_the_makers_unit() -> None:
    inches = sheet(strips=[(304.8, [("B1", 1, 695.325)])])

    assert "27 3/8 × 12" in words(drawn(inches, unit="inch"))


def test_rough_sizes_are_told_as_near_as_anybody_saws_them() -> None:
    rough = sheet(strips=[(101.9, [("S1", 1, 1536.3)])])

    assert "1536 × 102" in words(drawn(rough, is_rough=True))
    # 60.48 in and 4.01 in, to the sixteenth
    assert "60 1/2 × 4" in words(drawn(rough, unit="inch", is_rough=True))
    assert "1536.3 × 101.9" in words(drawn(rough))


def test_each_cut_has_its_number_on_its_line() -> None:
    layout = small_sheet()
    numbers = (40, 41, 3, 7, 8, 5, 9)
    assert len(sawn(layout)) == len(numbers)

    drawing = drawn(layout, numbers=numbers)

    rings = [item for item in drawing.items if isinstance(item, Ring)]
    assert sorted(ring.about for ring in rings) == sorted(f"cut/{n}" for n in numbers)
    for ring in rings:
        lines = [item for item in drawing.about(ring.about) if isinstance(item, Stroke)]
        assert any(_is_on(ring.at, line.points[0], line.points[-1]) for line in lines)


def test_a_cut_runs_in_the_middle_of_its_kerf() -> None:
    """Between two pieces the blade leaves equal halves of 3.2 mm on both sides of the line."""
    layout = small_sheet()
    drawing = cut_layout(layout, A4, Shown(numbers=range(1, 8)), scale=1.0)
    between = next(
        number for number, region in enumerate(sawn(layout), 1)
        if region.low is not None and region.low.placed is not None
        and region.low.placed.name == "B1-1"
    )  # fmt: skip

    line = next(i for i in drawing.about(f"cut/{between}") if isinstance(i, Stroke))

    (x0, y0), (x1, y1) = line.points
    left, right = area(drawing, "piece/B1-1"), area(drawing, "piece/B1-2")
    assert x0 == x1 == pytest.approx(left.x1 + 1.6) == pytest.approx(right.x0 - 1.6)
    assert (y0, y1) == pytest.approx((left.y0, left.y1))


def _is_on(point: Point, start: Point, end: Point) -> bool:
    (x, y), (x0, y0), (x1, y1) = point, start, end
    off = (x1 - x0) * (y - y0) - (y1 - y0) * (x - x0)
    inside = min(x0, x1) - 1e-9 <= x <= max(x0, x1) + 1e-9
    return abs(off) < 1e-6 and inside and min(y0, y1) - 1e-9 <= y <= max(y0, y1) + 1e-9


def test_numbers_cover_neither_each_other_nor_words() -> None:
    drawing = drawn(sheet())

    rings = [item for item in drawing.items if isinstance(item, Ring) and item.blank]
    assert len(rings) == len(sawn(sheet()))
    boxes = [
        Box(r.at[0] - r.radius, r.at[1] - r.radius, r.at[0] + r.radius, r.at[1] + r.radius)
        for r in rings
    ]
    assert not any(touches(one, other) for one, other in combinations(boxes, 2))
    names = [text_box(t) for t in drawing.texts() if t.about.startswith("piece/")]
    assert not any(touches(grown(name, -0.3), box) for name in names for box in boxes)


def test_on_a_screen_crowded_numbers_are_left_out_and_nothing_is_led() -> None:
    many, few = drawn(sheet()), drawn(sheet(), SMALL, all_named=False)

    def count(drawing: Drawing) -> int:
        return sum(isinstance(item, Ring) and item.blank for item in drawing.items)

    assert count(few) < count(many) == len(sawn(sheet()))
    assert not any("pieces" in each for each in words(few))


def test_offcuts_are_hatched_and_sized_and_waste_is_hatched_closer() -> None:
    drawing = drawn(sheet())

    hatches = {item.about: item for item in drawing.items if isinstance(item, Hatch)}

    assert hatches["offcut/1"].spacing > hatches["waste"].spacing
    largest = sheet().offcuts[0]
    assert f"{largest.length:.0f} × {largest.width:.0f}" in words(drawing)


def test_no_hatching_runs_through_the_words_of_an_offcut() -> None:
    drawing = drawn(sheet())

    hatch = next(each for each in drawing.about("offcut/1") if isinstance(each, Hatch))
    texts = [each for each in drawing.about("offcut/1") if isinstance(each, Text)]

    assert texts
    for text in texts:
        x, y = text.at
        assert any(low[0] < x < high[0] and low[1] < y < high[1] for low, _, high, _ in hatch.holes)


def test_grain_runs_along_the_sheet_inside_its_pieces() -> None:
    layout = small_sheet()
    drawing = drawn(layout)

    grain = [i for i in drawing.items if isinstance(i, Stroke) and i.pen == "fine"]

    places = [area(drawing, f"piece/{each.name}") for each in layout.placed]
    assert len(grain) > 20
    for (x0, y0), (x1, y1) in (stroke.points for stroke in grain):
        assert y0 == y1 and x0 < x1
        assert any(b.x0 < x0 and x1 < b.x1 and b.y0 < y0 < b.y1 for b in places)


def test_stock_without_grain_shows_none() -> None:
    drawing = drawn(
        sheet(stock=replace(SHEET, has_grain=False), strips=[(300.0, [("B1", 1, 900.0)])])
    )

    assert not any(isinstance(i, Stroke) and i.pen == "fine" for i in drawing.items)


def test_a_bad_span_is_crossed_out() -> None:
    board = Stock(key="A", length=2000.0, width=200.0, bad=(Box(900.0, 0.0, 1000.0, 200.0),))
    layout = Layout(
        number=1, stock=board, tree=Region(x=0.0, y=0.0, length=2000.0, width=200.0, use="offcut")
    )

    drawing = cut_layout(layout, A4, Shown(), scale=0.1)

    crossed = [item for item in drawing.about("bad") if isinstance(item, Stroke)]
    assert len(crossed) == 3  # its edge and two diagonals
    assert any(abs(s.points[1][0] - s.points[0][0]) == pytest.approx(10.0) for s in crossed)


def test_what_is_cut_after_milling_is_dashed_and_has_no_number() -> None:
    layout = small_sheet()
    strip = layout.tree.high.high.low  # behind two trims, the first strip
    assert strip.cut == "crosscut"
    whole = replace(strip, stays_whole=True, row="F1")
    inner = replace(layout.tree.high.high, low=whole)
    tree = replace(layout.tree, high=replace(layout.tree.high, high=inner))
    waiting = Layout(number=1, stock=layout.stock, tree=tree)

    drawing = drawn(waiting)

    dashed = [i for i in drawing.items if isinstance(i, Stroke) and i.pen == "hidden"]
    assert len(dashed) == 2 and all(each.about == "later" for each in dashed)
    assert len(sawn(waiting)) == len(sawn(layout)) - 2


def test_a_room_too_small_for_lines_to_names_does_without() -> None:
    drawing = drawn(sheet(), SMALL)

    assert drawing.scale == drawn(sheet(), SMALL, all_named=False).scale


def test_overall_sizes_stand_at_two_edges() -> None:
    drawing = drawn(small_sheet())

    assert {"2440 mm", "1220 mm"} <= set(words(drawing))
    assert [text.words for text in drawing.texts() if text.turned and "mm" in text.words] == [
        "1220 mm"
    ]


def test_the_place_a_cut_saws_apart_can_be_lit() -> None:
    drawing = drawn(small_sheet(), numbers=(1, 2, 3, 4, 5, 6, 7))

    first = area(drawing, "blank/1")

    assert (first.x1 - first.x0) / drawing.scale == pytest.approx(2440.0)
    places = [each.about for each in drawing.items if isinstance(each, Area)]
    assert places.index("blank/1") < places.index("blank/2") < places.index("piece/B1-1")


def test_a_drawing_made_twice_is_the_same() -> None:
    assert drawn(sheet()) == drawn(sheet())


def test_trims_of_one_edge_only_are_drawn() -> None:
    layout = sheet(stock=replace(SHEET, trim=Trim(lower=6.0)), strips=[(300.0, [("B1", 1, 900.0)])])

    drawing = drawn(layout)

    waste = [item for item in drawing.items if isinstance(item, Hatch) and item.about == "waste"]
    assert any(each.outline[2][1] - each.outline[0][1] < 1.0 for each in waste)
