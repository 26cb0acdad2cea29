"""Sorting and filtering of a table of records, and its text for the clipboard."""

from __future__ import annotations

from PySide6.QtCore import QObject, QSortFilterProxyModel

from app.tables.rows import ROW, Index, Rows


class SortedRows(QSortFilterProxyModel):
    """Sorts by the column's own key; shows rows in which every filter word stands somewhere."""

    def __init__(self, rows: Rows, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._words: tuple[str, ...] = ()
        self.setSourceModel(rows)

    @property
    def rows(self) -> Rows:
        """The table itself."""
        source = self.sourceModel()
        assert isinstance(source, Rows)
        return source

    def keep(self, typed: str) -> None:
        """Show only rows that hold each of these words."""
        self.beginFilterChange()
        self._words = tuple(typed.casefold().split())
        self.endFilterChange()

    def filterAcceptsRow(self, row: int, parent: Index) -> bool:
        rows = self.rows
        cells = (c.text(rows.records[row], rows.unit) for c in rows.columns)
        text = " ".join(cells).casefold()
        return all(word in text for word in self._words)

    def lessThan(self, left: Index, right: Index) -> bool:
        key, records = self.rows.columns[left.column()].sort, self.rows.records
        return bool(key(records[left.row()]) < key(records[right.row()]))

    def as_text(self) -> str:
        """Headings and the rows on view, tab-separated: it pastes into any spreadsheet."""
        rows = self.rows
        lines = [[column.heading(rows.unit) for column in rows.columns]]
        for place in range(self.rowCount()):
            record = self.index(place, 0).data(ROW)
            lines.append([column.text(record, rows.unit) for column in rows.columns])
        return "".join("\t".join(line) + "\n" for line in lines)
