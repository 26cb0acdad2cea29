"""Dimensions in rows outside a view. Practice: ISO 129-1, from memory."""

from __future__ import annotations

import random
from collections.abc import Callable, Sequence
from itertools import combinations, pairwise

import pytest

from model.cutting.record import Box
from model.drawings.dimensioning.rows import rows
from model.drawings.dimensioning.runs import (
    Run,
    Side,
    chain,
    equal_steps,
    overall,
    span,
    steps_words,
)
from model.drawings.dimensioning.told import Told
from model.drawings.paper import Item, Measure, Stroke
from tests.checkers.words_on_paper import texts_that_overlap, words_with_lines_through

VIEW = Box(0, 0, 120, 30)
MM = Told("mm")


def level(*places: float, scale: float = 10.0) -> Run:
    points = [(x, 0.0) for x in places]
    return chain(points, [scale * (b - a) for a, b in pairwise(places)], MM)


def measures(items: tuple[Item, ...]) -> list[Measure]:
    return [item for item in items if isinstance(item, Measure)]


def test_the_shortest_stands_nearest_and_the_whole_farthest() -> None:
    whole = span((0.0, 0.0), (40.0, 0.0), 400.0, MM, level=1)
    found = rows(VIEW, "below", [whole, level(0, 90), level(0, 20)])

    lines = {item.size: item.line for item in measures(found.items)}
    assert lines[200] > lines[900] > lines[400]  # below the view: nearest is highest
    assert lines[200] == pytest.approx(-10)


def test_rows_stand_seven_to_eight_apart() -> None:
    found = rows(VIEW, "right", [_upright(0, 8), _upright(0, 16), _upright(0, 30)])

    lines = sorted(item.line for item in measures(found.items))
    assert lines[0] == pytest.approx(VIEW.x1 + 10)
    assert all(7 <= b - a <= 8 for a, b in pairwise(lines))


def _upright(low: float, high: float) -> Run:
    return span((0.0, low), (0.0, high), 10 * (high - low), MM)


def test_spans_beside_each_other_share_a_row() -> None:
    found = rows(VIEW, "below", [level(0, 30), level(40, 80)])

    assert len({item.line for item in measures(found.items)}) == 1


def test_the_sum_of_a_chain_is_the_whole_beyond_it() -> None:
    run = level(0, 9.66, 15.93, 100, scale=1.0)
    whole = overall(run, MM)

    found = measures(rows(VIEW, "above", [run, whole]).items)

    parts = [item for item in found if item.line < max(m.line for m in found)]
    assert sum(float(item.words.lstrip("~")) for item in parts) == pytest.approx(100)


def test_what_is_measured_twice_is_told_once() -> None:
    assert len(measures(rows(VIEW, "below", [level(0, 30), level(0, 30)]).items)) == 1


def test_words_that_do_not_fit_stand_beside_their_ticks() -> None:
    found = measures(rows(VIEW, "below", [level(0, 1.0, scale=123.0)]).items)

    assert found[0].words_at is not None
    assert not 0 < found[0].words_at[0] < 1


@pytest.mark.parametrize("side", ["below", "above", "left", "right"])
def test_no_words_touch_words_however_tight(side: Side) -> None:
    draw = random.Random(17)
    for _ in range(60):
        runs = [_drawn(draw, side) for _ in range(draw.randint(1, 6))]

        assert texts_that_overlap(rows(VIEW, side, runs).items) == []


@pytest.mark.parametrize("side", ["below", "above", "left", "right"])
def test_lines_run_through_no_words(side: Side) -> None:
    """As long as leading lines leave room for a word between them at all."""
    draw = random.Random(18)
    for _ in range(60):
        runs = [_drawn(draw, side) for _ in range(draw.randint(1, 2))]

        assert words_with_lines_through(rows(VIEW, side, runs).items) == []


@pytest.mark.parametrize("side", ["below", "above", "left", "right"])
def test_words_stand_in_the_order_of_their_spans(side: Side) -> None:
    """However narrow the spans are: a chain that is read in another order is sawn in it."""
    draw, axis = random.Random(19), 0 if side in ("below", "above") else 1
    for _ in range(80):
        runs = [_drawn(draw, side) for _ in range(draw.randint(1, 4))]
        found = measures(rows(VIEW, side, runs).items)

        for line in {item.line for item in found}:
            row = sorted((item for item in found if item.line == line), key=_middle(axis))
            words = [each.words_at[axis] for each in row if each.words_at]
            assert len(words) == len(row) and words == sorted(words)


@pytest.mark.parametrize("side", ["below", "above", "left", "right"])
def test_no_line_to_words_crosses_another(side: Side) -> None:
    draw = random.Random(20)
    for _ in range(80):
        runs = [_drawn(draw, side) for _ in range(draw.randint(1, 4))]
        leaders = [item for item in rows(VIEW, side, runs).items if isinstance(item, Stroke)]

        assert not any(_cross(a.points, b.points) for a, b in combinations(leaders, 2))


def test_narrow_spans_of_an_end_are_read_upwards() -> None:
    """The rails of a side at 1 : 24, mm on paper: 3/4, 2 1/4, 8 1/4 and 4 1/2 in."""
    inch = 25.4 / 24
    places = [0.0, 0.75, 3.0, 11.25, 15.75]
    points = [(0.0, at * inch) for at in places]
    run = chain(points, [25.4 * (b - a) for a, b in pairwise(places)], Told("inch"))
    whole = span((0.0, 0.0), (0.0, 48 * inch), 48 * 25.4, Told("inch"), level=1)
    found = rows(Box(0, 0, 90, 48 * inch), "left", [run, whole]).items

    upwards = sorted(measures(found)[:4], key=lambda item: item.words_at[1] if item.words_at else 0)
    assert [item.words for item in upwards] == ['3/4"', '2 1/4"', '8 1/4"', '4 1/2"']


def _middle(axis: int) -> Callable[[Measure], float]:
    return lambda item: item.start[axis] + item.end[axis]


def _cross(one: Sequence[tuple[float, float]], other: Sequence[tuple[float, float]]) -> bool:
    """Whether each line has an end on either side of the other."""
    return _parts(*one, *other) and _parts(*other, *one)


def _parts(
    a: tuple[float, float],
    b: tuple[float, float],
    c: tuple[float, float],
    d: tuple[float, float],
) -> bool:
    turns = [(b[0] - a[0]) * (e[1] - a[1]) - (b[1] - a[1]) * (e[0] - a[0]) for e in (c, d)]
    return min(turns) < -1e-9 and max(turns) > 1e-9


def _drawn(draw: random.Random, side: Side) -> Run:
    long = 120 if side in ("below", "above") else 30
    places = sorted({0.0, *(round(draw.uniform(1, long), 1) for _ in range(draw.randint(1, 4)))})
    edge = {"below": 0.0, "above": 30.0, "left": 0.0, "right": 120.0}[side]
    is_level = side in ("below", "above")
    points = [(x, edge) if is_level else (edge, x) for x in places]
    return chain(points, [10 * (b - a) for a, b in pairwise(places)], MM)


def test_the_box_holds_all_ink() -> None:
    found = rows(VIEW, "left", [_upright(0, 2), _upright(0, 30)])

    assert found.box.x0 < -17
    assert found.box.y0 <= 0 and found.box.y1 >= 30


def test_words_keep_clear_of_those_of_another_side() -> None:
    below = rows(VIEW, "below", [level(0, 2, scale=1234.0)])
    left = rows(VIEW, "left", [_upright(0, 2), _upright(0, 30)], taken=below.words)

    assert texts_that_overlap((*below.items, *left.items)) == []


def test_equal_spans_that_follow_each_other_are_one() -> None:
    assert equal_steps([10, 60, 110, 160, 200]) == [(0, 3), (3, 4)]


def test_equal_spans_are_told_with_their_sum() -> None:
    assert steps_words(13, 1950, "1950", MM) == "13 × 150 = 1950"


def test_a_pitch_that_cannot_be_told_truly_is_not_multiplied() -> None:
    assert steps_words(13, 1999.5, "1999.5", MM) == "13 equal = 1999.5, each ~153.8"
