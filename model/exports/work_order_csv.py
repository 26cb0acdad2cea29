"""`work_order.csv`: the work order as a table, one row for each line to tick."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from model.bed import Bed
from model.exports.csv_text import Cell, csv_bytes
from model.exports.plain import number
from model.shop.order.build import work_order
from model.shop.order.record import STAGES, Batch, WorkOrder
from model.shop.plans import plans
from model.shop.tracking_rest import going
from model.stock.progress import Progress

COLUMNS = (
    "setting", "stage", "machine", "operation", "set_to", "figures_mm", "first", "stops",
    "take_care", "mark", "name", "quantity", "times", "where", "frees", "done", "key",
)  # fmt: skip


def write(bed: Bed, path: Path) -> None:
    """Write the work order for the plans in use, or the best that are found."""
    order = work_order(bed, plans(bed))
    path.write_bytes(csv_bytes(COLUMNS, rows(order, going(bed).progress)))


def rows(order: WorkOrder, progress: Progress) -> Iterator[tuple[Cell, ...]]:
    """The cells of every line, settings numbered as on paper; figures in mm."""
    done = progress.cuts_done | progress.steps_done
    for setting, batch in enumerate(order.batches, 1):
        for line in batch.lines:
            yield (
                setting, STAGES[batch.stage], batch.machine, batch.operation, batch.setting,
                _figures(batch), " ".join(batch.before), " ".join(batch.aids),
                " ".join(batch.cautions), line.mark, line.name, line.quantity, line.times,
                line.detail, " ".join(line.frees), "yes" if line.key in done else "", line.key,
            )  # fmt: skip


def _figures(batch: Batch) -> str:
    return ", ".join(f"{each.what} {number(each.size)}" for each in batch.distances)
