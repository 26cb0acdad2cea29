"""The parts list: every mark with its sizes, each row a way to the part's own page."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import groupby

from model.parts.marks import Mark
from model.planset.flow import Line, heading, paragraph
from model.planset.part_pages import key_of
from model.planset.setting import Setting
from model.planset.sheet import Sheet, text_sheets
from model.planset.table import Head, Row, table
from model.shop.part_sizes import shown_sizes
from model.units import Mm

KEY = "parts"
HEADS = (
    Head("Mark"), Head("Part"), Head("Qty", "right"), Head("Length", "right"),
    Head("Width", "right"), Head("Thickness", "right"), Head("Material"), Head("Rough size"),
)  # fmt: skip
SAID = (
    "Sizes are finished sizes, tongues and tenons included. Rough sizes are what is sawn from "
    "boards before milling; sheet parts are cut to their finished size at once. Length runs along "
    "the grain. Each mark has a page of its own."
)


def sheets(setting: Setting) -> tuple[Sheet, ...]:
    """The pages of the parts list."""
    return text_sheets(KEY, "Parts list", lambda wide: tuple(_lines(setting, wide)), setting.paper)


def _lines(setting: Setting, width: Mm) -> Iterator[Line]:
    yield from paragraph(SAID, width)
    rows = {mark.mark: _row(setting, mark) for mark in setting.bed.marks}
    for assembly, marks in groupby(setting.bed.marks, key=setting.assembly):
        yield from heading(assembly.capitalize(), width)
        some = [rows[mark.mark] for mark in marks]
        yield from table(HEADS, some, width, alike=tuple(rows.values()))


def _row(setting: Setting, mark: Mark) -> Row:
    *cut, long, wide, thick = shown_sizes(setting.bed, mark, setting.unit)
    if setting.tells_both:
        cut = [setting.size(float(side)) for side in (mark.length, mark.width, mark.thickness)]
    is_cut_at_once = mark.made_of is not None and mark.made_of.kind == "sheet"
    rough = "" if is_cut_at_once else f"{long} × {wide} × {thick}"
    cells = (mark.mark, mark.name, str(mark.quantity), *cut, mark.material_name, rough)
    return Row(cells, to=key_of(setting, mark.mark))
