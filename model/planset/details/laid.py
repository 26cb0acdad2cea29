"""What is told around a joint drawn large: dimensions, names, screws and centre lines."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import combinations, pairwise
from typing import NamedTuple

import numpy as np

from model.cutting.record import Box
from model.drawings.dimensioning.notes import notes_above
from model.drawings.dimensioning.rows import Rows, rows
from model.drawings.dimensioning.runs import Run, Side
from model.drawings.dimensioning.told import Told
from model.drawings.letters import text_box
from model.drawings.moved import around, together
from model.drawings.paper import Item, Stroke, Text, grown, is_free, touches
from model.drawings.scales import scales
from model.drawings.views.on_paper import on_paper
from model.planset.details.fasteners import centre_line
from model.planset.details.kinds import joined
from model.planset.details.names import notes_on
from model.planset.details.screws import drawn
from model.planset.details.shots import Shown
from model.planset.details.sizes import chains
from model.planset.plate import SIDES, Chain
from model.planset.setting import Setting
from model.units import Mm, Share

FIRST: tuple[Mm, ...] = (6.0, 10.0, 14.0, 18.0, 24.0, 30.0)  # from the view to its first dimension
AIR: Mm = 0.3  # so much of the room around words may be shared
LITTLE: Share = 0.02  # a smaller scale must be so much better, where none has room


class Laid(NamedTuple):
    """What is drawn at a scale, and the room it takes."""

    items: list[Item]
    box: Box
    scale: Share
    told: Told
    is_clear: bool = True  # no words on others

    @property
    def wide(self) -> Mm:
        return self.box.x1 - self.box.x0

    @property
    def high(self) -> Mm:
        return self.box.y1 - self.box.y0


def fitted(setting: Setting, seen: Shown, told: Told, wide: Mm, high: Mm) -> Laid:
    """At the largest scale that there is room for; in one unit alone where two find none."""
    found = list(chains(seen))
    best: tuple[Share, Laid] | None = None
    for alone in (told, told._replace(has_both=False)) if told.has_both else (told,):
        every, view = list(scales(told.unit)), seen.view.box
        for scale in [
            each for each in every
            if (view.x1 - view.x0) * each <= wide and (view.y1 - view.y0) * each <= high
        ] or every[-1:]:  # fmt: skip
            tried = _tried(setting, seen, found, alone, scale, wide)
            over = max(tried.wide / wide, tried.high / high) + (0.0 if tried.is_clear else 1.0)
            if over <= 1.0:
                return tried
            if best is None or over < best[0] - LITTLE:
                best = (over, tried)
    assert best is not None
    return best[1]


def _tried(
    setting: Setting, seen: Shown, found: Sequence[Chain], told: Told, scale: Share, wide: Mm
) -> Laid:
    """What is told around a view, its (0, 0) at the paper's, and the room of it all."""
    view = Box(*(side * scale for side in seen.view.box))
    items: list[Item] = []
    boxes = [view]
    words: list[Box] = []
    for side in SIDES:
        runs = [_run(chain, told, scale) for chain in found if chain.side == side]
        if runs:
            laid = _laid(view, side, runs, words)
            items += laid.items
            words += laid.words
            boxes.append(laid.box)
    box = together(boxes)
    spare = max(0.0, wide - (box.x1 - box.x0)) / 2
    notes = notes_above(list(notes_on(setting, seen, told, scale)), view,
                        box.x0 - spare, box.x1 + spare,
                        [word for word in words if word.y1 > view.y1])  # fmt: skip
    items += notes.items
    said = [text_box(item) for item in notes.items if isinstance(item, Text)]
    clear = [grown(each, -AIR) for each in (*words, *said)]
    is_clear = not any(touches(one, other) for one, other in combinations(clear, 2))
    is_clear &= not any(touches(line, each) for line in _leaders(notes.items) for each in clear)
    return Laid(items, together([box, around(notes.items) or box]), scale, told, is_clear)


def _leaders(items: Sequence[Item]) -> Iterator[Box]:
    """The room of each straight piece of the leaders of notes."""
    for item in items:
        if isinstance(item, Stroke):
            for (x0, y0), (x1, y1) in pairwise(item.points):
                yield Box(min(x0, x1), min(y0, y1), max(x0, x1), max(y0, y1))


def _laid(view: Box, side: Side, runs: Sequence[Run], taken: Sequence[Box]) -> Rows:
    """Dimensions of one side, so far out that their words are clear of those of others."""
    for out in FIRST:
        laid = rows(view, side, runs, out, taken)
        if all(is_free(word, taken) for word in laid.words):
            break
    return laid


def ink_of(setting: Setting, seen: Shown, scale: Share) -> Iterator[Item]:
    """The view itself, with screws and centre lines."""
    box = Box(*(side * scale for side in seen.view.box))
    yield from on_paper(seen.view, scale, (0.0, 0.0))
    for bar in seen.bars:
        if bar.is_screw:
            yield from drawn(bar, seen.view.gaze, scale, box)
    yield from _axes(setting, seen, scale)


def _axes(setting: Setting, seen: Shown, scale: Share) -> Iterator[Item]:
    """The centre lines of dowels and bolts that lie in the plane, and of screws that cross it."""
    all_of = joined(setting)
    starts, ends = all_of.pieces.bounds
    for piece in seen.helpers:
        low, high = starts[piece], ends[piece]
        if all_of.part(piece).is_round and low[seen.axis] < seen.at < high[seen.axis]:
            middle, half = (low + high) / 2, np.zeros(3)
            longest = int((high - low).argmax())
            half[longest] = (high - low)[longest] / 2
            yield from centre_line(seen.view, middle - half, middle + half, scale)
    for bar in seen.crossing:
        if bar.is_screw:
            yield from centre_line(seen.view, bar.start, bar.end, scale)


def _run(chain: Chain, told: Told, scale: Share) -> Run:
    points = tuple((x * scale, y * scale) for x, y in chain.points)
    return Run(points, chain.sizes(), told.row(chain.sizes()), chain.level)
