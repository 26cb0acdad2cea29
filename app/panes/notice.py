"""A line above the panes: what was done, what went wrong, what can be done about it."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QPushButton, QWidget

Answer = tuple[str, Callable[[], None]]


class Notice(QFrame):
    """One sentence and its answers; it stays until one is given or another sentence comes."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setVisible(False)
        self.label = QLabel(wordWrap=True)
        self.buttons: list[QPushButton] = []
        self._line = QHBoxLayout(self)
        self._line.setContentsMargins(12, 6, 12, 6)
        self._line.addWidget(self.label, 1)

    def tell(self, sentence: str, answers: Sequence[Answer] = (), is_trouble: bool = False) -> None:
        """Say a sentence; every answer closes it, and so does the last button, Close."""
        self.setProperty("kind", "banner" if is_trouble else "offer")
        self.style().polish(self)
        self.label.setText(sentence)
        self.setAccessibleName(sentence)
        for button in self.buttons:
            self._line.removeWidget(button)
            button.deleteLater()
        self.buttons = [self._button(words, act) for words, act in (*answers, ("Close", _nothing))]
        self.setVisible(True)

    def _button(self, words: str, act: Callable[[], None]) -> QPushButton:
        button = QPushButton(words)
        button.clicked.connect(self.hide)
        button.clicked.connect(lambda: act())
        self._line.addWidget(button)
        return button


def _nothing() -> None:
    pass
