"""A table over a tuple of records: headings and cell texts are a tuple of columns."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Any, NamedTuple

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QObject, QPersistentModelIndex, Qt
from PySide6.QtGui import QIcon

Index = QModelIndex | QPersistentModelIndex
Role = Qt.ItemDataRole
ABOUT = Role.UserRole + 1  # full name of the dimension that the cell shows
ROW = Role.UserRole + 2  # the record itself
SORT = Role.UserRole + 3  # what the column is sorted by


class Column(NamedTuple):
    """How one column is headed, filled and sorted.

    `heading` gets the shown unit, `text` the record and the shown unit; `about` names the dimension
    behind a cell, so that it can be asked why.
    """

    heading: Callable[[str], str]
    text: Callable[[Any, str], str]
    sort: Callable[[Any], Any]
    is_number: bool = False
    about: Callable[[Any], str] = lambda _: ""
    icon: Callable[[Any], QIcon] | None = None
    tip: Callable[[Any, str], str] | None = None


class Rows(QAbstractTableModel):
    """Shows records; a new tuple of the same length keeps selection and scroll where they are."""

    def __init__(self, columns: Sequence[Column], parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.columns = tuple(columns)
        self.records: tuple[Any, ...] = ()
        self.unit = "mm"

    def show_records(self, records: Sequence[Any], unit: str) -> None:
        """Put other records, or another unit, on view."""
        records = tuple(records)
        if records is self.records and unit == self.unit:
            return
        heads_moved = unit != self.unit
        if len(records) == len(self.records):
            self.records, self.unit = records, unit
            if records:
                last = self.index(len(records) - 1, len(self.columns) - 1)
                self.dataChanged.emit(self.index(0, 0), last)
        else:
            self.beginResetModel()
            self.records, self.unit = records, unit
            self.endResetModel()
        if heads_moved:
            self.headerDataChanged.emit(Qt.Orientation.Horizontal, 0, len(self.columns) - 1)

    def rowCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008 (Qt's own signature)
        return 0 if parent.isValid() else len(self.records)

    def columnCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008
        return 0 if parent.isValid() else len(self.columns)

    def data(self, index: Index, role: int = Role.DisplayRole) -> Any:
        if not index.isValid():
            return None
        record, column = self.records[index.row()], self.columns[index.column()]
        if role == Role.DisplayRole:
            return column.text(record, self.unit)
        if role == Role.ToolTipRole:
            return column.tip(record, self.unit) if column.tip else column.text(record, self.unit)
        if role == Role.TextAlignmentRole:
            side = Qt.AlignmentFlag.AlignRight if column.is_number else Qt.AlignmentFlag.AlignLeft
            return int(side | Qt.AlignmentFlag.AlignVCenter)
        if role == Role.DecorationRole:
            return column.icon(record) if column.icon else None
        return {ABOUT: column.about, ROW: lambda r: r, SORT: column.sort}.get(role, lambda _: None)(
            record
        )

    def headerData(
        self, section: int, orientation: Qt.Orientation, role: int = Role.DisplayRole
    ) -> Any:
        if orientation != Qt.Orientation.Horizontal:
            return None
        if role == Role.TextAlignmentRole and self.columns[section].is_number:
            return int(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        return self.columns[section].heading(self.unit) if role == Role.DisplayRole else None
