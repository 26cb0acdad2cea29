"""Above the bed: what is wished for but not built, why, and what would work."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QPushButton, QVBoxLayout, QWidget


class RefusalBanner(QFrame):
    """Shown only while a wish stands; the last good bed is on view below it."""

    shown_field = Signal(str)
    given_up = Signal(str)
    offer_taken = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.field = ""
        self.setProperty("kind", "banner")
        self.setVisible(False)
        self._title = QLabel(wordWrap=True)
        self._title.setProperty("kind", "title")
        self._sentence = QLabel(wordWrap=True)
        self._offer = QLabel(wordWrap=True)
        self.show_button = QPushButton("Go to the field")
        self.use_button = QPushButton("Use what works")
        self.use_button.setProperty("kind", "main")
        self.drop_button = QPushButton("Take it back")
        self.show_button.clicked.connect(lambda: self.shown_field.emit(self.field))
        self.use_button.clicked.connect(lambda: self.offer_taken.emit(self.field))
        self.drop_button.clicked.connect(lambda: self.given_up.emit(self.field))
        told = QVBoxLayout()
        told.setSpacing(2)
        for label in (self._title, self._sentence, self._offer):
            told.addWidget(label)
        buttons = QVBoxLayout()
        buttons.setSpacing(3)
        for button in (self.use_button, self.drop_button, self.show_button):
            buttons.addWidget(button)
        buttons.addStretch(1)
        whole = QHBoxLayout(self)
        whole.setContentsMargins(12, 8, 12, 8)
        whole.addLayout(told, 1)
        whole.addLayout(buttons)

    def tell(self, field: str, title: str, sentence: str, offer: str, can_use: bool) -> None:
        """What was wished, why it is refused, and the way out as far as it is known."""
        self.field = field
        self._title.setText(title)
        self._sentence.setText(sentence)
        self._offer.setText(offer)
        self._offer.setVisible(bool(offer))
        self.use_button.setEnabled(can_use)
        self.setVisible(True)
        self.setAccessibleName(title)
        self.setAccessibleDescription(f"{sentence} {offer}".strip())
