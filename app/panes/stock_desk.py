"""Brings the maker's boards, sizes and sheets into the design, and the design's into the pane."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Any

from PySide6.QtCore import QObject

from app.panes.stock_pane import StockPane, TableKind
from app.session import Session
from app.tables.entries import Cells
from app.tables.stock import entries_of
from model.errors import BadInput, BedError
from model.stock.cells import BadCell
from model.stock.stock_rows import (
    BOARDS,
    SHEETS,
    SOLD,
    Table,
    cells_of_rows,
    rows_of_cells,
    rows_of_text,
)

KINDS = (
    TableKind(
        "boards", "Rack", entries_of(BOARDS), "Boards that you have, or can pick, as they measure"
    ),
    TableKind(
        "sold", "Sizes sold", entries_of(SOLD), "Boards that can be bought as often as needed"
    ),
    TableKind(
        "sheets",
        "Sheets and offcuts",
        entries_of(SHEETS),
        "Sheets as sold, and what is left of others",
    ),
)
TABLES = {table.key: table for table in (BOARDS, SOLD, SHEETS)}


class StockDesk(QObject):
    """Every change is a step that can be undone; what cannot be read is said in the pane."""

    def __init__(self, session: Session, pane: StockPane) -> None:
        super().__init__(session)
        self.session, self.pane = session, pane
        self._shown: tuple[Any, ...] = ()
        self._is_keeping = False
        session.changed.connect(self.follow)
        session.history_moved.connect(self.follow)  # the hand is off the slider
        pane.seen.connect(self.follow)
        pane.typed.connect(self.take)
        pane.pasted.connect(self.paste)

    def follow(self, _moved: Any = None) -> None:
        """Show the stock of the design that is open, if it is other stock than before."""
        if not self.session.has_bed or not self.pane.isVisible() or self.session.is_dragging:
            return
        self._say_idle()
        design, unit = self.session.design, self.session.unit
        now = (design.stock, design.own, unit)
        if now == self._shown:
            return
        is_other_stock = self._shown[:1] != (design.stock,)
        self._shown = now
        for key, table in TABLES.items():
            rows = getattr(design.stock, key)
            if is_other_stock and not self._is_keeping:  # undone, or another design
                self.pane.say_trouble(key, "")
            cells = cells_of_rows(table, rows, unit, self.session.bed.materials)
            self.pane.show_rows(key, cells, unit)

    def _say_idle(self) -> None:
        from model.shop.idle_stock import idle_stock  # planning is not loaded with the window

        self.pane.say_idle(idle_stock(self.session.bed))

    def take(self, key: str, cells: Sequence[Cells]) -> None:
        """Keep what was typed. A row that still lacks a cell waits; one that cannot be read stays
        as it is typed, and nothing is kept until it can.
        """
        table = TABLES[key]
        whole = [row for row in cells if not _lacks(table, row)]
        try:
            rows = self._read(table, whole)
        except BadInput as trouble:
            self.pane.say_trouble(key, trouble.sentence, _place(trouble, whole, cells))
            return
        self.pane.say_trouble(key, _still_lacking(table, cells))
        self._keep(key, rows)

    def paste(self, key: str, text: str) -> None:
        """Add the rows of a copied table; one without headings is laid over the cells instead."""
        table = TABLES[key]
        design, unit = self.session.design, self.session.unit
        if not _has_headings(table, text):
            self.pane.lay(text)
            return
        try:
            rows = rows_of_text(table, text, unit, self.session.bed.materials, "the pasted rows")
        except BadInput as trouble:
            self.pane.say_trouble(key, f"Nothing is added. {trouble.sentence}")
            return
        self.pane.say_trouble(key, "")
        self._keep(key, (*getattr(design.stock, key), *rows))

    def _read(self, table: Table, cells: Sequence[Cells]) -> tuple[Any, ...]:
        design, unit = self.session.design, self.session.unit
        last = getattr(design.stock, table.key)
        return rows_of_cells(table, cells, unit, self.session.bed.materials, last)

    def _keep(self, key: str, rows: tuple[Any, ...]) -> None:
        changed: dict[str, Any] = {key: rows}
        self._is_keeping = True
        try:
            self.session.take(
                lambda design: replace(design, stock=replace(design.stock, **changed))
            )
        except BedError as trouble:
            self.pane.say_trouble(key, trouble.sentence)
        finally:
            self._is_keeping = False


def _has_headings(table: Table, text: str) -> bool:
    """Whether the first line of a copied block names columns: no cell of it holds a figure."""
    first = text.strip().partition("\n")[0].casefold()
    return any(name.replace("_", " ") in first for name in table.needed) and not any(
        each.isdigit() for each in first
    )


def _lacks(table: Table, row: Cells) -> list[str]:
    given = dict(zip(table.columns, row, strict=False))
    return [name for name in table.needed if not given.get(name, "").strip()]


def _still_lacking(table: Table, cells: Sequence[Cells]) -> str:
    for number, row in enumerate(cells, 1):
        if missing := _lacks(table, row):
            return f"Row {number} is kept once it is whole: it still needs {' and '.join(missing)}."
    return ""


def _place(
    trouble: BadInput, whole: Sequence[Cells], cells: Sequence[Cells]
) -> tuple[int, str] | None:
    """The row, as it stands in the pane, and the column of what cannot be read."""
    if not isinstance(trouble, BadCell) or trouble.row >= len(whole):
        return None
    return list(cells).index(whole[trouble.row]), trouble.column
