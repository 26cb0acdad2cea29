"""Short lists, solved over every way of cutting every board.

All counts of strips of each lot are numbered, and for each the least width is found into which
bands of a board's length hold them (and the least length for sections). What fits, and to which
nothing can be added, is a column; an exact solver chooses among all of them.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from math import prod
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from model.cutting.boards.bands import Bands
from model.cutting.boards.generate import used_columns
from model.cutting.boards.pattern import Pattern
from model.cutting.boards.search import Search
from model.cutting.lengths.master import Column, Master
from model.cutting.lengths.sums import Ints

MOST_COUNTS = 3000
MOST_WORK = 20_000_000  # counts times bands times boards: some seconds
ENDLESS = 1 << 60
_SURE = Fraction(1, 1_000_000)  # a solver's bound may be this share too high


class _Way(NamedTuple):
    """All counts as bands of one way of cutting: room along, and room across, kerfs included."""

    bands: Bands
    along: Ints
    across: Ints


class _Table(NamedTuple):
    """The least room across for all counts, of a blank, and the bands that were looked at."""

    way: _Way
    bands: list[int]
    least: Ints


def solve_small(search: Search, node_limit: int) -> None:
    """The best plan, and the bound that the solver proves on the way; nothing for long lists."""
    ask = search.question
    counts = prod(demand + 1 for demand in ask.demand)
    is_plain = all(len(b.forms) == 1 and len(b.forms[0]) == 1 for b in ask.boards)
    if counts > MOST_COUNTS or not is_plain or any(b.forms[0][0].bad for b in ask.boards):
        return
    every = np.indices([demand + 1 for demand in ask.demand]).reshape(len(ask.demand), -1).T
    ways = [_way(search, number, every) for number in range(2)]
    if _work(search, ways) > MOST_WORK:
        return
    master: Master[Pattern] = Master(ask.demand, search.master.sources)
    for board in range(len(ask.boards)):
        for column in _columns(search, board, every, ways):
            master.add(column)
    whole = master.chosen(node_limit, own=0.0)
    if whole is not None:
        search.offer(used_columns(master.columns, whole.used))
        if not any(search.missing):
            search.raise_bound(Fraction(whole.least) * master.dearest * (1 - _SURE))


def _way(search: Search, number: int, every: Ints) -> _Way:
    bands, kerf = search.pricing.ways[number], search.question.kerf
    along = every @ (np.array(bands.along) + kerf)
    across = np.max(np.where(every > 0, np.array(bands.across) + kerf, 0), axis=1)
    return _Way(bands, along, across)


def _work(search: Search, ways: Sequence[_Way]) -> int:
    total = 0
    for board in range(len(search.question.boards)):
        for way in ways:
            total += len(way.along) * int((way.along <= way.bands.rooms(board)[0]).sum())
    return total


def _columns(
    search: Search, board: int, every: Ints, ways: Sequence[_Way]
) -> list[Column[Pattern]]:
    tables = [_table(way, every, board) for way in ways]
    fits = [table.least <= table.way.bands.rooms(board)[1] for table in tables]
    some = fits[0] | fits[1]
    found = []
    for number in np.flatnonzero(_fullest(some, every)).tolist():
        table = tables[0 if fits[0][number] else 1]
        cut = table.way.bands.placed(board, _bands(table, every, number))
        counts = tuple(every[number].tolist())
        found.append(Column(board, counts, Pattern(board, 0, (cut,))))
    return found


def _table(way: _Way, every: Ints, board: int) -> _Table:
    """Bands are added until nothing gets narrower."""
    bands = [b for b in np.flatnonzero(way.along <= way.bands.rooms(board)[0]).tolist() if b]
    least: Ints = np.full(len(every), ENDLESS)
    least[0] = 0
    above = [(band, np.flatnonzero((every >= every[band]).all(axis=1))) for band in bands]
    while True:
        before = least.copy()
        for band, holding in above:
            # Counts are numbered as digits: taking a band away is a difference of numbers.
            least[holding] = np.minimum(least[holding], least[holding - band] + way.across[band])
        if (least == before).all():
            return _Table(way, bands, least)


def _fullest(fits: NDArray[np.bool_], every: Ints) -> NDArray[np.bool_]:
    """Those that fit and to which no strip can be added."""
    full = fits.copy()
    step = 1
    for lot in reversed(range(every.shape[1])):
        most = int(every[:, lot].max())
        more = np.flatnonzero(every[:, lot] < most)
        full[more] &= ~fits[more + step]
        step *= most + 1
    return full


def _bands(table: _Table, every: Ints, number: int) -> list[list[int]]:
    """The bands that the least room is made of."""
    found = []
    while number:
        band = next(
            band
            for band in table.bands
            if (every[band] <= every[number]).all()
            and table.least[number - band] + table.way.across[band] == table.least[number]
        )
        found.append(every[band].tolist())
        number -= band
    return found
