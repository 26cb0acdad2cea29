"""How every table of the window looks and is used: sorted by its headings, picked by row."""

from __future__ import annotations

from typing import Any

from PySide6.QtCore import QModelIndex, Qt, Signal
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QTableView, QWidget

from app.tables.rows import ABOUT, ROW, Rows
from app.tables.sorted_rows import SortedRows

BOLD = 1.12  # headings are wider than cells
HEADING_ROOM, CELL_ROOM = 18, 6  # px: a heading also holds the arrow of the sorted column


class TableView(QTableView):
    """A table over records. `asked_why` names the dimension behind the cell that was clicked."""

    asked_why = Signal(str)
    row_chosen = Signal(object)  # the record, or None

    def __init__(self, rows: Rows, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.sorted = SortedRows(rows, self)
        rows.setParent(self)
        self.setModel(self.sorted)
        self.setAccessibleName(name)
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setAlternatingRowColors(True)
        self.setShowGrid(False)
        self.setWordWrap(False)
        self.setTabKeyNavigation(False)  # Tab leaves the table, arrows move inside it
        self.verticalHeader().hide()
        self.verticalHeader().setDefaultSectionSize(24)
        self.horizontalHeader().setDefaultAlignment(
            Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
        )
        self.horizontalHeader().setHighlightSections(False)
        self.horizontalHeader().setStretchLastSection(True)
        self.setSortingEnabled(True)
        self.sortByColumn(0, Qt.SortOrder.AscendingOrder)
        self.selectionModel().currentRowChanged.connect(self._chosen)
        self.clicked.connect(self._ask)

    def fit_columns(self, widest: int = 260) -> None:
        """Make columns as wide as what they hold, within reason."""
        header, text = self.horizontalHeader(), self.fontMetrics()
        for column in range(self.sorted.columnCount() - 1):
            words = str(self.sorted.headerData(column, Qt.Orientation.Horizontal))
            heading = round(text.horizontalAdvance(words) * BOLD) + HEADING_ROOM
            wanted = max(self.sizeHintForColumn(column) + CELL_ROOM, heading)
            self.setColumnWidth(column, min(wanted, widest))
        header.setSectionResizeMode(QHeaderView.ResizeMode.Interactive)

    def stretch(self, column: int) -> None:
        """Give one column what room there is, the others what they need; for short fixed lists."""
        header, mode = self.horizontalHeader(), QHeaderView.ResizeMode
        header.setStretchLastSection(False)
        header.setSectionResizeMode(mode.ResizeToContents)
        header.setSectionResizeMode(column, mode.Stretch)
        self.setSortingEnabled(False)
        self.sorted.sort(0)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)

    @property
    def record(self) -> Any:
        """The record of the row that is picked, or None."""
        index = self.currentIndex()
        return index.data(ROW) if index.isValid() else None

    def choose(self, wanted: Any) -> None:
        """Pick the row for which `wanted(record)` holds; none clears the choice."""
        for row in range(self.sorted.rowCount()):
            index = self.sorted.index(row, max(self.currentIndex().column(), 0))
            if wanted(index.data(ROW)):
                self.setCurrentIndex(index)
                self.scrollTo(index)
                return
        self.clearSelection()
        self.setCurrentIndex(QModelIndex())

    def ask_why(self) -> None:
        """Ask about the cell under the cursor; from the keyboard too."""
        self._ask(self.currentIndex())

    def keyPressEvent(self, event: Any) -> None:
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.ask_why()
        else:
            super().keyPressEvent(event)

    def _ask(self, index: QModelIndex) -> None:
        about = index.data(ABOUT) if index.isValid() else ""
        if about:
            self.asked_why.emit(about)

    def _chosen(self, index: QModelIndex) -> None:
        self.row_chosen.emit(index.data(ROW) if index.isValid() else None)
