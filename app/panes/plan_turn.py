"""What is worked out beside the window for the plan set of one bed: one page early, then the list,
then any page.
"""

from __future__ import annotations

from functools import cached_property
from typing import TYPE_CHECKING, NamedTuple

from app.panes.breath import Breath
from app.tables.pages import PageRow

if TYPE_CHECKING:
    from model.bed import Bed
    from model.drawings.cut_names import CutNames
    from model.planset.book import PlanSet
    from model.planset.page import Page

COVER = "cover"


class Turn:
    """The plan set of one bed, and whether anybody still wants to know its list."""

    def __init__(self, bed: Bed) -> None:
        self.bed = bed
        self.breath = Breath()

    @cached_property
    def planset(self) -> PlanSet:
        """Beside the window: what draws the pages is imported with the first one."""
        from model.planset.book import PlanSet

        return PlanSet(self.bed)


class Listed(NamedTuple):
    """A plan set whose pages are known, and the pieces that its drawings name."""

    turn: Turn
    rows: tuple[PageRow, ...]
    names: CutNames

    @property
    def planset(self) -> PlanSet:
        return self.turn.planset

    def place(self, key: str) -> int:
        """Of the page of a key; -1 if there is none."""
        return next((k for k, row in enumerate(self.rows) if row.key == key), -1)

    def pieces(self, about: str) -> tuple[int, ...]:
        """The bed's pieces that `piece/B1-3` is about; none of what is not in the bed."""
        name = about.partition("/")[2]
        mark, _, number = name.rpartition("-")
        owners = self.names.in_bed.get(mark, ())
        if owners and number.isdigit() and 0 < int(number) <= len(owners):
            return (owners[int(number) - 1],)
        piece = self.names.bed_piece(name)
        return (piece,) if piece >= 0 else ()

    def abouts(self, pieces: tuple[int, ...]) -> tuple[str, ...]:
        """How drawings name these pieces of the bed, whole or sawn, and their balloons."""
        whole = (about for piece in pieces for mark, owners in self.names.in_bed.items()
                 if piece in owners for about in (f"piece/{mark}-{owners.index(piece) + 1}", mark)
                 )  # fmt: skip
        sawn = (f"piece/{name}" for piece in pieces for name in self.names.of_bed_piece(piece))
        return tuple(dict.fromkeys((*whole, *sawn)))


def early_page(turn: Turn, key: str, last: Listed | None) -> Page | None:
    """A page before the list is known, if that can be."""
    if last is None:
        return turn.planset.early_cover()
    return turn.planset.early(key, last.planset)


def page_meanwhile(turn: Turn, key: str, last: Listed) -> Page:
    """A page while the list is worked out: where it must wait for that, as it was before."""
    return early_page(turn, key, last) or last.planset.page(max(last.place(key), 0))


def listed(turn: Turn) -> Listed | None:
    """The list, which goes by the best cutting plans; None once nobody wants to know it."""
    from model.drawings.cut_names import cut_names
    from model.shop.lumber import lumber
    from model.shop.plans import plans

    stops = turn.breath.stops
    plans(turn.bed, stop=stops)
    lumber(turn.bed, stop=stops)
    if stops():
        return None
    rows = tuple(
        PageRow(each.key, each.title, each.chapter, each.chapter_title)
        for each in turn.planset.sheets
    )
    return Listed(turn, rows, cut_names(turn.bed))
