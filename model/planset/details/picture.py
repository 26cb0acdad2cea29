"""A joint drawn large into its cell of the page: caption, marks, dimensions."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from model.cutting.record import Box
from model.drawings.dimensioning.told import Unit
from model.drawings.letters import text_box
from model.drawings.moved import moved
from model.drawings.paper import Item, Text
from model.drawings.scales import scale_words
from model.planset.details.alike import Shot
from model.planset.details.kinds import joined
from model.planset.details.laid import fitted, ink_of
from model.planset.details.shots import shown
from model.planset.elevations import told_by
from model.planset.letters import BODY, SMALL, leading, wrapped
from model.planset.page import Link
from model.planset.part_pages import key_of
from model.planset.setting import Setting
from model.units import Mm, Share

BELOW: Mm = 2.0  # between a caption and what it is of
# Where there is no room for sizes in two units.
ALONE: dict[Unit, str] = {"mm": ", in mm", "inch": ", in inches"}


def picture(setting: Setting, shot: Shot, cell: Box) -> tuple[list[Item], list[Link]]:
    """A joint at the largest scale that its cell has room for."""
    told = told_by(setting)
    seen = shown(joined(setting), shot)
    wide = cell.x1 - cell.x0
    title = wrapped(_title(setting, shot), wide, BODY, bold=True)
    marks = pairs_words(shot.pairs)
    longest = _below(marks, shot, 0.01, ALONE[told.unit] if told.has_both else "", wide)
    head = len(title) * leading(BODY) + len(longest) * leading(SMALL) + BELOW
    plate = fitted(setting, seen, told, wide, cell.y1 - cell.y0 - head)
    note = ALONE[told.unit] if plate.told != told else ""
    box = plate.box
    x = (cell.x0 + cell.x1 - box.x0 - box.x1) / 2
    y = cell.y1 - head - box.y1
    ink = [*ink_of(setting, seen, plate.scale), *plate.items]
    placed = [moved(item, x, y) for item in ink]
    caption = list(_caption(title, _below(marks, shot, plate.scale, note, wide), cell))
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


def _below(marks: str, shot: Shot, scale: Share, note: str, wide: Mm) -> tuple[str, ...]:
    """The lines below a title: marks, how it is cut, scale."""
    return wrapped(f"{marks} · {shot.words}, {scale_words(scale)}{note}", wide, SMALL)


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
