"""What the maker owns, can buy and pays: tables to type in, one on view at a time."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QGuiApplication, QShowEvent
from PySide6.QtWidgets import QLabel, QPushButton, QWidget

from app.panes.switched_lists import SwitchedLists
from app.tables.entries import Cells, Entries, Entry
from app.tables.entry_table import EntryTable


class TableKind(NamedTuple):
    """One table of the pane: its key, the words on its button, its columns, what goes in it."""

    key: str
    words: str
    columns: tuple[Entry, ...]
    about: str
    can_grow: bool = True


class StockPane(QWidget):
    """Says what was typed; what the design keeps is shown from the design."""

    typed = Signal(str, object)  # key of the table, all its rows of texts
    pasted = Signal(str, str)  # key of the table, what is on the clipboard
    seen = Signal()

    def __init__(self, kinds: Sequence[TableKind], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.kinds = tuple(kinds)
        self.tables: dict[str, EntryTable] = {}
        self._said: dict[str, str] = {}
        self._lists = SwitchedLists()
        self._trouble = QLabel(wordWrap=True, visible=False, margin=6)
        self._idle = QLabel(wordWrap=True, visible=False, margin=6)
        self.paste_button, self.headings_button = QPushButton("Paste"), QPushButton("Copy headings")
        self.out_button = QPushButton("Take rows out")
        self._lay_out()
        self._connect()
        self.show_table(self.kinds[0].key)

    def _lay_out(self) -> None:
        self.paste_button.setToolTip("Cells copied from a spreadsheet, over the table from here on")
        self.headings_button.setToolTip("For a spreadsheet, in the order of this table")
        self.out_button.setToolTip("Take the rows out in which a cell is chosen")
        self._trouble.setProperty("kind", "refusal")
        self._idle.setProperty("kind", "faint")
        for kind in self.kinds:
            table = EntryTable(Entries(kind.columns, kind.can_grow), kind.words)
            self.tables[kind.key] = table
            self._lists.add_list(kind.words, table, kind.about)
        self._lists.add_tools(self.paste_button, self.headings_button, self.out_button)
        self._lists.fill(self, above=(self._trouble,), below=(self._idle,))

    def _connect(self) -> None:
        self._lists.asked.connect(lambda place: self.show_table(self.kinds[place].key))
        for key, table in self.tables.items():
            table.entries.typed.connect(lambda rows, k=key: self.typed.emit(k, rows))
            table.paste_asked.connect(self._paste)
        self.paste_button.clicked.connect(self._paste)
        self.headings_button.clicked.connect(self.copy_headings)
        self.out_button.clicked.connect(lambda: self.table.take_out())

    # ------------------------------------------------------------ shown

    @property
    def kind(self) -> TableKind:
        """What the table on view is for."""
        return self.kinds[self._lists.place]

    @property
    def table(self) -> EntryTable:
        """The table on view, as a widget."""
        return self.tables[self.kind.key]

    def show_table(self, key: str) -> None:
        """Bring one of the tables to the front."""
        place = next(i for i, kind in enumerate(self.kinds) if kind.key == key)
        self._lists.show_list(place)
        self.out_button.setVisible(self.kind.can_grow)
        self._show_trouble()

    def show_rows(self, key: str, rows: Sequence[Cells], unit: str) -> None:
        """What the design keeps of one table; what cannot be read yet stays on view instead."""
        if self._said.get(key):
            return
        table = self.tables[key]
        is_first = not table.entries.rows
        table.entries.show_rows(rows, unit)
        if is_first:
            table.fit_columns()

    def say_trouble(self, key: str, sentence: str, at: tuple[int, str] | None = None) -> None:
        """Why what was typed is not taken, and in which row and column; "" when it is."""
        self._said[key] = sentence
        self.tables[key].entries.mark_trouble(at if sentence else None)
        self._show_trouble()

    def say_idle(self, sentences: Sequence[str]) -> None:
        """What of the stock no part of the bed is cut from."""
        self._idle.setText(" ".join(sentences))
        self._idle.setVisible(bool(sentences))

    def _show_trouble(self) -> None:
        sentence = self._said.get(self.kind.key, "")
        self._trouble.setText(sentence)
        self._trouble.setVisible(bool(sentence))

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self.seen.emit()

    # ------------------------------------------------------------ asked

    def _paste(self) -> None:
        text = QGuiApplication.clipboard().text()
        if text.strip():
            self.pasted.emit(self.kind.key, text)

    def lay(self, text: str) -> None:
        """Lay copied cells over the table on view: from the current cell on, or as new rows."""
        table = self.table
        if not table.currentIndex().isValid():
            first_free = len(table.entries.rows) if self.kind.can_grow else 0
            table.setCurrentIndex(table.entries.index(first_free, 0))
        table.lay(text)
        table.setFocus(Qt.FocusReason.OtherFocusReason)

    def copy_headings(self) -> None:
        """Put the headings of the table on view on the clipboard, cell by cell."""
        unit = self.table.entries.unit
        words = (column.heading(unit) for column in self.kind.columns)
        QGuiApplication.clipboard().setText("\t".join(words) + "\n")
