"""Which sheets may be bought for less than so much: the sets that are worth a try."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import islice

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
    for counts, rest in islice(_sets(depot, bought, free, cost - 1), MOST_LOOKED_AT):
        area = sum(sheets[at].area * count for at, count in enumerate(counts))
        can_buy = any(counts[at] < most[at] and sheets[at].cost <= rest for at in bought)
        if area >= wanted and not can_buy:
            found.append((-area, counts))
    return [counts for _, counts in sorted(found)[:MOST_SETS]]


def _sets(
    depot: Depot, bought: list[int], counts: list[int], purse: int
) -> Iterator[tuple[Counts, int]]:
    """All sets that the purse can pay for, with what is left in it; the largest counts first."""
    if purse < 0:
        return
    if not bought:
        yield tuple(counts), purse
        return
    (at, *others), cost = bought, depot.whole.sheets[bought[0]].cost
    for count in range(min(depot.most[at], purse // cost), -1, -1):
        now = list(counts)
        now[at] = count
        yield from _sets(depot, others, now, purse - count * cost)
