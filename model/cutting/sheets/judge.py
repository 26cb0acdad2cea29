"""What makes one set of sheets better for the shop than another that costs the same."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import product
from typing import NamedTuple

from model.cutting.sheets.blank import Blank
from model.cutting.sheets.first_cut import Handling, parted
from model.cutting.sheets.settings import ordered, sawn, spared
from model.cutting.sheets.survey import Row, Survey, survey
from model.cutting.sheets.tree import Tree
from model.cutting.whole import PER_MM, Whole

MOST_OFFCUTS = 3  # of which plans are compared, the largest first
MOST_KNOWN = 4096  # sheets that are remembered

Score = tuple[int | tuple[int, ...], ...]


class Cut(NamedTuple):
    """A sheet cut up: a tree for each room of the blank, and what that means at the saw.

    `steps` is by how much its first cut is over what one person handles; `offcuts` are the areas
    worth keeping.
    """

    blank: int
    trees: tuple[Tree | None, ...]
    surveys: tuple[Survey, ...]
    steps: int
    offcuts: tuple[int, ...]


class Judge:
    """Knows the wishes of the task. `limits` are by blank."""

    def __init__(self, whole: Whole, blanks: Sequence[Blank], limits: Sequence[Handling]) -> None:
        self.blanks = blanks
        self.limits = limits
        self.kerf = whole.kerf
        self.least = round(whole.task.wishes.least_offcut * PER_MM) / whole.step + whole.kerf
        self.offcut_first = whole.task.wishes.offcut_before_settings
        self._known: dict[tuple[int, tuple[Tree | None, ...]], Cut] = {}

    def cut(self, blank: int, trees: Sequence[Tree | None]) -> Cut:
        """The sheet with the first cut that suits it best by itself.

        Packing anew gives the same few sheets again and again, so they are remembered.
        """
        key = (blank, tuple(trees))
        if key not in self._known:
            if len(self._known) >= MOST_KNOWN:
                self._known.clear()
            self._known[key] = min(self.cuts(*key), key=_alone)
        return self._known[key]

    def cuts(self, blank: int, trees: Sequence[Tree | None]) -> list[Cut]:
        """The sheet with each first cut that is as easy to handle as can be."""
        rooms = self.blanks[blank].rooms
        begun = [
            parted(tree, x, y, self.limits[blank])
            for tree, (x, y) in zip(trees, rooms, strict=True)
        ]
        return [
            self._surveyed(blank, tuple(each.tree for each in chosen), sum(e.steps for e in chosen))
            for chosen in product(*begun)
        ]

    def _surveyed(self, blank: int, trees: tuple[Tree | None, ...], steps: int) -> Cut:
        rooms = self.blanks[blank].rooms
        surveys = tuple(survey(tree, x, y) for tree, (x, y) in zip(trees, rooms, strict=True))
        least, kerf = self.least, self.kerf
        offcuts = [
            (x - kerf) * (y - kerf)
            for each in surveys
            for x, y in each.rests
            if x >= least and y >= least
        ]
        return Cut(blank, trees, surveys, steps, tuple(sorted(offcuts, reverse=True)))

    def score(self, cuts: Sequence[Cut], settings: int) -> Score:
        """The lower the better, for sheets that cost the same."""
        offcuts = sorted((area for each in cuts for area in each.offcuts), reverse=True)
        largest = tuple(-area for area in offcuts[:MOST_OFFCUTS])
        steps = sum(each.steps for each in cuts)
        count = sum(each.cuts for cut in cuts for each in cut.surveys)
        length = sum(each.length for cut in cuts for each in cut.surveys)
        if self.offcut_first:
            return steps, largest, settings, count, length
        return steps, settings, largest, count, length


def rows_of(cuts: Sequence[Cut]) -> tuple[list[Row], list[int]]:
    """All rows of cuts in one list, and the places of those that wait for no other."""
    rows: list[Row] = []
    roots = []
    for cut in cuts:
        for each in cut.surveys:
            first = len(rows)
            if each.rows:
                roots.append(first)
            for kind, members, is_full, is_fixed in each.rows:
                moved = tuple([(e, inside + first if inside >= 0 else -1) for e, inside in members])
                rows.append(Row(kind, moved, is_full, is_fixed))
    return rows, roots


def in_order(cuts: Sequence[Cut]) -> list[tuple[Tree | None, ...]]:
    """The trees of each sheet, their members in the order of sawing."""
    rows, roots = rows_of(cuts)
    order = sawn(rows, roots).order
    made = []
    first = 0
    for cut in cuts:
        trees = []
        for tree, each in zip(cut.trees, cut.surveys, strict=True):
            trees.append(ordered(tree, rows, order, first))
            first += len(each.rows)
        made.append(tuple(trees))
    return made


def changes(cuts: Sequence[Cut]) -> int:
    """How often fence and stop are set for all sheets together."""
    return sawn(*rows_of(cuts)).changes


def distinct(cuts: Sequence[Cut]) -> int:
    """How many settings all sheets together have: the floor of the changes."""
    return len(spared(rows_of(cuts)[0])[0])


def _alone(cut: Cut) -> tuple[int, int, int]:
    settings = {(row.kind, e) for each in cut.surveys for row in each.rows for e, _ in row.members}
    return len(settings), -sum(cut.offcuts[:1]), sum(each.cuts for each in cut.surveys)
