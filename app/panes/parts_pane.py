"""The parts list and the hardware: sorted, filtered, copied, picked together with the bed."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING, Any

from PySide6.QtCore import Signal
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QLabel, QLineEdit, QPushButton, QWidget

from app.panes.switched_lists import SwitchedLists
from app.tables.hardware import HARDWARE_COLUMNS
from app.tables.parts import PART_COLUMNS
from app.tables.rows import Rows
from app.tables.view import TableView

if TYPE_CHECKING:
    from model.bed import Bed


class PartsPane(QWidget):
    """Wood in one table, what is bought in the other, one filter for both."""

    picked = Signal(object)  # the pieces of the row, as a tuple
    asked_why = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.parts = TableView(Rows(PART_COLUMNS), "Parts list")
        self.hardware = TableView(Rows(HARDWARE_COLUMNS), "Hardware")
        self.filter_line = QLineEdit(placeholderText="Show rows that hold these words")
        self.filter_line.setAccessibleName("Filter the list")
        self.filter_line.setClearButtonEnabled(True)
        self.copy_button = QPushButton("Copy as text")
        self.copy_button.setToolTip("Headings and the rows on view, with tabs between the cells")
        self._counts = QLabel()
        self._counts.setProperty("kind", "faint")
        self._lists = SwitchedLists()
        self._is_told = False  # a row follows the bed's pick: do not tell the bed again
        self._fitted_unit = ""  # headings and cells of another unit need other widths
        self._lay_out()
        for table in (self.parts, self.hardware):
            table.row_chosen.connect(self._chosen)
            table.asked_why.connect(self.asked_why)
            self.filter_line.textChanged.connect(table.sorted.keep)
        self.filter_line.textChanged.connect(self._count)
        self.copy_button.clicked.connect(self.copy)

    def _lay_out(self) -> None:
        self._lists.add_list("Wood", self.parts)
        self._lists.add_list("Hardware", self.hardware)
        self._lists.show_list(0)
        self._lists.asked.connect(self.show_table)
        self._lists.line.addWidget(self.filter_line, 1)
        self._lists.line.addWidget(self._counts)
        self._lists.line.addWidget(self.copy_button)
        self._lists.fill(self)

    @property
    def table(self) -> TableView:
        """The table on view."""
        return self.hardware if self._lists.place else self.parts

    def show_table(self, place: int) -> None:
        """0: wood, 1: hardware."""
        self._lists.show_list(place)
        self._count()

    def show_bed(self, bed: Bed, unit: str) -> None:
        """The lists of another bed; the row that was picked stays picked by its mark."""
        mark, code = (
            getattr(self.parts.record, "mark", ""),
            getattr(self.hardware.record, "code", ""),
        )
        self._is_told = True
        self.parts.sorted.rows.show_records(bed.marks, unit)
        self.hardware.sorted.rows.show_records(bed.hardware, unit)
        self.parts.choose(lambda record: record.mark == mark)
        self.hardware.choose(lambda record: record.code == code)
        self._is_told = False
        if unit != self._fitted_unit and bed.marks:
            self.parts.fit_columns()
            self.hardware.fit_columns()
            self._fitted_unit = unit
        self._count()

    def words_for(self, piece: int, label: str) -> str:
        """What a picked piece is called: its mark and place, or the name of what is bought."""
        record = self.table.record
        if record is None or piece not in record.pieces:
            return label
        called = f"{record.mark} {label}" if hasattr(record, "mark") else record.name
        return f"{called}, one of {len(record.pieces)} alike" if len(record.pieces) > 1 else called

    def choose_piece(self, piece: int) -> None:
        """Pick the row of a piece clicked on the bed; -1 for none."""
        for place, table in enumerate((self.parts, self.hardware)):
            rows = table.sorted.rows.records
            found = next((row for row in rows if piece in row.pieces), None)
            if found is not None:
                self._show_row(place, table, found)
                return
        self._tell_none()

    def copy(self) -> None:
        """Put the table on view on the clipboard."""
        QGuiApplication.clipboard().setText(self.table.sorted.as_text())

    def _show_row(self, place: int, table: TableView, wanted: Any) -> None:
        self._is_told = True
        self.show_table(place)
        if not self._holds(table.sorted.rows.records, table, wanted):
            self.filter_line.clear()
        table.choose(lambda record: record is wanted)
        self._is_told = False

    @staticmethod
    def _holds(records: Iterable[Any], table: TableView, wanted: Any) -> bool:
        row = next(k for k, record in enumerate(records) if record is wanted)
        return table.sorted.mapFromSource(table.sorted.rows.index(row, 0)).isValid()

    def _tell_none(self) -> None:
        self._is_told = True
        self.table.choose(lambda _: False)
        self._is_told = False

    def _chosen(self, record: Any) -> None:
        if not self._is_told:
            self.picked.emit(tuple(record.pieces) if record is not None else ())

    def _count(self) -> None:
        shown, rows = self.table.sorted.rowCount(), self.table.sorted.rows.records
        pieces = sum(row.quantity for row in rows)
        rest = "" if shown == len(rows) else f"{shown} of "
        self._counts.setText(f"{rest}{len(rows)} rows, {pieces} pieces")
