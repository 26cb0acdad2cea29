"""The names that stand above a joint drawn large: of its pieces, and of what holds them."""

from __future__ import annotations

from collections.abc import Iterator

from model.building.joined import Joined
from model.building.screw_list import FLAT, PAN, WASHER
from model.drawings.clip import holds
from model.drawings.dimensioning.notes import Note
from model.drawings.dimensioning.told import Told
from model.drawings.paper import Point
from model.parts.pieces import Floats
from model.planset.details.faces import inside
from model.planset.details.fasteners import Bar
from model.planset.details.kinds import joined
from model.planset.details.shots import Shown
from model.planset.setting import Setting
from model.units import Share

HEADS = {FLAT: ", head sunk", PAN: "", WASHER: ", with a washer"}
TOLD_HOLES = ("counterbore", "bolt hole", "nut hole")


def notes_on(setting: Setting, seen: Shown, told: Told, scale: Share) -> Iterator[Note]:
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
            yield from _held(seen, at, _screw(bar, told))
        elif bar.kind in TOLD_HOLES:
            yield from _held(seen, (bar.start + bar.end) / 2, _bored(bar, told))


def _screw(bar: Bar, told: Told) -> str:
    return f"{bar.kind} × {told.size(bar.length)}{HEADS[bar.head]}"


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
