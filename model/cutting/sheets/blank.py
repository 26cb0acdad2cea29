"""A sheet before any piece is laid on it: edges trimmed, bad spans cut out, clean rooms left.

All numbers are those of `Whole`: every extent counts a kerf behind it. A frame is the tree of
these first cuts. Its parts lie side by side along the cut's way; what they leave is waste.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import islice
from typing import NamedTuple

from model.cutting.record import Way
from model.cutting.whole import Sheet, Span, Whole

MOST_FRAMES = 8  # ways to cut around bad spans that are tried for one kind of stock


class Room(NamedTuple):
    """Clean wood: `at` counts the rooms of a blank in the order of its frame."""

    at: int


class Frame(NamedTuple):
    """Cuts of one way in a row; a part of None is waste."""

    way: Way
    parts: tuple[tuple[int, Frame | Room | None], ...]


class Blank(NamedTuple):
    """A way to make clean rooms of a sheet. `rooms` are their extents (along x, along y).

    `sheet` counts in `Whole.sheets`; `length` and `width` are those of the whole sheet, trims
    included.
    """

    sheet: int
    length: int
    width: int
    frame: Frame | Room
    rooms: tuple[tuple[int, int], ...]


def blanks(whole: Whole) -> tuple[tuple[Blank, ...], ...]:
    """For each kind of sheet the blanks that it may be made into, at least one."""
    return tuple(
        tuple(
            _blank(whole, index, clean) for clean in islice(_clean(sheet, whole.kerf), MOST_FRAMES)
        )
        for index, sheet in enumerate(whole.sheets)
    )


def _blank(whole: Whole, index: int, clean: Frame | Room | None) -> Blank:
    sheet = whole.sheets[index]
    stock = whole.task.stock[sheet.stock]
    left, right, lower, upper = (
        whole.count(each)
        for each in (stock.trim.left, stock.trim.right, stock.trim.lower, stock.trim.upper)
    )
    inner = _trimmed("crosscut", left, sheet.length, right, clean)
    outer = _trimmed("rip", lower, sheet.width, upper, inner)
    rooms: list[tuple[int, int]] = []
    length, width = sheet.length + left + right, sheet.width + lower + upper
    frame = _numbered(outer, length, width, rooms)
    return Blank(
        index, length, width, frame if frame is not None else Frame("rip", ()), tuple(rooms)
    )


def _trimmed(
    way: Way, before: int, extent: int, behind: int, inner: Frame | Room | None
) -> Frame | Room | None:
    if not before and not behind:
        return inner
    trims = ((before, None),) if before else ()
    return Frame(way, (*trims, (extent, inner)))


def _numbered(
    part: Frame | Room | None, length: int, width: int, rooms: list[tuple[int, int]]
) -> Frame | Room | None:
    """The frame with its rooms counted in order, their extents added to `rooms`."""
    if part is None:
        return None
    if isinstance(part, Room):
        rooms.append((length, width))
        return Room(len(rooms) - 1)
    numbered = []
    for extent, each in part.parts:
        inside = (length, extent) if part.way == "rip" else (extent, width)
        numbered.append((extent, _numbered(each, *inside, rooms)))
    return Frame(part.way, tuple(numbered))


# ---------------------------------------------------------------- around bad spans


def _clean(sheet: Sheet, kerf: int) -> Iterator[Frame | Room | None]:
    """Each way to cut the room between the trims clean of bad spans."""
    yield from _around(sheet.bad, (0, 0, sheet.length - kerf, sheet.width - kerf), kerf)


def _around(bad: tuple[Span, ...], room: Span, kerf: int) -> Iterator[Frame | Room | None]:
    """`bad` and `room` without kerfs. The largest bad span is cut out first, either way."""
    inside = [clipped for each in bad if (clipped := _clipped(each, room)) is not None]
    if not inside:
        yield Room(0)
        return
    worst = max(inside, key=lambda each: ((each[2] - each[0]) * (each[3] - each[1]), each))
    if worst == room:
        yield None
        return
    ways: tuple[Way, ...] = ("rip", "crosscut")
    for axis, way in ((1, ways[0]), (0, ways[1])):
        if (worst[axis], worst[axis + 2]) != (room[axis], room[axis + 2]):
            yield from _cut_out(way, worst, bad, room, kerf)


def _cut_out(
    way: Way, worst: Span, bad: tuple[Span, ...], room: Span, kerf: int
) -> Iterator[Frame]:
    """Before, beside and behind a bad span; a blade that is wider than it takes its own width."""
    axis = 1 if way == "rip" else 0
    start, end, first, last = room[axis], room[axis + 2], worst[axis], worst[axis + 2]
    if first > start:
        last = min(end, max(last, first + kerf))
    from_, to = first + kerf * (first > start), last - kerf * (last < end)
    beside = _parts(bad, _between(room, axis, from_, to), kerf)
    for low in _parts(bad, _between(room, axis, start, first), kerf):
        for high in _parts(bad, _between(room, axis, last, end), kerf):
            for middle in beside:
                yield _frame(
                    way,
                    (first - start + kerf if first > start else 0, low),
                    (to - from_ + kerf, middle),
                    (end - last + kerf if last < end else 0, high),
                )


def _frame(way: Way, *parts: tuple[int, Frame | Room | None]) -> Frame:
    """Without parts that have no extent, and without waste at the end: the last cut leaves it."""
    kept = [each for each in parts if each[0] > 0]
    while kept and kept[-1][1] is None:
        kept.pop()
    return Frame(way, tuple(kept))


def _parts(bad: tuple[Span, ...], room: Span, kerf: int) -> list[Frame | Room | None]:
    if room[0] >= room[2] or room[1] >= room[3]:
        return [None]
    return list(islice(_around(bad, room, kerf), 2))


def _between(room: Span, axis: int, start: int, end: int) -> Span:
    x0, y0, x1, y1 = room
    return (start, y0, end, y1) if axis == 0 else (x0, start, x1, end)


def _clipped(bad: Span, room: Span) -> Span | None:
    x0, y0, x1, y1 = (
        max(bad[0], room[0]),
        max(bad[1], room[1]),
        min(bad[2], room[2]),
        min(bad[3], room[3]),
    )
    return (x0, y0, x1, y1) if x0 < x1 and y0 < y1 else None
