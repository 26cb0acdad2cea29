"""The work at the machines: the whole work order, a box to tick before each line."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import groupby

from model.planset.flow import Line, heading, paragraph, points
from model.planset.letters import SMALL, TITLE
from model.planset.setting import Setting
from model.planset.sheet import Sheet, text_sheets
from model.shop.order.build import work_order
from model.shop.order.record import STAGES, Batch
from model.shop.order.record import Line as WorkLine
from model.shop.plans import plans
from model.units import Mm

KEY = "work"
BOX = "☐"
SAID = (
    "Each setting is made once, with all parts that use it. Make the test cut first, in waste of "
    "the same thickness, and measure it. Follow the manual of each machine: where it says another "
    "thing, it is right."
)
CAUTIONS = (
    "All that stands under “How to use this set” holds here, machines, dust and lifting first."
)


def sheets(setting: Setting) -> tuple[Sheet, ...]:
    """The pages of the work order."""
    return text_sheets(
        KEY, "Work at the machines", lambda wide: tuple(_lines(setting, wide)), setting.paper,
        across=2,
    )  # fmt: skip


def _lines(setting: Setting, width: Mm) -> Iterator[Line]:
    order = work_order(setting.bed, plans(setting.bed))
    yield from paragraph(SAID, width)
    for title, texts in (
        ("In no cutting plan", order.missing), ("Boards and sheets", order.notes),
        ("Make and measure first", order.aids), ("Cautions", (CAUTIONS,)),
    ):  # fmt: skip
        if texts:
            yield from heading(title, width)
            yield from points(texts, width)
    numbered = enumerate(order.batches, 1)
    for stage, batches in groupby(numbered, lambda each: each[1].stage):
        yield from heading(STAGES[stage], width, TITLE * 0.8)
        for number, batch in batches:
            yield from _batch(number, batch, width)


def _batch(number: int, batch: Batch, width: Mm) -> Iterator[Line]:
    yield from paragraph(
        f"{number}  {batch.operation} ({batch.machine})", width, bold=True, keeps=True
    )
    told = [("Set", batch.setting), *(("Before", each) for each in batch.before),
            *(("Stops", each) for each in batch.aids),
            *(("Take care", each) for each in batch.cautions)]  # fmt: skip
    for word, text in told:
        if text:
            for line in paragraph(f"{word}: {text}", width, SMALL):
                yield line._replace(keeps=True, height=line.height * 0.9)
    yield from points([_said(line) for line in batch.lines], width, BOX, SMALL)
    yield Line(2.0)


def _said(line: WorkLine) -> str:
    named = f"{line.quantity} × {line.mark} {line.name}" if line.mark else f"{line.name}"
    return f"{named}: {line.detail}" if line.detail else named
