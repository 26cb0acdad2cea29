"""All woods and sheets with the source of every figure; the maker's own are added and taken out."""

from __future__ import annotations

from html import escape
from typing import Any

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QGuiApplication, QKeySequence, QShortcut, QShowEvent
from PySide6.QtWidgets import (
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QMenu,
    QPushButton,
    QSplitter,
    QTextBrowser,
    QToolButton,
    QVBoxLayout,
    QWidget,
)

from app.tables.materials import MATERIAL_COLUMNS, MaterialRow, material_rows
from app.tables.rows import Rows
from app.tables.view import TableView
from model.errors import BadInput
from model.materials import OwnRows

UNBROKEN = 10_000  # columns: the pane breaks lines itself
INDENT = 6  # px for each space before a line
INVITING = "Pick a material to read where its figures come from and what it may bear."


class MaterialsPane(QWidget):
    """Says what was asked for; what the design keeps is shown from the design."""

    table_asked = Signal()  # a file to add rows from
    pasted = Signal(str)  # rows from a spreadsheet
    taken_out = Signal(str)  # a key

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.table = TableView(Rows(MATERIAL_COLUMNS), "Woods and sheets")
        self.filter_line = QLineEdit(placeholderText="Show rows that hold these words")
        self.filter_line.setAccessibleName("Filter the materials")
        self.filter_line.setClearButtonEnabled(True)
        self.add_button = QPushButton("Add from a table …")
        self.add_button.setToolTip("Woods or sheets of your own, from a CSV file; kept in the bed")
        self.paste_button = QPushButton("Paste rows")
        self.paste_button.setToolTip("Rows copied from a spreadsheet, with their headings")
        self.headings_button = QToolButton(text="Copy headings", toolTip="For a spreadsheet")
        self.out_button = QPushButton("Take out", enabled=False)
        self.out_button.setToolTip("Take a material of your own out of this bed")
        self.said = QLabel(wordWrap=True, visible=False, margin=6)
        self.told = QTextBrowser(plainText=INVITING)
        self._own, self._grade = OwnRows(), ""
        self._is_due = True  # filled when first looked at
        self._lay_out()
        self._connect()

    def _lay_out(self) -> None:
        self.told.setAccessibleName("The figures of a material and their sources")
        self.told.setTabChangesFocus(True)
        self.headings_button.setProperty("kind", "plain")
        self.headings_button.setPopupMode(QToolButton.ToolButtonPopupMode.InstantPopup)
        line = QHBoxLayout()
        line.setContentsMargins(6, 6, 6, 6)
        line.setSpacing(6)
        line.addWidget(self.filter_line, 1)
        for button in (
            self.add_button, self.paste_button, self.headings_button, self.out_button,
        ):  # fmt: skip
            line.addWidget(button)
        beside = QSplitter(Qt.Orientation.Horizontal)
        beside.addWidget(self.table)
        beside.addWidget(self.told)
        beside.setStretchFactor(0, 3)
        beside.setStretchFactor(1, 2)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(0)
        whole.addLayout(line)
        whole.addWidget(self.said)
        whole.addWidget(beside, 1)

    def _connect(self) -> None:
        menu = QMenu(self.headings_button)
        for kind in ("woods", "sheets"):
            menu.addAction(f"For {kind}").triggered.connect(
                lambda _=False, k=kind: self.copy_headings(k)
            )
        self.headings_button.setMenu(menu)
        self.filter_line.textChanged.connect(self.table.sorted.keep)
        self.table.row_chosen.connect(self._tell)
        self.add_button.clicked.connect(self.table_asked)
        self.paste_button.clicked.connect(self.paste)
        self.out_button.clicked.connect(lambda: self.taken_out.emit(self.table.record.key))
        paste = QShortcut(QKeySequence(QKeySequence.StandardKey.Paste), self.table)
        paste.setContext(Qt.ShortcutContext.WidgetShortcut)
        paste.activated.connect(self.paste)

    # ------------------------------------------------------------ shown

    def show_materials(self, own: OwnRows, grade: str) -> None:
        """The materials of a design and the grade of its boards."""
        self._own, self._grade = own, grade
        self._is_due = True
        if self.isVisible():
            self._fill()

    def say(self, sentence: str, is_trouble: bool = False) -> None:
        """What was done, or why it was not; "" for nothing."""
        self.said.setProperty("kind", "refusal" if is_trouble else "faint")
        self.said.style().polish(self.said)
        self.said.setText(sentence)
        self.said.setVisible(bool(sentence))

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        if self._is_due:
            self._fill()

    def _fill(self) -> None:
        self._is_due = False
        is_first = not self.table.sorted.rows.records
        key = getattr(self.table.record, "key", "")
        self.table.sorted.rows.show_records(material_rows(self._own), "mm")
        self.table.choose(lambda each: each.key == key)
        self._tell(self.table.record)
        if is_first:
            self.table.fit_columns()

    def _tell(self, each: MaterialRow | None) -> None:
        self.out_button.setEnabled(each is not None and each.is_own)
        if each is None:
            self.told.setPlainText(INVITING)
            return
        from model.exports.materials_text import detail

        try:
            lines = tuple(detail(each.key, self._own, self._grade, UNBROKEN))
        except BadInput as trouble:
            lines = (trouble.sentence,)
        self.told.setHtml("".join(_paragraph(line) for line in lines))

    # ------------------------------------------------------------ asked

    def choose(self, key: str) -> None:
        """Pick a material by its key."""
        self.filter_line.clear()
        self.table.choose(lambda each: each.key == key)

    def paste(self) -> None:
        """Ask for the rows on the clipboard."""
        self.pasted.emit(QGuiApplication.clipboard().text())

    def copy_headings(self, kind: Any) -> None:
        """Put the headings of a table of one's own on the clipboard, cell by cell."""
        from model.exports.materials_text import template

        QGuiApplication.clipboard().setText(template(kind).replace(",", "\t"))
        self.say(f"The headings for {kind} are copied: paste them into a spreadsheet.")


def _paragraph(line: str) -> str:
    """A line of text as a paragraph, as far from the margin as its spaces say."""
    far = INDENT * (len(line) - len(line.lstrip()))
    text = escape(line.strip()) or "&nbsp;"
    return f'<p style="margin: 1px 0 1px {far}px">{text}</p>'
