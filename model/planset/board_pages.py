"""The boards and sheets: how each is cut up, to scale, its cuts in their order."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from functools import partial

from model.cutting.record import Layout
from model.drawings.cut_layout import cut_layout, paper_size
from model.drawings.cut_names import cut_names
from model.drawings.cut_sheet import Room
from model.drawings.cut_steps import SawnPlan, sawn_plan
from model.drawings.cut_told import Shown
from model.drawings.moved import moved
from model.drawings.paper import Item
from model.drawings.plan_words import title_words
from model.planset.flow import Line, heading, paragraph
from model.planset.plan_told import plan_told
from model.planset.setting import Setting
from model.planset.sheet import Sheet, text_sheets
from model.shop.order.sawing import stock_name
from model.shop.plans import plans
from model.units import Mm

KEY = "boards"
HIGHEST: Mm = 105.0  # of one drawing: two have room on a page
SPARE: Mm = 10.0  # for names that are led out
SAID = (
    "Boards and sheets are drawn with their length across the page. Numbers in rings are the cuts "
    "in their order, as in the work at the machines. Hatched wide is an offcut to keep, hatched "
    "close is waste; a box crossed out is a bad place of the board, as a knot or a split, which no "
    "piece touches. Dashed lines are sawn after milling. Sizes on boards are rough sizes."
)


def sheets(setting: Setting) -> tuple[Sheet, ...]:
    """As many boards on each page as have room."""
    return text_sheets(
        KEY, "Boards and sheets", lambda wide: tuple(_lines(setting, wide)), setting.paper
    )


def _lines(setting: Setting, width: Mm) -> Iterator[Line]:
    bed = setting.bed
    names = cut_names(bed).parts
    yield from paragraph(SAID, width)
    for each in plans(bed):
        plan = sawn_plan(each, setting.unit)
        if plan.layouts:
            yield from heading(stock_name(each, setting.unit), width)
            for sentence in plan_told(plan, setting.unit):
                yield from paragraph(sentence, width, keeps=True)
            for layout in plan.layouts:
                yield _drawn(plan, layout, names, width)


def _drawn(plan: SawnPlan, layout: Layout, names: Mapping[str, str], width: Mm) -> Line:
    shown = Shown(
        unit=plan.unit, names=names, numbers=plan.numbers(layout),
        title=_title(plan, layout), is_rough=plan.cut.plan.task.kind != "sheets",
    )  # fmt: skip
    high = min(paper_size(layout, Room(width, HIGHEST), shown).height + SPARE, HIGHEST)
    return Line(high + 2.0, drawn=partial(_items, layout, Room(width, high), shown))


def _title(plan: SawnPlan, layout: Layout) -> str:
    """What stands above it; a board that stands for what a yard may have has no name there."""
    told = title_words(plan, layout)
    return told.partition(" · ")[0] if layout.stock.is_assumed else told


def _items(layout: Layout, room: Room, shown: Shown) -> Iterator[Item]:
    drawing = cut_layout(layout, room, shown)
    yield from (moved(item, 0.0, -drawing.height) for item in drawing.items)
