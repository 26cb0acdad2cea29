"""Pieces of which no two share a sheet: each of them takes a sheet of its own."""

from __future__ import annotations

from itertools import product

from model.cutting.bounds.cover import Weighing
from model.cutting.bounds.question import Question, Sheet, Size

MOST_STEPS = 2000


def clique(asked: Question) -> Weighing:
    """The most such pieces: all of a size when two of it share no sheet, else one of it.

    A line that crosses neither of two pieces always parts them, whether or not the whole can be
    cut from edge to edge; so this holds for any layout.
    A maximum clique by branch and bound; past `MOST_STEPS` steps the largest seen.
    """
    members = _Search(asked).largest()
    holds = (int(any(fits[at] for at in members)) for fits in asked.fits)
    return Weighing(total=sum(_counted(asked, members)), holds=tuple(holds))


def share_a_sheet(one: Size, other: Size, sheets: tuple[Sheet, ...]) -> bool:
    """Whether a piece of each fits some sheet together, end to end or side by side."""
    return any(
        sheet.takes((a[0] + b[0], max(a[1], b[1]))) or sheet.takes((max(a[0], b[0]), a[1] + b[1]))
        for a, b in product(one.ways, other.ways)
        for sheet in sheets
    )


def _counted(asked: Question, members: tuple[int, ...]) -> list[int]:
    sizes = [asked.sizes[at] for at in members]
    return [1 if share_a_sheet(size, size, asked.sheets) else size.demand for size in sizes]


class _Search:
    """Sizes in the order in which they count most; at most one branch of it is kept."""

    def __init__(self, asked: Question) -> None:
        sizes = asked.sizes
        count = _counted(asked, tuple(range(len(sizes))))
        self.order = sorted(range(len(sizes)), key=lambda at: (-count[at], -sizes[at].area, at))
        self.count = count
        self.apart = {
            at: {b for b in self.order if not share_a_sheet(sizes[at], sizes[b], asked.sheets)}
            for at in self.order
        }
        self.best: tuple[int, ...] = ()
        self.most = 0
        self.steps = 0

    def largest(self) -> tuple[int, ...]:
        self._look((), 0, self.order)
        return tuple(sorted(self.best))

    def _look(self, members: tuple[int, ...], counted: int, open_: list[int]) -> None:
        self.steps += 1
        if counted > self.most:
            self.best, self.most = members, counted
        left = sum(self.count[at] for at in open_)
        for place, at in enumerate(open_):
            if counted + left <= self.most or self.steps > MOST_STEPS:
                return
            rest = [each for each in open_[place + 1 :] if each in self.apart[at]]
            self._look((*members, at), counted + self.count[at], rest)
            left -= self.count[at]
