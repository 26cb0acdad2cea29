"""Places of screws along a part, clear of what already lies in the wood there."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence

from model.units import Mm, Places, Spans

MORE_SCREWS = 8  # so many numbers of screws are tried, from the fewest on
DUST: Mm = 1e-6


def joined(taken: Iterable[tuple[Mm, Mm]]) -> Spans:
    """The same stretches in rising order, those that overlap as one."""
    found: list[tuple[float, float]] = []
    for low, high in sorted(taken):
        if found and low <= found[-1][1]:
            found[-1] = (found[-1][0], max(high, found[-1][1]))
        else:
            found.append((float(low), float(high)))
    return tuple(found)


def clear_place(at: Mm, taken: Spans, low: Mm, high: Mm) -> Mm:
    """The place between `low` and `high` nearest to `at` that is not inside a `taken` stretch.

    `taken` as `joined` gives them. `at` itself, where none is clear.
    """
    ends = (end for span in taken for end in span)
    tried = sorted((at, *ends), key=lambda each: abs(each - at))
    return next((x for x in tried if low <= x <= high and is_clear(x, taken)), at)


def is_clear(at: Mm, taken: Spans) -> bool:
    """Whether a place lies inside none of the stretches."""
    return not any(low + DUST < at < high - DUST for low, high in taken)


def between_marks(first: Mm, last: Mm, marks: Places, taken: Spans, most: Mm, near: Mm) -> Places:
    """The fewest places from `first` to `last` that stand in the middle between two marks, or
    share that room evenly, at most `most` apart and at least `near`; none where that cannot be.
    """
    for finer in range(2):
        spots = [first, last]
        for a, b in zip(marks, marks[1:], strict=False):
            count = max(1, math.ceil((b - a) / most - DUST)) + finer
            spots += (a + (b - a) * (i + 0.5) / count for i in range(count))
        clear = {clear_place(at, taken, first, last) for at in spots}
        found = _fewest(sorted(at for at in clear if is_clear(at, taken)), most, near)
        if found:
            return found
    return ()


def _fewest(spots: Sequence[Mm], most: Mm, near: Mm) -> Places:
    """The fewest of these, first and last among them, whose gaps keep within the bounds; of alike
    many those with the most even gaps.
    """
    best: list[tuple[int, float, Places]] = [(1, 0.0, (spots[0],))] if spots else []
    for at in spots[1:]:
        reached = ((each, at - each[2][-1]) for each in best)
        ways = [
            (each[0] + 1, each[1] + gap**2, (*each[2], at))
            for each, gap in reached
            if near - DUST <= gap <= most + DUST
        ]
        if ways:
            best.append(min(ways))
    return best[-1][2] if best and best[-1][2][-1] == spots[-1] else ()


def evenly_clear(first: Mm, last: Mm, taken: Spans, most: Mm, near: Mm) -> Places:
    """Evenly from `first` to `last`, each moved as little as keeps it clear, at most `most` apart
    and at least `near`.

    Where no number of them does, those whose gaps come nearest to these bounds.
    """

    def beyond(places: Places) -> Mm:
        gaps = [b - a for a, b in zip(places, places[1:], strict=False)]
        return max(max(gaps) - most, near - min(gaps), DUST) if gaps else DUST

    return min(_tries(first, last, taken, most), key=beyond)


def _tries(first: Mm, last: Mm, taken: Spans, most: Mm) -> Iterator[Places]:
    fewest = max(1, math.ceil((last - first) / most - DUST))
    for gaps in range(fewest, fewest + MORE_SCREWS):
        even = (first + (last - first) * i / gaps for i in range(gaps + 1))
        yield tuple(sorted({clear_place(at, taken, first, last) for at in even}))
