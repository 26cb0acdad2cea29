"""A table that the maker types in: rows of texts, with an empty row at the end to begin the next.

It knows nothing of what the texts mean. Whoever listens reads them all, and says which cell it
cannot read; what was typed stays there until it can.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Any, NamedTuple

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QObject, Qt, Signal
from PySide6.QtGui import QColor

from app.style import BRICK_PALE
from app.tables.rows import Index, Role

Cells = tuple[str, ...]


class Entry(NamedTuple):
    """One column: `name` as in a pasted table, how it is headed in a unit, what to type in it."""

    name: str
    heading: Callable[[str], str]
    tip: str = ""
    is_number: bool = False
    is_fixed: bool = False  # told, not typed


class Entries(QAbstractTableModel):
    """Texts in rows and columns. `typed` carries all rows that hold anything, after each change."""

    typed = Signal(object)  # tuple of rows of texts

    def __init__(
        self, columns: Sequence[Entry], can_grow: bool = True, parent: QObject | None = None
    ) -> None:
        super().__init__(parent)
        self.columns = tuple(columns)
        self.can_grow = can_grow
        self.unit = "mm"
        self.trouble: tuple[int, str] | None = None  # row and name of the column
        self.is_open: Callable[[int, str], bool] = lambda _row, _column: True
        self._rows: list[list[str]] = []

    @property
    def rows(self) -> tuple[Cells, ...]:
        """All rows in which something stands."""
        return tuple(row for row in self.all_rows if any(cell.strip() for cell in row))

    @property
    def all_rows(self) -> tuple[Cells, ...]:
        """Every row but the waiting one, emptied ones among them."""
        return tuple(tuple(row) for row in self._rows)

    def show_rows(self, rows: Sequence[Cells], unit: str) -> None:
        """Put other rows on view; nothing is told of it, and the cursor stays if it can."""
        if len(rows) == len(self._rows):
            self._rows, self.trouble = [list(row) for row in rows], None
            last = self.index(self.rowCount() - 1, len(self.columns) - 1)
            self.dataChanged.emit(self.index(0, 0), last)
        else:
            self.beginResetModel()
            self._rows, self.trouble = [list(row) for row in rows], None
            self.endResetModel()
        self.unit = unit
        self.headerDataChanged.emit(Qt.Orientation.Horizontal, 0, len(self.columns) - 1)

    def mark_trouble(self, trouble: tuple[int, str] | None) -> None:
        """Show which cell cannot be read; None for none."""
        if trouble != self.trouble:
            self.trouble = trouble
            last = self.index(self.rowCount() - 1, len(self.columns) - 1)
            self.dataChanged.emit(self.index(0, 0), last)

    # ------------------------------------------------------------ changing rows

    def take_out(self, rows: Sequence[int]) -> None:
        """Take these rows out."""
        for row in sorted((r for r in rows if r < len(self._rows)), reverse=True):
            self.beginRemoveRows(QModelIndex(), row, row)
            del self._rows[row]
            self.endRemoveRows()
        self.typed.emit(self.rows)

    def lay(self, at: Index, cells: Sequence[Sequence[str]]) -> None:
        """Lay a block of texts over the table from a cell on, as a spreadsheet does."""
        if not self.can_grow:
            cells = cells[: len(self._rows) - at.row()]
        self.beginResetModel()
        for row, texts in enumerate(cells, at.row()):
            while row >= len(self._rows):
                self._rows.append([""] * len(self.columns))
            for column, text in enumerate(texts[: len(self.columns) - at.column()], at.column()):
                if self._takes(row, column):
                    self._rows[row][column] = text.strip()
        self.endResetModel()
        self.typed.emit(self.rows)

    # ------------------------------------------------------------ Qt's questions

    def rowCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008 (Qt's own signature)
        return 0 if parent.isValid() else len(self._rows) + self.can_grow

    def columnCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008
        return 0 if parent.isValid() else len(self.columns)

    def flags(self, index: Index) -> Qt.ItemFlag:
        flags = super().flags(index)
        if index.isValid() and self._takes(index.row(), index.column()):
            flags |= Qt.ItemFlag.ItemIsEditable
        return flags

    def _takes(self, row: int, column: int) -> bool:
        """Whether a cell is typed in; `is_open` says so where the whole column is not fixed."""
        each = self.columns[column]
        return not each.is_fixed and self.is_open(row, each.name)

    def data(self, index: Index, role: int = Role.DisplayRole) -> Any:
        if not index.isValid():
            return None
        row, column = index.row(), self.columns[index.column()]
        if role in (Role.DisplayRole, Role.EditRole):
            return self._rows[row][index.column()] if row < len(self._rows) else ""
        if role == Role.ToolTipRole:
            return column.tip
        if role == Role.TextAlignmentRole:
            side = Qt.AlignmentFlag.AlignRight if column.is_number else Qt.AlignmentFlag.AlignLeft
            return int(side | Qt.AlignmentFlag.AlignVCenter)
        if role == Role.BackgroundRole and self.trouble is not None:
            at_row, name = self.trouble
            is_here = row == at_row and name in ("", column.name)
            return QColor(BRICK_PALE) if is_here else None
        return None

    def setData(self, index: Index, value: Any, role: int = Role.EditRole) -> bool:
        if role != Role.EditRole or not index.isValid():
            return False
        text = str(value).strip()
        if index.row() >= len(self._rows):
            if not text:
                return False
            self._begin_another_row()
        if self._rows[index.row()][index.column()] == text:
            return False
        self._rows[index.row()][index.column()] = text
        self.dataChanged.emit(index, index)
        self.typed.emit(self.rows)
        return True

    def _begin_another_row(self) -> None:
        """What is typed in the empty row makes it a row; another empty one follows."""
        place = len(self._rows) + 1
        self.beginInsertRows(QModelIndex(), place, place)
        self._rows.append([""] * len(self.columns))
        self.endInsertRows()

    def headerData(
        self, section: int, orientation: Qt.Orientation, role: int = Role.DisplayRole
    ) -> Any:
        if orientation == Qt.Orientation.Vertical:
            return str(section + 1) if role == Role.DisplayRole else None
        if role == Role.ToolTipRole:
            return self.columns[section].tip
        if role == Role.TextAlignmentRole and self.columns[section].is_number:
            return int(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        return self.columns[section].heading(self.unit) if role == Role.DisplayRole else None
