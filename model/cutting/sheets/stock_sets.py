"""Which sheets may be bought for less than so much: the sets that are worth a try."""

from __future__ import annotations

from collections.abc import Iterator

from model.cutting.sheets.depot import Counts, Depot

MOST_SETS = 60  # that are tried
MOST_LOOKED_AT = 5000


def cheaper(depot: Depot, cost: int) -> list[Counts]:
    """Sets that cost less and have enough area for all pieces, those with most of it first.

    All that costs nothing is in every set, and no set leaves out a sheet that it could still
    afford: what is not needed is not cut.
    """
    sheets, most = depot.whole.sheets, depot.most
    bought = [at for at in depot.opening if sheets[at].cost]
    free = [0 if sheets[at].cost else count for at, count in enumerate(most)]
    wanted = depot.area(depot.demand)
    found: list[tuple[int, Counts]] = []
    for looked_at, counts in enumerate(_fullest(depot, bought, free, cost - 1)):
        if looked_at == MOST_LOOKED_AT:
            break
        area = sum(sheets[at].area * count for at, count in enumerate(counts))
        if area >= wanted:
            found.append((-area, counts))
    return [counts for _, counts in sorted(found)[:MOST_SETS]]


def _fullest(depot: Depot, bought: list[int], counts: list[int], purse: int) -> Iterator[Counts]:
    """The sets that spend so much that no other sheet can be paid from the rest."""
    if purse < 0:
        return
    if not bought:
        yield tuple(counts)
        return
    (at, *others), sheets, most = bought, depot.whole.sheets, depot.most
    can = min(most[at], purse // sheets[at].cost)
    for count in range(can, -1, -1):
        rest = purse - count * sheets[at].cost
        if not others and count < can:
            return
        now = list(counts)
        now[at] = count
        yield from _fullest(depot, others, now, rest)
