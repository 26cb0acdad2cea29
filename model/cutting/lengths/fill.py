"""A plan of sticks at once: each strip, longest first, into the first segment that holds it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from model.cutting.lengths.lots import Lot
from model.cutting.lengths.sticks import Counts, Kind, Stick


@dataclass
class _Open:
    kind: int
    room: list[int]
    counts: list[list[int]] = field(default_factory=list)

    def take(self, size: int, lot: int) -> bool:
        for room, counts in zip(range(len(self.room)), self.counts, strict=True):
            if size <= self.room[room]:
                self.room[room] -= size
                counts[lot] += 1
                return True
        return False

    def closed(self) -> Stick:
        return Stick(self.kind, tuple(tuple(each) for each in self.counts))


def first_fit(
    kinds: Sequence[Kind], sizes: Sequence[Lot], demand: Counts, kerf: int
) -> tuple[tuple[Stick, ...], Counts]:
    """Sticks, and how many of each lot found no room because the stock is used up.

    A new stick is the cheapest for its length that holds the strip; on hand first.
    """
    left = [each.quantity for each in kinds]
    order = sorted(range(len(kinds)), key=lambda k: _worth(kinds[k], k))
    sticks: list[_Open] = []
    missing = list(demand)
    for lot, wanted in enumerate(demand):
        size = sizes[lot].along + kerf
        for _ in range(wanted):
            if any(stick.take(size, lot) for stick in sticks):
                missing[lot] -= 1
                continue
            kind = next((k for k in order if left[k] != 0 and _holds(kinds[k], size, kerf)), None)
            if kind is None:
                break
            count = left[kind]
            left[kind] = None if count is None else count - 1
            rooms = list(kinds[kind].rooms(kerf))
            sticks.append(_Open(kind, rooms, [[0] * len(sizes) for _ in rooms]))
            sticks[-1].take(size, lot)
            missing[lot] -= 1
    return tuple(each.closed() for each in sticks), tuple(missing)


def _holds(kind: Kind, size: int, kerf: int) -> bool:
    return max(kind.rooms(kerf), default=0) >= size


def _worth(kind: Kind, number: int) -> tuple[float, int, int]:
    room = sum(high - low for low, high in kind.segments)
    return (kind.cost / max(room, 1), -room, number)
