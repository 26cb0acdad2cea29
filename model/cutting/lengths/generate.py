"""Methods that look for sticks: fill by worth, column generation, whole columns, diving."""

from __future__ import annotations

from collections.abc import Sequence
from random import Random

import numpy as np

from model.cutting.lengths.master import Column, Floats
from model.cutting.lengths.search import Cutting, Search
from model.cutting.lengths.sticks import Stick

NEW = 1e-9  # a column must promise this much of the dearest stick to be worth adding


def fill_by_worth(search: Search, worth: Floats, start: Sequence[Stick] = ()) -> None:
    """Stick after stick, each the worthiest for its cost of what is still wanted."""
    ask = search.question
    left = np.array(ask.demand) - sum(
        (np.array(stick.total) for stick in start), np.zeros(len(ask.demand), dtype=np.int64)
    )
    left = np.maximum(left, 0)
    have = [kind.quantity for kind in ask.kinds]
    sticks = list(start)
    for stick in start:
        have[stick.kind] = _less(have[stick.kind], 1)
    while left.any():
        columns = search.best_cuttings(worth, left.tolist())
        usable = [c for c in columns if have[c.source] != 0 and any(c.counts)]
        if not usable:
            break
        best = min(usable, key=lambda c: (_rate(search, c, worth), c.source))
        search.master.add(best)
        times = min(_times(best, left.tolist()), have[best.source] or 1 << 30)
        have[best.source] = _less(have[best.source], times)
        left = left - times * np.array(best.counts)
        sticks += [Stick(best.source, best.what)] * times
    search.offer(sticks)


def varied_fills(search: Search, worth: Floats, tries: int, seed: int = 1) -> None:
    """Fill again and again with the worth shaken a little."""
    random = Random(seed)
    for number in range(tries):
        if search.is_done:
            return
        shake = [1 + (0.3 * random.random() - 0.15) * (number > 0) for _ in worth]
        fill_by_worth(search, worth * np.array(shake))


def generate(search: Search, rounds: int) -> None:
    """Columns until no more would lower the cost; leaves behind what each lot is worth."""
    ask, master = search.question, search.master
    for column in _singles(search):
        master.add(column)
    quantity = [kind.quantity for kind in ask.kinds]
    for number in range(rounds):
        priced = master.priced(ask.demand, quantity)
        worth = priced.worth
        search.worth, search.relaxed = worth, priced.value
        columns = search.best_cuttings(worth, ask.demand)
        if number % 5 == 4:
            search.learn(worth)
        if search.is_done or not any([master.add(c) for c in columns if _pays(search, c, worth)]):
            break
    search.learn(search.worth)


def whole_columns(search: Search, node_limit: int) -> None:
    """The best plan of the columns found so far."""
    whole = search.master.chosen(node_limit, search.ease)
    if whole is not None:
        search.offer(_sticks(search.master.columns, whole.used))


def dive(search: Search, rounds: int) -> None:
    """Fix what the relaxation is surest of, relax the rest again, until all is whole."""
    ask, master = search.question, search.master
    left = np.array(ask.demand)
    have = [kind.quantity for kind in ask.kinds]
    sticks: list[Stick] = []
    while left.any() and not search.stop():
        for _ in range(rounds):
            priced = master.priced(left.tolist(), have)
            columns = search.best_cuttings(priced.worth, left.tolist())
            if not any([master.add(c) for c in columns if _pays(search, c, priced.worth)]):
                break
        if priced.missing.max() > 0.5:
            break
        used = np.floor(priced.used + 1e-6)
        if not used.any():
            used[int(np.argmax(priced.used))] = 1
        for stick in _sticks(master.columns, used.astype(int).tolist()):
            if have[stick.kind] != 0 and np.minimum(left, stick.total).any():
                have[stick.kind] = _less(have[stick.kind], 1)
                left = np.maximum(left - np.array(stick.total), 0)
                sticks.append(stick)
    fill_by_worth(search, search.worth + NEW, sticks)


def _sticks(columns: Sequence[Column[Cutting]], used: Sequence[int]) -> list[Stick]:
    return [
        Stick(column.source, column.what)
        for column, times in zip(columns, used, strict=True)
        for _ in range(times)
    ]


def _singles(search: Search) -> list[Column[Cutting]]:
    """Each lot alone, as often as the first segment that holds it does."""
    found = []
    for kind, rooms in enumerate(search.rooms):
        for lot, weight in enumerate(search.question.weights):
            segment = next((n for n, room in enumerate(rooms) if room >= weight), None)
            if segment is None:
                continue
            times = min(rooms[segment] // weight, search.question.demand[lot])
            counts = tuple(times if n == lot else 0 for n in range(len(search.question.weights)))
            empty = (0,) * len(counts)
            cutting = tuple(counts if n == segment else empty for n in range(len(rooms)))
            found.append(Column(kind, counts, cutting))
    return found


def _pays(search: Search, column: Column[Cutting], worth: Floats) -> bool:
    # With limited stock the master also charges for the place; a column that does not pay by its
    # cost alone cannot pay with that charge.
    cost = search.master.sources[column.source].cost / search.master.dearest
    return float(np.dot(worth, column.counts)) > cost + NEW


def _rate(search: Search, column: Column[Cutting], worth: Floats) -> float:
    cost = search.question.kinds[column.source].cost / search.master.dearest
    return (cost + 1e-6) / float(np.dot(worth, column.counts))


def _times(column: Column[Cutting], left: Sequence[int]) -> int:
    return min(have // count for have, count in zip(left, column.counts, strict=True) if count)


def _less(have: int | None, times: int) -> int | None:
    return None if have is None else have - times
