"""The ink of a dimension."""

from __future__ import annotations

from model.drawings.measures import inked, measure_ink
from model.drawings.paper import Measure, Stroke, Text


def test_a_level_dimension_spans_what_it_measures() -> None:
    measure = Measure((40, 100), (120, 100), 90, False, "800", 800)
    line, *rest, words = measure_ink(measure)
    assert line == Stroke(((40, 90), (120, 90)))
    assert isinstance(words, Text) and words.at[0] == 80 and words.at[1] > 90
    leading = [
        each
        for each in rest
        if isinstance(each, Stroke) and len(set(x for x, _ in each.points)) == 1
    ]
    assert [each.points[0][0] for each in leading] == [40, 120]
    assert all(each.points[1][1] < 90 and each.points[0][1] < 100 for each in leading)


def test_an_upright_one_reads_from_the_right() -> None:
    *_, words = measure_ink(Measure((40, 100), (40, 160), 30, True, "600", 600))
    assert isinstance(words, Text) and words.turned and words.at[0] < 30


def test_words_beside_their_ends_have_the_line_under_them() -> None:
    line, *_ = measure_ink(Measure((40, 100), (43, 100), 90, False, "3", 3, words_at=(50, 92)))
    assert isinstance(line, Stroke)
    assert line.points[0] == (40, 90) and line.points[1][0] > 50


def test_words_that_are_led_off_have_no_line_under_them() -> None:
    """Another dimension's words may stand where it would run."""
    line, *_ = measure_ink(Measure((40, 100), (43, 100), 90, False, "3", 3, words_at=(50, 86)))
    assert isinstance(line, Stroke)
    assert line.points == ((40, 90), (43, 90))


def test_a_measure_on_the_edge_needs_no_leading_line() -> None:
    drawn = list(measure_ink(Measure((40, 90), (120, 90), 90, False, "800", 800)))
    assert len(drawn) == 4  # the line, two ticks, the words


def test_other_items_pass_as_they_are() -> None:
    stroke = Stroke(((0, 0), (1, 1)))
    assert list(inked([stroke])) == [stroke]
