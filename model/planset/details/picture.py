"""A joint drawn large into its cell of the page: caption, marks, dimensions."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from model.cutting.record import Box
from model.drawings.dimensioning.told import Unit
from model.drawings.letters import text_box
from model.drawings.moved import moved
from model.drawings.paper import Item, Text
from model.drawings.scales import scale_words
from model.planset.details.alike import Pair, Shot
from model.planset.details.fixings import set_by_eye, title_of
from model.planset.details.kinds import joined
from model.planset.details.laid import fitted, ink_of
from model.planset.details.shots import shown
from model.planset.elevations import told_by
from model.planset.kept import kept
from model.planset.letters import BODY, SMALL, leading, wrapped
from model.planset.page import Link
from model.planset.part_pages import key_of
from model.planset.setting import Setting
from model.units import Mm, Share

SMALLEST: Share = 0.4  # a picture that is smaller takes more than half a page
BELOW: Mm = 2.0  # between a caption and what it is of
# Where there is no room for sizes in two units.
ALONE: dict[Unit, str] = {"mm": ", in mm", "inch": ", in inches"}


def picture(setting: Setting, shot: Shot, cell: Box) -> tuple[list[Item], list[Link]]:
    """A joint at the largest scale that its cell has room for."""
    told = told_by(setting)
    seen = shown(setting, shot)
    wide = cell.x1 - cell.x0
    head = _head(setting, shot, wide)
    plate = fitted(setting, seen, told, wide, cell.y1 - cell.y0 - head)
    note = ALONE[told.unit] if plate.told != told else ""
    box = plate.box
    x = (cell.x0 + cell.x1 - box.x0 - box.x1) / 2
    y = cell.y1 - head - box.y1
    ink = [*ink_of(setting, seen, plate.scale), *plate.items]
    placed = [moved(item, x, y) for item in ink]
    words = _captions(setting, shot, f"{scale_words(plate.scale)}{note}", wide)
    return [*_caption(*words, cell), *placed], list(_links(placed, setting))


def height_of(setting: Setting, shot: Shot, wide: Mm, good: Mm, most: Mm) -> Mm:
    """How high a picture becomes: no more than is `good`, unless it were small then."""
    head, seen, told = _head(setting, shot, wide), shown(setting, shot), told_by(setting)
    plate = fitted(setting, seen, told, wide, good - head)
    if plate.scale < SMALLEST:
        plate = fitted(setting, seen, told, wide, most - head)
    return min(head + plate.high, most)


def _head(setting: Setting, shot: Shot, wide: Mm) -> Mm:
    """How high the caption is, whatever the scale."""
    told = told_by(setting)
    longest = f"{scale_words(0.01)}{ALONE[told.unit] if told.has_both else ''}"
    title, below = _captions(setting, shot, longest, wide)
    return len(title) * leading(BODY) + len(below) * leading(SMALL) + BELOW


def _captions(
    setting: Setting, shot: Shot, scale: str, wide: Mm
) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """The lines of a title, and those below: marks, how it is cut, scale; screws set by eye."""
    marks = pairs_words([_named(setting, pair) for pair in shot.pairs])
    below = wrapped(f"{marks} · {shot.words}, {scale}", wide, SMALL)
    by_eye = set_by_eye(setting, shot)
    if by_eye:
        below = (*below, *wrapped(by_eye, wide, SMALL))
    return wrapped(_title(setting, shot), wide, BODY, bold=True), below


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
    return f"{title_of(setting, shot)}: {_plain(one)} to {other}"


def _plain(name: str) -> str:
    """What is bought, within a sentence: `bar pull 128 mm`."""
    return name[0].lower() + name[1:].replace(",", "")


def _named(setting: Setting, pair: Pair) -> Pair:
    """Two marks; for what is bought, which has none, its name."""
    one, other = (bought_names(setting).get(each, each) for each in pair)
    return one, other


@kept
def bought_names(setting: Setting) -> dict[str, str]:
    """What each bought thing of the bed is called, by its code."""
    parts = (each for each in setting.bed.pieces.parts if each.hardware)
    return {part.hardware: _plain(part.name) for part in parts}


def _caption(title: Sequence[str], below: Sequence[str], cell: Box) -> Iterator[Text]:
    y = cell.y1
    for height, lines in ((BODY, title), (SMALL, below)):
        for line in lines:
            y -= leading(height)
            at = (cell.x0, y + leading(height) / 2)
            yield Text(at, line, height, "left", bold=height == BODY)


def _links(items: Sequence[Item], setting: Setting) -> Iterator[Link]:
    """From the marks on a drawing to their pages."""
    marks = {mark.mark for mark in setting.bed.marks}
    for item in items:
        if isinstance(item, Text) and item.about in marks:
            yield Link(text_box(item), key_of(setting, item.about))
