"""The hot loop: pieces laid one after another, each cut off its rest from edge to edge.

Everything here is plain tuples of whole numbers (kerf folded in, see `model.cutting.whole`). A
rest is what lies open on a sheet: (along x, along y, name, kind of ways). A run of n equal pieces
laid on it makes two new rests. The record of the runs is turned into a tree of cuts only when the
packing is worth it (`model.cutting.sheets.tree`).
"""

from __future__ import annotations

from typing import NamedTuple

Ways = tuple[tuple[tuple[int, int], ...], ...]  # per size: how it may lie (along x, along y)
Rest = tuple[int, int, int, int]
Run = tuple[int, int, int, int, bool, int, int]  # size, along x, along y, n, is_rip, right, above
Spot = tuple[int, int, int]  # place among the rests, along x, along y

BEST_AREA, BEST_SHORT, BEST_LONG, FLUSH, FIRST = range(5)
RIP, CROSSCUT, SHORTER, LONGER, LARGER = range(5)


class Bin(NamedTuple):
    """A sheet that may be opened: the blank it is made into, the rooms of that, and the kind of
    ways in which sizes may lie on it.
    """

    blank: int
    rooms: tuple[tuple[int, int], ...]
    kind: int


class Manner(NamedTuple):
    """How pieces are laid: sizes in this order, which rest is taken (`fit`), how it is cut
    (`split`), and whether equal pieces are laid in runs.
    """

    order: tuple[int, ...]
    fit: int = BEST_AREA
    split: int = RIP
    in_runs: bool = True


class Lot(NamedTuple):
    """What is to be packed and onto what. A rest under `least` (x, y) is too small for any."""

    demand: list[int]
    ways: tuple[Ways, ...]
    bins: list[Bin]
    least: tuple[int, int]


class Packed(NamedTuple):
    """What came of it. `opened` are places in the list of bins with the name of their first room's
    rest (the rooms' names follow each other); `unplaced` counts by size.
    """

    runs: dict[int, Run]
    opened: list[tuple[int, int]]
    unplaced: list[int]
    is_whole: bool


def pack(lot: Lot, manner: Manner, must: bool = True) -> Packed:
    """Lay the demand on the bins, which are opened one after another as they are needed.

    With `must`, the first piece without a place ends it.
    """
    demand, ways, bins, (least_x, least_y) = lot
    fit = manner.fit
    left = list(demand)
    rests: list[Rest] = []
    runs: dict[int, Run] = {}
    opened: list[tuple[int, int]] = []
    waiting = list(range(len(bins)))
    name = 0
    is_whole = True
    for size in manner.order:
        count = left[size]
        while count:
            spot = best(rests, ways, size, fit)
            if spot is None:
                if (at := opening(waiting, bins, ways, size)) < 0:
                    is_whole = False
                    break
                waiting.remove(at)
                opened.append((at, name))
                for x, y in bins[at].rooms:
                    rests.append((x, y, name, bins[at].kind))
                    name += 1
                continue
            x, y, own, kind = rests.pop(spot[0])
            _, dx, dy = spot
            n, is_rip = _run(x, y, dx, dy, count, manner)
            runs[own] = (size, dx, dy, n, is_rip, name, name + 1)
            count -= n
            # A rip leaves what is above it the whole way along; a crosscut what is right of it.
            a, right_y = (x - n * dx, dy) if is_rip else (x - dx, y)
            b, above_x = (y - dy, x) if is_rip else (y - n * dy, dx)
            if a >= least_x and right_y >= least_y:
                rests.append((a, right_y, name, kind))
            if b >= least_y and above_x >= least_x:
                rests.append((above_x, b, name + 1, kind))
            name += 2
        left[size] = count
        if must and not is_whole:
            break
    return Packed(runs, opened, left, is_whole)


def _run(x: int, y: int, dx: int, dy: int, count: int, manner: Manner) -> tuple[int, bool]:
    """How many of a size are laid at once, and whether its first cut is a rip."""
    split = manner.split
    if split < 2:
        is_rip = split == RIP
    elif split == SHORTER:
        is_rip = x - dx < y - dy
    elif split == LONGER:
        is_rip = x - dx >= y - dy
    else:
        is_rip = x * (y - dy) >= (x - dx) * y
    if not manner.in_runs or count == 1:
        return 1, is_rip
    return min(count, x // dx if is_rip else y // dy), is_rip


def best(rests: list[Rest], ways: tuple[Ways, ...], size: int, fit: int) -> Spot | None:
    """The rest and the way in which a size fits best, the earliest among equals."""
    chosen: Spot | None = None
    lowest = second = 0
    for at, (x, y, _, kind) in enumerate(rests):
        for dx, dy in ways[kind][size]:
            if dx <= x and dy <= y:
                a = x - dx
                b = y - dy
                if fit == 0:
                    score = x * y
                    other = a if a < b else b
                elif fit == 1:
                    score, other = (a, b) if a < b else (b, a)
                elif fit == 2:
                    score, other = (b, a) if a < b else (a, b)
                elif fit == 3:  # where a side needs no cut of its own
                    score, other = (a > 0) + (b > 0), x * y
                else:
                    return at, dx, dy
                if chosen is None or score < lowest or (score == lowest and other < second):
                    chosen, lowest, second = (at, dx, dy), score, other
    return chosen


def opening(waiting: list[int], bins: list[Bin], ways: tuple[Ways, ...], size: int) -> int:
    """The first closed bin that takes the size, -1 where none does."""
    for at in waiting:
        _, rooms, kind = bins[at]
        if any(dx <= x and dy <= y for x, y in rooms for dx, dy in ways[kind][size]):
            return at
    return -1
