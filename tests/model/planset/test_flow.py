"""Lines shared out to pages: nothing lost, nothing twice, and what belongs together stays so."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from hypothesis import given, settings
from hypothesis import strategies as st

from model.drawings.paper import Text
from model.planset.flow import Column, Line, columns, heading, labelled, paragraph, points
from model.planset.letters import BODY, leading

PAGE = 60.0
ROOM = 1e-6  # sums of heights


def line(name: int, height: float, keeps: bool, heads: tuple[Line, ...]) -> Line:
    return Line(height, (Text((0.0, 0.0), str(name), BODY),), keeps=keeps, heads=heads)


@st.composite
def texts(draw: st.DrawFn) -> list[Line]:
    """Lines with words and gaps, some of them kept to the next, some below a head."""
    head = (Line(draw(st.floats(1, 8)), (Text((0.0, 0.0), "head", BODY),), keeps=True),)
    made: list[Line] = []
    for name in range(draw(st.integers(0, 40))):
        height, keeps = draw(st.floats(0.5, 25)), draw(st.booleans())
        if draw(st.integers(0, 4)):
            made.append(line(name, height, keeps, head if draw(st.booleans()) else ()))
        else:
            made.append(Line(height, keeps=keeps))
    return made


def named(lines: Sequence[Line]) -> list[str]:
    return [text.words for each in lines for text in each.items if isinstance(text, Text)]


@given(texts())
def test_every_line_stands_on_one_page_in_its_order(lines: list[Line]) -> None:
    told = [name for page in columns(lines, PAGE) for name in named(page.lines) if name != "head"]

    assert told == named(lines)


@given(texts())
def test_no_page_is_overfull(lines: list[Line]) -> None:
    assert all(page.height <= PAGE + ROOM for page in columns(lines, PAGE))


@given(texts())
def test_what_keeps_to_the_next_line_does_unless_no_page_is_so_high(lines: list[Line]) -> None:
    pages = columns(lines, PAGE)

    for page, after in pairwise(pages):
        if page.lines[-1].keeps:
            assert group_height(lines, page.lines[-1]) + heads_height(lines) > PAGE
        assert not all(each.is_blank for each in after.lines)


def group_height(lines: Sequence[Line], one: Line) -> float:
    """Of the lines that are kept together around one of them."""
    at = next(n for n, each in enumerate(lines) if each is one)
    low = at
    while low and lines[low - 1].keeps:
        low -= 1
    high = at
    while lines[high].keeps and high + 1 < len(lines):
        high += 1
    return sum(each.height for each in lines[low : high + 1])


def heads_height(lines: Sequence[Line]) -> float:
    return max((head.height for each in lines for head in each.heads), default=0.0)


@given(texts())
def test_a_head_stands_above_what_goes_on_below_it(lines: list[Line]) -> None:
    for page in columns(lines, PAGE)[1:]:
        first = next(n for n, each in enumerate(page.lines) if named([each]) != ["head"])
        assert page.lines[:first] == page.lines[first].heads


@given(texts())
@settings(max_examples=settings().max_examples * 3 // 10)
def test_a_page_break_is_needed(lines: list[Line]) -> None:
    """What begins a page had no room at the foot of the page before."""
    for page, after in pairwise(columns(lines, PAGE)):
        own = [each for each in after.lines if named([each]) != ["head"]]
        block = list(until_free(own))
        assert page.height + sum(each.height for each in block) > PAGE - ROOM or any(
            each.keeps for each in page.lines[-1:]
        )


def until_free(lines: Sequence[Line]) -> Iterator[Line]:
    for each in lines:
        yield each
        if not each.keeps:
            return


def test_a_gap_at_the_end_makes_no_page() -> None:
    full = line(1, PAGE, False, ())

    assert [page.lines for page in columns([full, Line(2.0)], PAGE)] == [(full,)]


def test_a_heading_goes_over_to_its_words() -> None:
    start = line(0, PAGE - 2 * leading(BODY), False, ())
    lines = [start, *heading("Cautions", 100.0), *paragraph("Wear eye protection.", 100.0)]

    first, second = columns(lines, PAGE)

    assert named(first.lines) == ["0"]
    assert named(second.lines) == ["Cautions", "Wear eye protection."]


def test_points_are_counted_and_hang() -> None:
    items, _ = Column(tuple(points(["Saw.", "Plane."], 80.0, sign="1"))).at((10.0, 200.0))
    told = [(item.words, item.at[0]) for item in items if isinstance(item, Text)]

    assert told == [("1", 10.0), ("Saw.", 14.0), ("2", 10.0), ("Plane.", 14.0)]


def test_a_label_stands_once_beside_its_first_line() -> None:
    lines = list(labelled([("Note", "wood moves " * 20)], 60.0, 20.0))

    assert len(lines) > 2
    assert [len(each.items) for each in lines] == [2] + [1] * (len(lines) - 1)


def test_lines_stand_below_each_other() -> None:
    column = Column((line(1, 5.0, False, ()), line(2, 7.0, False, ())))
    items, _ = column.at((3.0, 100.0))

    assert [item.at for item in items if isinstance(item, Text)] == [(3.0, 100.0), (3.0, 95.0)]
    assert column.height == 12.0
