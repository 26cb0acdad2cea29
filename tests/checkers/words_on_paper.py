"""Whether the words of a drawing can be read: none on another, none struck through by a line."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from itertools import combinations, pairwise

from model.cutting.record import Box
from model.drawings.letters import text_box, words_width
from model.drawings.measures import inked
from model.drawings.paper import Item, Measure, Point, Stroke, Text


def texts_that_overlap(items: Iterable[Item]) -> list[tuple[str, str]]:
    """Pairs of words whose boxes share room."""
    boxed = [(text_box(text), text.words) for text in _texts(items)]
    return [(a[1], b[1]) for a, b in combinations(boxed, 2) if _share_room(a[0], b[0])]


def words_with_lines_through(items: Iterable[Item]) -> list[str]:
    """Words whose letters, from baseline to capital height, a line runs through."""
    all_items = list(inked(items))
    letters = [(_letters(text), text.words) for text in _texts(all_items)]
    strokes = [item for item in all_items if isinstance(item, Stroke)]
    segments = [pair for stroke in strokes for pair in pairwise(stroke.points)]
    return [words for box, words in letters if any(_crosses(box, *each) for each in segments)]


def words_out_of_order(items: Iterable[Item]) -> Iterator[tuple[str, str]]:
    """Words of dimensions on one line that do not follow each other as their spans do."""
    lines: dict[tuple[bool, float], list[Measure]] = {}
    for item in items:
        if isinstance(item, Measure) and item.words_at is not None:
            lines.setdefault((item.upright, round(item.line, 6)), []).append(item)
    for (upright, _), row in lines.items():
        axis = 1 if upright else 0
        placed = sorted((m.start[axis] + m.end[axis], (m.words_at or m.start)[axis], m.words)
                        for m in row)  # fmt: skip
        yield from ((a[2], b[2]) for a, b in pairwise(placed) if a[1] >= b[1])


def _texts(items: Iterable[Item]) -> Iterator[Text]:
    return (item for item in inked(items) if isinstance(item, Text))


def _letters(text: Text) -> Box:
    long, (x, y), half = words_width(text.words, text.height, text.bold), text.at, text.height / 2
    share = {"left": 0.0, "middle": 0.5, "right": 1.0}[text.anchor]
    if text.turned:
        return Box(x - half, y - share * long, x + half, y + (1 - share) * long)
    return Box(x - share * long, y - half, x + (1 - share) * long, y + half)


def _share_room(one: Box, other: Box) -> bool:
    return one.x0 < other.x1 and other.x0 < one.x1 and one.y0 < other.y1 and other.y0 < one.y1


def _crosses(box: Box, start: Point, end: Point) -> bool:
    """Liang and Barsky's clipping of a line at a box: whether some of it lies inside."""
    first, last = 0.0, 1.0
    for axis, low, high in ((0, box.x0, box.x1), (1, box.y0, box.y1)):
        step = end[axis] - start[axis]
        if abs(step) < 1e-12:
            if not low < start[axis] < high:
                return False
            continue
        ends = sorted(((low - start[axis]) / step, (high - start[axis]) / step))
        first, last = max(first, ends[0]), min(last, ends[1])
    return last - first > 1e-9
