"""`work_order.txt`: the work order as it hangs beside the machines, with boxes to tick."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from itertools import groupby
from pathlib import Path
from textwrap import wrap as wrapped
from typing import Any

from model.bed import Bed
from model.shop.order.build import work_order
from model.shop.order.record import STAGES, Batch, Line, WorkOrder
from model.shop.plans import plans
from model.shop.tracking_rest import going
from model.stock.progress import Progress

COLUMNS = 92
_INDENT = " " * 5
_FRACTION = re.compile(r"(?<=\d) (?=\d+/\d)")
_MARK, _NAME, _COUNT = 7, 18, 4  # columns of a line to tick


def write(bed: Bed, path: Path) -> None:
    """Write the work order for the plans in use, or the best that are found."""
    order = work_order(bed, plans(bed))
    text = "\n".join(lines(order, going(bed).progress)) + "\n"
    path.write_text(text, encoding="utf-8", newline="\n")


def lines(order: WorkOrder, progress: Progress, columns: int = COLUMNS) -> Iterator[str]:
    """The whole order in lines of at most `columns` characters; what is done is ticked."""
    done = progress.cuts_done | progress.steps_done
    yield from wrap(f"Work order: {order.name}", columns)
    yield from wrap(_tally(order, done), columns)
    told = (
        ("In no cutting plan", order.missing),
        ("Boards and sheets", order.notes),
        ("Make and measure first", order.aids),
        ("Cautions", order.cautions),
    )
    for title, texts in told:
        if texts:
            yield ""
            yield title
            for text in texts:
                yield from wrap(text, columns, initial_indent="  - ", subsequent_indent=" " * 4)
    numbered = enumerate(order.batches, 1)
    for stage, batches in groupby(numbered, lambda each: each[1].stage):
        yield ""
        yield from _heading(STAGES[stage], columns)
        for number, batch in batches:
            yield ""
            yield from _batch(number, batch, done, columns)


def _tally(order: WorkOrder, done: frozenset[str]) -> str:
    keys = order.keys
    return (
        f"{len(order.batches)} settings, {len(keys)} lines, {len(keys & done)} of them done. "
        "Parts are looked at as they are cut: length from near to far end, width from lower to "
        "upper edge, thickness from back to face."
    )


def wrap(text: str, columns: int, **more: Any) -> list[str]:
    """Lines of at most `columns`; a whole number stays with its fraction."""
    held = _FRACTION.sub("\u00a0", text)
    return [line.replace("\u00a0", " ") for line in wrapped(held, columns, **more)]


def _heading(title: str, columns: int) -> Iterator[str]:
    yield title.upper()
    yield "=" * min(columns, len(title))


def _batch(number: int, batch: Batch, done: frozenset[str], columns: int) -> Iterator[str]:
    head = f"{number:>3}  {batch.operation} ({batch.machine})"
    yield from wrap(head, columns, subsequent_indent=_INDENT)
    told = (("Set", (batch.setting,)), ("Before", batch.before), ("Stops", batch.aids))
    for word, texts in (*told, ("Take care", batch.cautions)):
        for text in texts:
            said = f"{word}: {text}" if text else ""
            yield from wrap(said, columns, initial_indent=_INDENT, subsequent_indent=_INDENT + "  ")
    for line in batch.lines:
        yield from _line(line, line.key in done, columns)


def _line(line: Line, is_done: bool, columns: int) -> Iterator[str]:
    box = f"{_INDENT}[{'x' if is_done else ' '}] "
    if line.mark:
        named = f"{line.mark:<{_MARK}}{line.quantity:>{_COUNT}} x {line.name:<{_NAME}} "
    else:
        named = f"{line.name}: "
    text = (named + line.detail).rstrip().rstrip(":")
    hanging = " " * (len(box) + (_MARK if line.mark else 4))
    yield from _wrapped(box, text, hanging, columns)


def _wrapped(box: str, text: str, hanging: str, columns: int) -> Iterable[str]:
    """The line, its columns kept: only what does not fit goes on below."""
    if len(box) + len(text) <= columns:
        return [box + text]
    cut = _FRACTION.sub("\u00a0", text).rfind(" ", 0, columns - len(box) + 1)
    cut = cut if cut > 0 else columns - len(box)
    rest = text[cut:].strip()
    return [
        (box + text[:cut]).rstrip(),
        *wrap(rest, columns, initial_indent=hanging, subsequent_indent=hanging),
    ]
