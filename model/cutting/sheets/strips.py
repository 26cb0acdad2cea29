"""Pieces laid in strips alone: ripped off the whole way along, then crosscut, then trimmed.

The simple shelf rule of old is one manner of it: the widest first, in the first strip with room.
"""

from __future__ import annotations

from model.cutting.sheets.packing import FIRST, Lot, Manner, Packed, Rest, Run, best, opening
from model.cutting.whole import Size


def shelf(sizes: tuple[Size, ...]) -> Manner:
    """The shelf rule: the widest across first, in the first strip that has room."""
    order = sorted(range(len(sizes)), key=lambda at: (-sizes[at].across, -sizes[at].along, at))
    return Manner(tuple(order), fit=FIRST)


def pack_strips(lot: Lot, manner: Manner, must: bool = True) -> Packed:
    """As `pack`, by strips alone: open strips are filled before a new one is ripped off."""
    demand, ways, bins, _ = lot
    left = list(demand)
    strips: list[Rest] = []
    rooms: list[Rest] = []
    runs: dict[int, Run] = {}
    opened: list[tuple[int, int]] = []
    waiting = list(range(len(bins)))
    name = 0
    is_whole = True
    for size in manner.order:
        while left[size]:
            in_strip = best(strips, ways, size, manner.fit)
            spot = in_strip or best(rooms, ways, size, manner.fit)
            if spot is None:
                if (at := opening(waiting, bins, ways, size)) < 0:
                    is_whole = False
                    break
                waiting.remove(at)
                opened.append((at, name))
                rooms += [
                    (x, y, name + n, bins[at].kind) for n, (x, y) in enumerate(bins[at].rooms)
                ]
                name += len(bins[at].rooms)
                continue
            _, dx, dy = spot
            x, y, own, kind = (strips if in_strip else rooms).pop(spot[0])
            runs[own] = (size, dx, dy, 1, in_strip is None, name, name + 1)
            strips.append((x - dx, y if in_strip else dy, name, kind))
            if in_strip is None:
                rooms.append((x, y - dy, name + 1, kind))
            name += 2
            left[size] -= 1
        if must and not is_whole:
            break
    return Packed(runs, opened, left, is_whole)
