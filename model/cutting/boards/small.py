"""Short lists, solved over every way of cutting every board."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from math import prod

from model.cutting.boards.cover import Cover, Covered
from model.cutting.boards.lattice import Filling, Lattice
from model.cutting.boards.rack import Blank, Board
from model.cutting.boards.search import Search

MOST_POINTS = 30_000
MOST_BOARDS = 60
MOST_RESTS = 20_000
ENDLESS = 1e15
SURE = Fraction(1, 1_000_000)  # more than all traces of own costs, and floating point


def solve_small(search: Search) -> None:
    """The best plan, and the bound that follows; nothing for long lists.

    Where spans are sawn around, the plan is one that crosscuts them out, and the bound counts their
    boards as clear.
    """
    ask = search.question
    numbers = copies(search)
    if prod(demand + 1 for demand in ask.demand) > MOST_POINTS or len(numbers) > MOST_BOARDS:
        return
    lots = [lot for lot, demand in enumerate(ask.demand) if demand]
    lattice = Lattice(ask.sizes, ask.demand, lots, ask.kerf)
    boards = [as_crosscut(ask.boards[number]) for number in numbers]
    fillings = lattice.fillings(boards)
    found = _cheapest(search, lattice, fillings, numbers)
    if found.choices is not None:
        search.offer(
            lattice.pattern(
                numbers[c.board], boards[c.board], fillings[c.board], c.filling, c.counts
            )
            for c in found.choices
        )
    whole = [_as_clear(ask.boards[number]) for number in numbers]
    if whole != boards and not search.is_done:
        found = _cheapest(search, lattice, lattice.fillings(whole), numbers)
    if found.is_all and not any(search.missing):
        least = search.cost
        if found.choices is not None:
            least = sum(ask.boards[numbers[each.board]].cost for each in found.choices)
        search.raise_bound(least - search.master.dearest * SURE)


def copies(search: Search) -> list[int]:
    """Boards by their numbers, each as often as it may be of use; the cheapest for their size
    first, so that a cheap plan is known soon.
    """
    boards, strips = search.question.boards, sum(search.question.demand)
    found: list[int] = []
    for number, board in enumerate(boards):
        enough = min(
            strips, search.cost // board.cost if board.cost and search.patterns else strips
        )
        found += [number] * (enough if board.quantity is None else min(board.quantity, enough))
    return found


def as_crosscut(board: Board) -> Board:
    """The board with all its bad spans crosscut out."""
    return replace(board, forms=board.forms[:1])


def _as_clear(board: Board) -> Board:
    """The board as if one could cut through the spans that are sawn around."""
    forms = (tuple(Blank(blank.rect) for blank in form) for form in board.forms)
    return replace(board, forms=tuple(forms))


def _cheapest(
    search: Search, lattice: Lattice, fillings: Sequence[Filling], numbers: Sequence[int]
) -> Covered:
    prices = [search.price(number) for number in numbers]
    budget = sum(search.price(each.board) for each in search.patterns)
    worth = search.worth[list(lattice.lots)]
    cover = Cover(lattice.points, fillings, prices, worth, search.stop)
    return cover.cheapest(ENDLESS if any(search.missing) else budget, MOST_RESTS)
