"""What is measured in a long view: along it from the near end, up it from the lower edge."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from model.drawings.dimensioning.runs import (
    Run,
    chain,
    equal_steps,
    overall,
    span,
    steps_words,
)
from model.drawings.dimensioning.told import Told
from model.drawings.dimensioning.words_room import AIR
from model.drawings.letters import words_width
from model.drawings.measures import WORDS
from model.drawings.paper import Point
from model.drawings.part_sheet.record import HAIR, Group
from model.drawings.part_sheet.shown import Shown
from model.part import Face
from model.units import Mm

MOST_CHAINED = 5  # places that are told in a chain though words are led off from narrow spans
MOST_FROM_DATUM = 16  # places that are each told from the datum: each takes a row of its own


def runs_below(shown: Shown) -> Iterator[Run]:
    """The whole length with the tenons at its ends, the taper, and every cut and hole."""
    if shown.is_main:
        yield from _whole_length(shown)
    for group in shown.groups:
        yield from _places(shown, group, axis=0)


def runs_beside(shown: Shown) -> Iterator[Run]:
    """Every cut and hole from the lower edge."""
    for group in shown.groups:
        yield from _places(shown, group, axis=1)


def whole_width(shown: Shown) -> Run:
    """From edge to edge at the right."""
    wide, high = shown.size
    return span((wide, 0.0), (wide, high), shown.part.size[1], shown.told, level=1)


def _whole_length(shown: Shown) -> Iterator[Run]:
    part, told = shown.part, shown.told
    length = part.size[0]
    near = {end.length for end in shown.ends if end.face is Face.NEAR}
    far = {length - end.length for end in shown.ends if end.face is Face.FAR}
    stops = [0.0, *sorted(near | far), length]
    points = [shown.paper(stop, 0.0) for stop in stops]
    whole = _rising(chain(points, [b - a for a, b in pairwise(stops)], told), axis=0)
    if len(stops) > 2:
        yield whole
    yield overall(whole, told)
    if part.taper:
        yield _from_datum(shown, part.taper_length, 0.0, axis=0)


def _places(shown: Shown, group: Group, axis: int) -> Iterator[Run]:
    """Places are told from the datum, or in a chain that starts at it where that is as clear."""
    size = shown.part.size
    if group.is_through(axis, size) or group.face.axis == 0:
        return
    places = group.places(axis, size)
    if len(places) > 2:
        series = _series(shown, group, places, axis)
        if len(places) > MOST_FROM_DATUM or _is_clear_chain(series, len(places), axis):
            yield series
            return
        even = dict(_equal_runs(shown, group, places, axis))
        yield from even.values()
        places = [
            at for k, at in enumerate(places) if not any(low < k < high for low, high in even)
        ]
    for at in places:
        yield _from_datum(shown, at, _beside(shown, group, at, axis), axis)


def _is_clear_chain(series: Run, places: int, axis: int) -> bool:
    """Whether a chain can be read and added up: its words fit between their ends, or they are few,
    and it is of equal steps or told without rounding.
    """
    ends = [point[axis] for point in series.points]
    inner = list(zip(pairwise(ends), series.words, strict=True))[1:-1]
    has_room = all(_has_room(words, b - a) for (a, b), words in inner)
    is_even = len(series.sizes) < places
    return (has_room and is_even) or (
        (has_room or places <= MOST_CHAINED) and not any("~" in words for words in series.words)
    )


def _equal_runs(
    shown: Shown, group: Group, places: Sequence[Mm], axis: int
) -> Iterator[tuple[tuple[int, int], Run]]:
    """Those that follow at equal steps that can be told truly, with the first and last of them;
    what is told adds up with what is told from the datum to where they begin.
    """
    for first, last in _steps(places, shown.told):
        ends = (places[first], places[last])
        points = [_point(shown, at, _beside(shown, group, at, axis), axis) for at in ends]
        size = ends[1] - ends[0]
        words = shown.told.row((ends[0], size), is_closed=False)[1]
        told = steps_words(last - first, size, words, shown.told)
        room = abs(points[1][axis] - points[0][axis])
        if last - first > 1 and "~" not in told and _has_room(told, room):
            yield (first, last), _rising(Run(tuple(points), (size,), (told,)), axis)


def _has_room(words: str, room: Mm) -> bool:
    """Whether words stand within a span of that length on paper."""
    return words_width(words, WORDS) + 2 * AIR <= room


def _from_datum(shown: Shown, at: Mm, beside: Mm, axis: int) -> Run:
    points = (shown.paper(0.0, 0.0), _point(shown, at, beside, axis))
    return _rising(Run(points, (at,), (shown.told.size(at),)), axis)


def _series(shown: Shown, group: Group, places: Sequence[Mm], axis: int) -> Run:
    stops = [0.0, *places]
    steps = [(0, 1), *((a + 1, b + 1) for a, b in _steps(places, shown.told))]
    sizes = [stops[b] - stops[a] for a, b in steps]
    ends = [stops[b] for _, b in steps]
    points = [_point(shown, at, _beside(shown, group, at, axis), axis) for at in ends]
    plain = shown.told.row(sizes, is_closed=False)
    words = [
        steps_words(b - a, size, each, shown.told)
        for (a, b), size, each in zip(steps, sizes, plain, strict=True)
    ]
    return _rising(Run((shown.paper(0.0, 0.0), *points), tuple(sizes), tuple(words)), axis)


def _steps(places: Sequence[Mm], told: Told) -> Iterator[tuple[int, int]]:
    """Equal spans as one; two whose size cannot be told truly are as short to tell singly."""
    for first, last in equal_steps(places):
        if last - first == 2 and "~" in told.size(places[first + 1] - places[first]):
            yield from ((first, first + 1), (first + 1, last))
        else:
            yield first, last


def _point(shown: Shown, at: Mm, beside: Mm, axis: int) -> Point:
    return shown.paper(at, beside) if axis == 0 else shown.paper(beside, at)


def _beside(shown: Shown, group: Group, at: Mm, axis: int) -> Mm:
    """Where the leading line to a place starts, on the other axis: at its nearest spot."""
    up = shown.look.up
    own, other = (0, up) if axis == 0 else (up, 0)
    near = [s for s in group.spots if s.low[own] - HAIR <= at <= s.high[own] + HAIR]
    starts = [s.middle[other] if group.shape == "hole" else s.low[other] for s in near]
    is_far = shown.look.up_sign < 0 if axis == 0 else shown.look.is_turned
    return max(starts) if is_far else min(starts)


def _rising(run: Run, axis: int) -> Run:
    """In rising order on paper: the near end may lie at the right, the lower edge on top."""
    if run.points[0][axis] <= run.points[-1][axis]:
        return run
    return Run(run.points[::-1], run.sizes[::-1], run.words[::-1], run.level)
