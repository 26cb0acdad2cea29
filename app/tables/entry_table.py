"""The view of a table to type in: cells are edited in place, copied from and pasted as blocks."""

from __future__ import annotations

import csv
import io

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QGuiApplication, QKeyEvent, QKeySequence
from PySide6.QtWidgets import QAbstractItemView, QTableView, QWidget

from app.tables.entries import Entries

ROOM = 20  # px beside the text of a cell or a heading
LEAST, WIDEST = 48, 240  # px


class EntryTable(QTableView):
    """Type, Enter goes on; Delete empties cells, Ctrl+C and Ctrl+V take blocks of them.

    Whoever listens to `paste_asked` decides what a copied block means, and may `lay` it.
    """

    paste_asked = Signal()

    def __init__(self, entries: Entries, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.entries = entries
        entries.setParent(self)
        self.setModel(entries)
        self.setAccessibleName(name)
        self.setAlternatingRowColors(True)
        self.setWordWrap(False)
        self.setTabKeyNavigation(True)
        self.setSelectionMode(QAbstractItemView.SelectionMode.ContiguousSelection)
        self.verticalHeader().setDefaultSectionSize(24)
        self.horizontalHeader().setStretchLastSection(True)
        self.horizontalHeader().setDefaultAlignment(
            Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
        )
        self.horizontalHeader().setHighlightSections(False)
        self.verticalHeader().setHighlightSections(False)

    def fit_columns(self) -> None:
        """Make columns as wide as what they hold, within reason."""
        text = self.fontMetrics()
        for column in range(self.entries.columnCount() - 1):
            heading = self.entries.headerData(column, Qt.Orientation.Horizontal)
            words = [str(heading), *(row[column] for row in self.entries.rows)]
            wanted = max(text.horizontalAdvance(each) for each in words) + ROOM
            self.setColumnWidth(column, min(max(wanted, LEAST), WIDEST))

    def chosen_rows(self) -> tuple[int, ...]:
        """The rows in which a cell is chosen."""
        return tuple(sorted({index.row() for index in self.selectedIndexes()}))

    def take_out(self) -> None:
        """Take the chosen rows out."""
        self.entries.take_out(self.chosen_rows())

    def copy(self) -> None:
        """Put the chosen cells on the clipboard, with tabs between them."""
        rows = self.chosen_rows()
        columns = sorted({index.column() for index in self.selectedIndexes()})
        cells = ((self.entries.index(r, c).data() for c in columns) for r in rows)
        QGuiApplication.clipboard().setText("".join("\t".join(row) + "\n" for row in cells))

    def lay(self, text: str) -> None:
        """Lay copied cells over the table, from the current cell on."""
        at = self.currentIndex()
        if at.isValid() and text.strip():
            self.entries.lay(at, block_of(text))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.matches(QKeySequence.StandardKey.Paste):
            self.paste_asked.emit()
        elif event.matches(QKeySequence.StandardKey.Copy):
            self.copy()
        elif event.key() == Qt.Key.Key_Delete:
            self._empty_chosen()
        else:
            super().keyPressEvent(event)

    def _empty_chosen(self) -> None:
        chosen = self.selectedIndexes()
        if chosen:
            first = min(chosen, key=lambda index: (index.row(), index.column()))
            wide = 1 + max(index.column() for index in chosen) - first.column()
            self.entries.lay(first, [[""] * wide for _ in self.chosen_rows()])


def block_of(text: str) -> list[list[str]]:
    """The cells of a copied block: a spreadsheet puts tabs between them, a file commas."""
    first = text.partition("\n")[0]
    between = "\t" if "\t" in first else ";" if ";" in first else ","
    return [row for row in csv.reader(io.StringIO(text), delimiter=between) if row]
