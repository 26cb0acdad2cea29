"""One view along a part with what is measured along it and what is cut in it.

Below it: from the near end to each cut and hole, and the whole length. At its left: heights from
the lower edge, where the part is wide enough on paper to show them. Above it: notes.
"""

from __future__ import annotations

from collections.abc import Iterator

from model.cutting.record import Box
from model.drawings.dimensioning.notes import Note, notes_above
from model.drawings.dimensioning.rows import Rows, rows
from model.drawings.letters import words_width
from model.drawings.moved import around, together
from model.drawings.paper import Item, Text
from model.drawings.part_sheet.block import LABEL, Block
from model.drawings.part_sheet.edges import Edges
from model.drawings.part_sheet.grain_arrow import grain_arrow
from model.drawings.part_sheet.long_ink import datum_signs, edge_ink, section_signs
from model.drawings.part_sheet.long_runs import runs_below, runs_beside, whole_width
from model.drawings.part_sheet.shown import Shown
from model.units import Mm

TITLE: Mm = 2.4  # from what lies below it
SIDES: Mm = 1.75  # height of the capitals of what lies above and at the left
SIDES_AFTER: Mm = 4.0
NOTED = 0.3  # where along a cut its leader ends: its middle is where sections are cut


def long_view(shown: Shown, found: Edges, room: Mm) -> Block:
    """The view with its lower left corner at (0, 0), no wider than `room` where that can be."""
    view = Box(0.0, 0.0, *shown.size)
    runs = list(runs_below(shown))
    below = rows(view, "below", runs)
    left = right = Rows((), view)
    if shown.is_wide:
        left = rows(view, "left", runs_beside(shown), taken=below.words)
    if shown.is_wide and shown.is_main:
        right = rows(view, "right", [whole_width(shown)], taken=below.words)
    beside = [box for box in left.words + right.words if box.y1 > view.y1]
    notes = notes_above(list(_notes(shown)), view, 0.0, room + left.box.x0, beside)
    taken = [at for run in runs for at in run.along("below")]
    signs = (
        *notes.items, *_title(shown, max(notes.top, view.y1) + TITLE + LABEL / 2),
        *datum_signs(shown), *section_signs(shown, taken),
    )  # fmt: skip
    dimensions = (*below.items, *left.items, *right.items)
    box = together([view, below.box, left.box, right.box, around(signs) or view])
    return Block.of((*edge_ink(shown, found), *dimensions, *signs), box)


def _notes(shown: Shown) -> Iterator[Note]:
    up = shown.look.up
    for group in shown.groups:
        spot = group.spots[0]
        share = 0.5 if group.shape == "hole" else NOTED
        x = spot.low[0] + share * spot.extent(0)
        yield Note(shown.paper(x, spot.middle[up]), group.words, str(group.face))


def _title(shown: Shown, y: Mm) -> Iterator[Item]:
    yield Text((0.0, y), shown.title, LABEL, "left", bold=True)
    x = words_width(shown.title, LABEL, True) + SIDES_AFTER
    if not shown.part.is_round:
        sides = shown.sides
        yield Text((x, y), sides, SIDES, "left")
        x += words_width(sides, SIDES) + SIDES_AFTER
    if shown.is_main:
        yield from grain_arrow(x, y, shown.part)
