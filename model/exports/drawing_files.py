"""The folder `drawings`: each view and each mark as DXF and SVG, and a profile of each sheet part.

`contents.csv` in it lists them with their scale on paper and a digest, by which an earlier run's
files are known again.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple

from model.bed import Bed
from model.cutting.record import Box
from model.drawings.moved import around, moved
from model.drawings.paper import Area, Drawing, Item, Text
from model.drawings.part_sheet.facts import facts
from model.drawings.scales import scale_of, scale_words
from model.exports import drawing_dxf, drawing_svg, profile_dxf
from model.exports.contents import Row, write_contents
from model.parts.marks import Mark
from model.planset import elevations, sections
from model.planset.book import PlanSet
from model.planset.elevations import told_by
from model.planset.letters import BODY, HEADING
from model.planset.part_pages import part_sheets
from model.planset.setting import Setting
from model.planset.sheet import Sheet, room_on
from model.units import Mm

PROFILES = "profiles"
ROW: Mm = 4.2  # from line to line above a drawing
_MARGIN: Mm = 5.0


class Named(NamedTuple):
    """A drawing, the name of its files without the ending, and what it shows."""

    name: str
    shows: str
    drawing: Drawing


def write(bed: Bed, folder: Path) -> None:
    """Write all files into a folder that is there and empty."""
    plan = bed.once(PlanSet)
    unit = told_by(plan.setting).unit
    rows = []
    for each in drawings(plan):
        drawing_dxf.write(each.drawing, folder / f"{each.name}.dxf", unit)
        drawing_svg.write(each.drawing, folder / f"{each.name}.svg")
        scale = scale_words(each.drawing.scale)
        rows += [Row(f"{each.name}.dxf", each.shows, unit, scale),
                 Row(f"{each.name}.svg", each.shows, "mm", scale)]  # fmt: skip
    for mark in sheet_marks(bed):
        (folder / PROFILES).mkdir(exist_ok=True)
        name = f"{PROFILES}/{mark.mark}.dxf"
        profile_dxf.write(mark, folder / name, unit)
        rows.append(Row(name, f"{mark.mark} {mark.name}, profile for a router", unit, "1 : 1"))
    write_contents(rows, folder)


def drawings(plan: PlanSet) -> Iterator[Named]:
    """Elevations, plan, sections, then the marks in their order."""
    setting = plan.setting
    for sheet in plan.chapter(elevations.sheets):
        yield _view(setting, sheet, sheet.key)
    for number, sheet in enumerate(plan.chapter(sections.sheets), 1):
        yield _view(setting, sheet, f"section-{number}")
    for mark in setting.bed.marks:
        yield _mark(setting, mark)


def sheet_marks(bed: Bed) -> tuple[Mark, ...]:
    """What is cut from sheets, and flat."""
    return tuple(
        mark for mark in bed.marks
        if mark.made_of is not None and mark.made_of.kind == "sheet" and not mark.part.is_round
    )  # fmt: skip


def _view(setting: Setting, sheet: Sheet, name: str) -> Named:
    content = sheet.draw(room_on(setting.paper))
    drawing = _titled(setting, sheet.title, (), content.items, content.scale)
    return Named(name, sheet.title, drawing)


def _mark(setting: Setting, mark: Mark) -> Named:
    room = room_on(setting.paper)
    told = facts(setting.bed, mark)
    high = room.y1 - room.y0 - ROW * len(told)
    sheet = part_sheets(setting, mark.mark, round(room.x1 - room.x0, 3)).of_height(high).drawing
    title = f"{mark.mark} {mark.name}"
    lines = tuple(f"{label}: {words}" for label, words in told)
    drawing = _titled(setting, title, lines, sheet.items, scale_words(sheet.scale))
    return Named(mark.mark, title, drawing)


def _titled(
    setting: Setting, title: str, lines: tuple[str, ...], items: tuple[Item, ...], scale: str
) -> Drawing:
    """Items below a heading and lines, on a paper that is just large enough."""
    inked = [item for item in items if not isinstance(item, Area)]
    box = around(inked) or Box(0.0, 0.0, 0.0, 0.0)
    name = setting.bed.design.name
    about = f"{name}. {scale} on paper, {setting.note}."
    y = box.y1 + 1.5 * HEADING + ROW * (len(lines) + 1)
    heading = [Text((box.x0, y), title, HEADING, "left", bold=True)]
    heading += [
        Text((box.x0, y - ROW * number), line, BODY, "left")
        for number, line in enumerate((about, *lines), 1)
    ]
    whole = around([*heading, *inked]) or box
    right, up = _MARGIN - whole.x0, _MARGIN - whole.y0
    return Drawing(
        width=whole.x1 - whole.x0 + 2 * _MARGIN, height=whole.y1 - whole.y0 + 2 * _MARGIN,
        scale=scale_of(scale), title=f"{name}: {title}",
        items=tuple(moved(item, right, up) for item in (*heading, *inked)),
    )  # fmt: skip
