"""Tables: columns that have room, rows that keep their words and lead to pages."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from model.drawings.letters import text_box
from model.drawings.paper import Fill, Text
from model.planset.flow import Line, columns
from model.planset.table import Head, Row, table

ROOM = 1e-6
AIR = 0.4  # mm above and below letters in their boxes

HEADS = (Head("Mark"), Head("Part"), Head("Qty", "right"), Head("Note", "middle"))
CELL = st.lists(st.text("abcdefghij", min_size=1, max_size=14), max_size=12).map(" ".join)
ROWS = st.lists(st.tuples(CELL, CELL, CELL, CELL).map(Row), min_size=1, max_size=8)
WIDTHS = st.floats(90, 180)


def words(line: Line) -> list[Text]:
    return [item for item in line.items if isinstance(item, Text)]


@given(ROWS, WIDTHS)
def test_words_stay_in_the_table(rows: list[Row], width: float) -> None:
    for line in table(HEADS, rows, width):
        for text in words(line):
            box = text_box(text)
            assert box.x0 >= -ROOM and box.x1 <= width + ROOM
            assert -line.height - AIR <= box.y0 and box.y1 <= AIR


@given(ROWS, WIDTHS)
def test_no_cell_runs_into_the_next(rows: list[Row], width: float) -> None:
    for line in table(HEADS, rows, width):
        boxes = sorted((text_box(text) for text in words(line)), key=lambda box: (box.y0, box.x0))
        for one, other in zip(boxes, boxes[1:], strict=False):
            assert other.y0 > one.y0 + ROOM or one.x1 <= other.x0 + ROOM


@given(ROWS, WIDTHS)
def test_every_cell_is_told_whole(rows: list[Row], width: float) -> None:
    _, *lines = table(HEADS, rows, width)
    for row, line in zip(rows, lines, strict=False):
        told = "".join(text.words.replace(" ", "") for text in words(line))
        assert sorted(told) == sorted("".join(row.cells).replace(" ", ""))


def test_tables_that_are_alike_line_up() -> None:
    some, others = [Row(("B1", "rail", "2", "wide"))], [Row(("B10", "mid stile", "12", ""))]
    alike = [*some, *others]
    heads = [next(iter(table(HEADS, each, 120.0, alike=alike))) for each in (some, others)]

    assert words(heads[0]) == words(heads[1])


def test_the_head_stands_on_every_page() -> None:
    rows = [Row((f"B{n}", "rail", "2", "")) for n in range(40)]
    pages = columns(list(table(HEADS, rows, 120.0)), 60.0)

    assert len(pages) > 2
    for page in pages:
        assert [text.words for text in words(page.lines[0])] == ["Mark", "Part", "Qty", "Note"]
        assert any(isinstance(item, Fill) for item in page.lines[0].items)
        assert len(page.lines) > 1, "a head stands alone"
    told = [words(line)[0].words for page in pages for line in page.lines if words(line)]
    assert [each for each in told if each != "Mark"] == [f"B{n}" for n in range(40)]


def test_a_row_leads_to_its_page_over_its_whole_width() -> None:
    _, row, _ = table(HEADS, [Row(("B1", "rail", "2", ""), to="part/B1")], 120.0)
    (link,) = row.links

    assert link.to == "part/B1"
    assert (link.box.x0, link.box.y1, link.box.y0) == (0.0, 0.0, -row.height)
    assert abs(link.box.x1 - 120.0) < ROOM
