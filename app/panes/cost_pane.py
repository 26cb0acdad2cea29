"""What to buy, what it costs and what to ask for it: four lists, one on view at a time."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from PySide6.QtCore import QModelIndex, Qt, Signal
from PySide6.QtGui import QGuiApplication, QKeySequence, QShortcut, QShowEvent
from PySide6.QtWidgets import QLabel, QPlainTextEdit, QPushButton, QWidget

from app.panes.switched_lists import SwitchedLists
from app.tables.buying import BUYING_COLUMNS, BuyRow
from app.tables.costs import COST_COLUMNS, PRICE_ENTRIES, SheetRow
from app.tables.entries import Cells, Entries
from app.tables.entry_table import EntryTable
from app.tables.rows import Rows
from app.tables.view import TableView

BUYING, PRICES, SHEET, QUOTE = range(4)
LATE = "Working out what it costs …"
WORDS = ("To buy", "Prices and times", "Cost sheet", "Quote")


class CostPane(QWidget):
    """Says what was ticked and typed; it shows what the design keeps."""

    ticked = Signal(str, bool)  # key of the buying list, whether it is bought
    typed = Signal()  # the price list was typed in
    pasted = Signal(str)  # a price list from a spreadsheet
    template_asked = Signal()  # the price list, for a spreadsheet
    seen = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.buying = TableView(Rows(BUYING_COLUMNS), "What to buy")
        self.prices = EntryTable(Entries(PRICE_ENTRIES), "Prices and times")
        self.sheet = TableView(Rows(COST_COLUMNS), "Cost sheet")
        self.quote = QPlainTextEdit(readOnly=True)
        self.paste_button, self.template_button = QPushButton("Paste"), QPushButton("Copy list")
        self.copy_button = QPushButton("Copy as text")
        self._sum, self._trouble = QLabel(wordWrap=True, margin=6), QLabel(wordWrap=True, margin=6)
        self._lists = SwitchedLists()
        self._lay_out()
        self._connect()
        self.show_list(BUYING)

    def _lay_out(self) -> None:
        self.quote.setAccessibleName("The quote for the client")
        self.quote.setStyleSheet("font-family: monospace; border: none;")
        self.paste_button.setToolTip("A price list copied from a spreadsheet, with its keys")
        self.template_button.setToolTip("With its keys, to fill in a spreadsheet and paste back")
        self._sum.setProperty("kind", "faint")
        self._trouble.hide()
        self._trouble.setProperty("kind", "refusal")
        shown: tuple[QWidget, ...] = (self.buying, self.prices, self.sheet, self.quote)
        for words, each in zip(WORDS, shown, strict=True):
            self._lists.add_list(words, each)
        self._lists.add_tools(self.paste_button, self.template_button, self.copy_button)
        self._lists.fill(self, above=(self._trouble,), below=(self._sum,))

    def _connect(self) -> None:
        self._lists.asked.connect(self.show_list)
        self.buying.clicked.connect(self._clicked)
        space = QShortcut(QKeySequence(Qt.Key.Key_Space), self.buying)
        space.setContext(Qt.ShortcutContext.WidgetShortcut)
        space.activated.connect(lambda: self._tick(self.buying.record))
        self.prices.entries.typed.connect(lambda _: self.typed.emit())
        self.prices.paste_asked.connect(self._paste)
        self.paste_button.clicked.connect(self._paste)
        self.template_button.clicked.connect(self.template_asked)
        self.copy_button.clicked.connect(self.copy)

    # ------------------------------------------------------------ shown

    @property
    def place(self) -> int:
        """Which of the lists is on view."""
        return self._lists.place

    def show_list(self, place: int) -> None:
        """Bring one of the lists to the front."""
        self._lists.show_list(place)
        for button in (self.paste_button, self.template_button):
            button.setVisible(place == PRICES)
        self.copy_button.setVisible(place != PRICES)

    def show_costs(
        self, buys: Sequence[BuyRow], sheet: Sequence[SheetRow], quote: str, total: str
    ) -> None:
        """The lists of a bed; the row that was picked stays picked by its key."""
        key = getattr(self.buying.record, "key", "")
        is_first = not self.buying.sorted.rows.records
        self.buying.sorted.rows.show_records(buys, "mm")
        self.buying.choose(lambda row: row.key == key)
        self.sheet.sorted.rows.show_records(sheet, "mm")
        if is_first:
            self.buying.fit_columns(widest=176)
            self.sheet.fit_columns()
        self._fill(self.quote, quote)
        self.say_total(total)

    def say_total(self, said: str) -> None:
        """What it comes to, or that it is being worked out."""
        self._sum.setText(said)

    def say_late(self) -> None:
        """It takes longer than a moment."""
        self.say_total(LATE)

    def show_prices(self, rows: Sequence[Cells], is_open: Any) -> None:
        """The price list; what cannot be read stays typed instead."""
        if self._trouble.text():
            return
        is_first = not self.prices.entries.rows
        self.prices.entries.is_open = is_open
        self.prices.entries.show_rows(rows, "mm")
        if is_first:
            self.prices.fit_columns()

    def say_trouble(self, sentence: str, at: tuple[int, str] | None = None) -> None:
        """Why what was typed or pasted is not taken; "" when it is."""
        self.prices.entries.mark_trouble(at if sentence else None)
        self._trouble.setText(sentence)
        self._trouble.setVisible(bool(sentence))

    @staticmethod
    def _fill(editor: QPlainTextEdit, text: str) -> None:
        if editor.toPlainText() != text:
            editor.setPlainText(text)

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self.seen.emit()

    # ------------------------------------------------------------ asked

    def _clicked(self, index: QModelIndex) -> None:
        if index.column() == 0:
            self._tick(self.buying.record)

    def _tick(self, row: BuyRow | None) -> None:
        if row is not None:
            self.ticked.emit(row.key, not row.is_bought)

    def _paste(self) -> None:
        text = QGuiApplication.clipboard().text()
        if text.strip():
            self.pasted.emit(text)

    def copy(self) -> None:
        """Put the list on view on the clipboard."""
        if self.place == QUOTE:
            QGuiApplication.clipboard().setText(self.quote.toPlainText())
        else:
            table = self.buying if self.place == BUYING else self.sheet
            QGuiApplication.clipboard().setText(table.sorted.as_text())
