"""The line below the boards and sheets: the bound in a sentence, the search, what is offered."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QPushButton, QSizePolicy, QWidget

STOP, GO_ON = "Stop", "Go on"


class CuttingFoot(QFrame):
    """Words, and two buttons that are there only while they do something."""

    stop_asked = Signal()
    go_on_asked = Signal()
    offer_taken = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setProperty("kind", "help")
        self.short, self.progress = QLabel(wordWrap=True), QLabel()
        self.short.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        self.progress.setProperty("kind", "faint")
        self.stop_button, self.offer_button = QPushButton(STOP), QPushButton()
        line = QHBoxLayout(self)
        line.setContentsMargins(8, 3, 6, 3)
        line.addWidget(self.short, 1)
        line.addStretch(0)
        for widget in (self.progress, self.stop_button, self.offer_button):
            line.addWidget(widget)
        self.setMinimumHeight(self.stop_button.sizeHint().height() + 8)
        self.stop_button.clicked.connect(self._press)
        self.offer_button.clicked.connect(self.offer_taken)
        self.show_parts(False, False)
        self.say_progress("")

    def say_progress(self, words: str, button: str = "") -> None:
        """How far the search is; `button` stops it or has it go on."""
        self.progress.setText(words)
        self.progress.setVisible(bool(words))
        self.stop_button.setText(button)
        self.stop_button.setVisible(bool(button))

    def tell(self, sentence: str, note: str, offer: str) -> None:
        """The sentence, all that is to say in its note, and the words on the button of an offer."""
        self.short.setText(sentence)
        self.short.setToolTip(note)
        self.offer_button.setText(offer)

    def show_parts(self, has_sentence: bool, may_offer: bool) -> None:
        """Which of the sentence and the offer have their place here."""
        self.short.setVisible(has_sentence)
        self.offer_button.setVisible(may_offer and bool(self.offer_button.text()))

    @property
    def is_searching(self) -> bool:
        """Whether anything is said of the search."""
        return bool(self.progress.text())

    def _press(self) -> None:
        (self.stop_asked if self.stop_button.text() == STOP else self.go_on_asked).emit()
