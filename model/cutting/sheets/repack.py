"""A few sheets emptied and packed anew, over and over, until all pieces have a place."""

from __future__ import annotations

from collections.abc import Callable
from random import Random
from typing import NamedTuple

from model.cutting.sheets.depot import Depot, Filled
from model.cutting.sheets.manners import at_random
from model.cutting.sheets.packing import Bin

GIVE = 0.02  # of a sheet by which the pieces without a place may grow in a move, at first
Stop = Callable[[], bool]


class Stowed(NamedTuple):
    """Sheets with what they hold, by the place of their bin, and what has no place yet."""

    bins: list[Bin]
    sheets: dict[int, Filled]
    unplaced: list[int]


def repacked(depot: Depot, start: Stowed, moves: int, random: Random, stop: Stop) -> Stowed:
    """The state with the least area without a place after so many moves, or all placed."""
    bins, unplaced = start.bins, start.unplaced
    sheets = dict(start.sheets)
    best = start
    area = least = depot.area(unplaced)
    give = GIVE * max((x * y for each in bins for x, y in each.rooms), default=0)
    for move in range(moves):
        if not least or stop():
            break
        places = _chosen(len(bins), random)
        demand = list(unplaced)
        for at in places:
            if at in sheets:
                demand = [a + b for a, b in zip(demand, sheets[at].holds, strict=True)]
        chosen = [bins[at] for at in places]
        packed = depot.pack(
            depot.lot(demand, chosen), at_random(depot.whole.sizes, random), must=False
        )
        new_area = depot.area(packed.unplaced)
        if new_area > area + give * (1 - move / moves) * random.random():
            continue
        for at in places:
            sheets.pop(at, None)
        for (at, _), each in zip(packed.opened, depot.filled(packed, chosen), strict=True):
            sheets[places[at]] = each
        unplaced, area = packed.unplaced, new_area
        if area < least:
            best, least = Stowed(bins, dict(sheets), unplaced), area
    return best


def _chosen(count: int, random: Random) -> list[int]:
    return random.sample(range(count), min(count, 1 + int(random.random() * 3)))
