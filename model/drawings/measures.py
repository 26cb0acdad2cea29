"""The ink of a dimension: line and slanting ticks, words, and the lines that lead to it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from model.drawings.letters import words_width
from model.drawings.paper import Item, Measure, Point, Stroke, Text
from model.units import Mm

WORDS: Mm = 2.5  # height of their capitals
TICK: Mm = 0.9  # half of it, along each axis
PAST: Mm = 1.2  # how far a leading line runs past the dimension
GAP: Mm = 0.8  # between what is measured and its leading line
ABOVE = 0.95  # from the line to the middle of its words, in heights of a capital


def inked(items: Iterable[Item]) -> Iterator[Item]:
    """The same items with every dimension as strokes and words: for players that know none."""
    for item in items:
        if isinstance(item, Measure):
            yield from measure_ink(item)
        else:
            yield item


def measure_ink(measure: Measure) -> Iterator[Item]:
    """The strokes and words of one dimension. Words on its line beyond an end get a line to it;
    words that are led off stand farther out.
    """
    ends = (measure.start, measure.end)
    along = 1 if measure.upright else 0
    low, high = sorted(point[along] for point in ends)
    words_at = measure.words_at or default_words_at(measure)
    reach = _reach(measure, words_at)
    yield Stroke((_at(measure, min(low, reach[0])), _at(measure, max(high, reach[1]))),
                 "narrow", measure.about)  # fmt: skip
    for point in ends:
        yield from _end(measure, point)
    turned = measure.upright
    yield Text(words_at, measure.words, WORDS, turned=turned, about=measure.about)


def default_words_at(measure: Measure) -> Point:
    """Half-way along, above a level line or left of an upright one."""
    (x0, y0), (x1, y1) = measure.start, measure.end
    if measure.upright:
        return (measure.line - ABOVE * WORDS, (y0 + y1) / 2)
    return ((x0 + x1) / 2, measure.line + ABOVE * WORDS)


def _reach(measure: Measure, words_at: Point) -> tuple[Mm, Mm]:
    """How far the line must run for words that stand on it beyond an end, else not at all."""
    along = 1 if measure.upright else 0
    middle, half = words_at[along], words_width(measure.words, WORDS) / 2
    low, high = sorted((measure.start[along], measure.end[along]))
    is_led_off = abs(words_at[1 - along] - measure.line) > 1.01 * ABOVE * WORDS
    if is_led_off or low <= middle <= high:
        return low, high
    return (middle - half, high) if middle < low else (low, middle + half)


def _end(measure: Measure, point: Point) -> Iterator[Stroke]:
    x, y = _at(measure, point[1 if measure.upright else 0])
    near = point[0] if measure.upright else point[1]
    line = measure.line
    way = 1.0 if line > near else -1.0
    if abs(line - near) > GAP:
        first, last = near + way * GAP, line + way * PAST
        ends = ((first, y), (last, y)) if measure.upright else ((x, first), (x, last))
        yield Stroke(ends, "narrow", measure.about)
    yield Stroke(((x - TICK, y - TICK), (x + TICK, y + TICK)), "narrow", measure.about)


def _at(measure: Measure, along: Mm) -> Point:
    """The point of its line so far along."""
    return (measure.line, along) if measure.upright else (along, measure.line)
