"""The line below the plan set: what is under way, what went wrong, and what leaves the window."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import (
    QFrame,
    QHBoxLayout,
    QLabel,
    QProgressBar,
    QPushButton,
    QSizePolicy,
    QWidget,
)


class PlanFoot(QFrame):
    """Says what was pressed. While a file is written there is a bar and a way to give up."""

    shop_asked = Signal()
    print_asked = Signal()
    pdf_asked = Signal()
    given_up = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setProperty("kind", "help")
        self.said = QLabel(wordWrap=True)
        self.said.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        self.said.setAccessibleName("About the plan set")
        self._told, self._ticks = "", ""
        self.bar = QProgressBar(textVisible=False)
        self.bar.setAccessibleName("Pages done")
        self.bar.setFixedWidth(110)
        self.give_up_button = QPushButton("Give up")
        self.shop_button = QPushButton("Shop's name and logo …")
        self.print_button, self.pdf_button = QPushButton("Print …"), QPushButton("Save as PDF …")
        self.print_button.setToolTip("Print the pages that are ticked")
        self.pdf_button.setToolTip("Write the pages that are ticked to a file")
        line = QHBoxLayout(self)
        line.setContentsMargins(8, 3, 6, 3)
        line.addWidget(self.said, 1)
        for widget in (
            self.bar, self.give_up_button, self.shop_button, self.print_button, self.pdf_button,
        ):  # fmt: skip
            line.addWidget(widget)
        self.setMinimumHeight(self.pdf_button.sizeHint().height() + 8)
        self.shop_button.clicked.connect(self.shop_asked)
        self.print_button.clicked.connect(self.print_asked)
        self.pdf_button.clicked.connect(self.pdf_asked)
        self.give_up_button.clicked.connect(self.given_up)
        self.show_work(0, 0)

    def say(self, words: str, is_trouble: bool = False) -> None:
        """What is under way, or what went wrong."""
        self.said.setProperty("kind", "refusal" if is_trouble else "faint")
        self.said.style().polish(self.said)
        self._told = words
        self.said.setText(words or self._ticks)

    def show_work(self, done: int, of: int) -> None:
        """How far a file is; `of` 0: none is written."""
        is_on = of > 0
        self.bar.setVisible(is_on)
        self.give_up_button.setVisible(is_on)
        for button in (self.shop_button, self.print_button, self.pdf_button):
            button.setVisible(not is_on)
        if is_on:
            self.bar.setRange(0, of)
            self.bar.setValue(done)

    def tell_ticks(self, many: int, of: int) -> None:
        """How many pages are ticked: said where nothing else is."""
        self._ticks = f"{many} of {of} pages ticked" if of else ""
        if not self._told:
            self.said.setText(self._ticks)
        for button in (self.print_button, self.pdf_button):
            button.setEnabled(many > 0)
