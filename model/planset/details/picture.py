"""A joint drawn large into its cell of the page: caption, marks, dimensions."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from typing import NamedTuple

import numpy as np

from model.building.joined import Joined
from model.cutting.record import Box
from model.drawings.clip import holds
from model.drawings.dimensioning.notes import Note, notes_above
from model.drawings.dimensioning.rows import rows
from model.drawings.dimensioning.runs import Run
from model.drawings.dimensioning.told import Told
from model.drawings.letters import text_box
from model.drawings.moved import around, moved, together
from model.drawings.paper import Item, Point, Text
from model.drawings.scales import scale_words, scales
from model.drawings.views.on_paper import on_paper
from model.parts.pieces import Floats
from model.planset.details.alike import Shot
from model.planset.details.fasteners import Bar, centre_line, drawn
from model.planset.details.kinds import joined
from model.planset.details.shots import Shown, shown
from model.planset.details.sizes import chains, inside
from model.planset.elevations import told_by
from model.planset.letters import BODY, SMALL, leading, wrapped
from model.planset.page import Link
from model.planset.plate import SIDES, Chain
from model.planset.setting import Setting
from model.units import Mm, Share

FIRST: Mm = 6.0  # from the view to its first dimension
TOLD_HOLES = ("counterbore", "bolt hole", "nut hole")
BELOW: Mm = 2.0  # between a caption and what it is of


def picture(setting: Setting, shot: Shot, cell: Box) -> tuple[list[Item], list[Link]]:
    """A joint at the largest scale that its cell has room for."""
    told = told_by(setting)
    seen = shown(joined(setting), shot)
    wide = cell.x1 - cell.x0
    title = wrapped(_title(setting, shot), wide, BODY, bold=True)
    marks = pairs_words(shot.pairs)
    longest = _below(marks, shot, 0.01, wide)
    head = len(title) * leading(BODY) + len(longest) * leading(SMALL) + BELOW
    found = list(chains(seen))
    high = cell.y1 - cell.y0 - head
    least = math.inf
    for scale in scales(told.unit):
        tried = _plate(setting, seen, found, told, scale, wide)
        over = max(tried.wide / wide, tried.high / high)
        if over < least - 0.02:
            least, plate = over, tried
        if over <= 1.0:
            break
    box = plate.box
    x = (cell.x0 + cell.x1 - box.x0 - box.x1) / 2
    y = cell.y1 - head - box.y1
    ink = [*_ink(setting, seen, plate.scale), *plate.items]
    placed = [moved(item, x, y) for item in ink]
    caption = list(_caption(title, _below(marks, shot, plate.scale, wide), cell))
    return [*caption, *placed], list(_links(placed, setting))


def pairs_words(pairs: Sequence[tuple[str, str]]) -> str:
    """`F3, H3 in F1, F2, H1, H2`: marks that meet the same ones together."""
    by_ones: dict[tuple[str, ...], list[str]] = {}
    ones: dict[str, list[str]] = {}
    for one, other in pairs:
        ones.setdefault(one, []).append(other)
    for one, others in ones.items():
        by_ones.setdefault(tuple(others), []).append(one)
    return "; ".join(f"{', '.join(a)} to {', '.join(b)}" for b, a in by_ones.items())


def _title(setting: Setting, shot: Shot) -> str:
    """`Mortise and tenon: end rail to post`."""
    one, other = (joined(setting).part(each).name for each in (shot.kind.one, shot.kind.other))
    return f"{shot.kind.title}: {one} to {other}"


def _below(marks: str, shot: Shot, scale: Share, wide: Mm) -> tuple[str, ...]:
    """The lines below a title: marks, how it is cut, scale."""
    return wrapped(f"{marks} · {shot.words}, {scale_words(scale)}", wide, SMALL)


def _caption(title: Sequence[str], below: Sequence[str], cell: Box) -> Iterator[Text]:
    y = cell.y1
    for height, lines in ((BODY, title), (SMALL, below)):
        for line in lines:
            y -= leading(height)
            at = (cell.x0, y + leading(height) / 2)
            yield Text(at, line, height, "left", bold=height == BODY)


# ---------------------------------------------------------------- the drawing


class _Plate(NamedTuple):
    """What is drawn at a scale, and the room it takes."""

    items: list[Item]
    box: Box
    scale: Share

    @property
    def wide(self) -> Mm:
        return self.box.x1 - self.box.x0

    @property
    def high(self) -> Mm:
        return self.box.y1 - self.box.y0


def _plate(
    setting: Setting, seen: Shown, found: Sequence[Chain], told: Told, scale: Share, wide: Mm
) -> _Plate:
    """What is told around a view, its (0, 0) at the paper's, and the room of it all."""
    view = Box(*(side * scale for side in seen.view.box))
    items: list[Item] = []
    boxes = [view]
    words: list[Box] = []
    for side in SIDES:
        runs = [_run(chain, told, scale) for chain in found if chain.side == side]
        if runs:
            laid = rows(view, side, runs, FIRST, words)
            items += laid.items
            words += laid.words
            boxes.append(laid.box)
    box = together(boxes)
    spare = max(0.0, wide - (box.x1 - box.x0)) / 2
    notes = notes_above(list(_notes(setting, seen, told, scale)), view,
                        box.x0 - spare, box.x1 + spare,
                        [word for word in words if word.y1 > view.y1])  # fmt: skip
    items += notes.items
    return _Plate(items, together([box, around(notes.items) or box]), scale)


def _ink(setting: Setting, seen: Shown, scale: Share) -> Iterator[Item]:
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


def _notes(setting: Setting, seen: Shown, told: Told, scale: Share) -> Iterator[Note]:
    """The name of each piece that is cut, and of what holds them together; each once."""
    found: dict[str, Note] = {}
    for (x, y), words, mark in _named(setting, seen, told):
        found.setdefault(words, Note((x * scale, y * scale), words, mark))
    yield from found.values()


def _named(setting: Setting, seen: Shown, told: Told) -> Iterator[tuple[Point, str, str]]:
    all_of = joined(setting)
    for section in sorted(seen.view.sections, key=lambda each: -_area(each.outline)):
        piece = seen.pieces[section.piece]
        mark = all_of.mark_of.get(piece, "")
        yield inside(section), _name(all_of, piece, told), mark
    for piece in seen.helpers:
        low, high = (bound[piece] for bound in all_of.pieces.bounds)
        if low[seen.axis] < seen.at < high[seen.axis]:
            yield from _held(seen, (low + high) / 2, _name(all_of, piece, told))
    for bar in seen.bars:
        if bar.is_screw:
            at = bar.start + 0.3 * (bar.end - bar.start)
            yield from _held(seen, at, f"{bar.kind} × {told.size(bar.length)}")
        elif bar.kind in TOLD_HOLES:
            yield from _held(seen, (bar.start + bar.end) / 2, _bored(bar, told))


def _bored(bar: Bar, told: Told) -> str:
    words = f"{bar.kind} ⌀ {told.size(bar.diameter)}"
    return f"{words}, {told.size(bar.length)} deep" if bar.kind == "counterbore" else words


def _held(seen: Shown, at: Floats, words: str) -> Iterator[tuple[Point, str, str]]:
    """A name, where its place is in the window."""
    x, y = seen.view.gaze.flat(at).tolist()
    if holds(seen.view.box, (x, y)):
        yield (x, y), words, ""


def _name(all_of: Joined, piece: int, told: Told) -> str:
    """`F3 end rail`; what is round and bought with its sizes: `dowel ⌀ 10 × 50`."""
    form = all_of.part(piece)
    if form.is_round and form.hardware:
        return f"{form.name} ⌀ {told.size(form.size[1])} × {told.size(form.size[0])}"
    return f"{all_of.mark_of.get(piece, '')} {form.name}".strip()


def _area(loop: Floats) -> float:
    x, y = loop.T
    return float((x.max() - x.min()) * (y.max() - y.min()))


def _links(items: Sequence[Item], setting: Setting) -> Iterator[Link]:
    """From the marks on a drawing to their pages."""
    marks = {mark.mark for mark in setting.bed.marks}
    for item in items:
        if isinstance(item, Text) and item.about in marks:
            yield Link(text_box(item), f"part/{item.about}")
