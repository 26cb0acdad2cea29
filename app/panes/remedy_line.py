"""Below the checks: what would make the picked one hold, and the button that does it."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QWidget


class RemedyLine(QWidget):
    """One sentence, and the button where a change is offered; hidden while there is nothing."""

    taken = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.label = QLabel(wordWrap=True)
        self.button = QPushButton("&Make this change")
        self.button.setProperty("kind", "main")
        self.button.clicked.connect(self.taken)
        line = QHBoxLayout(self)
        line.setContentsMargins(0, 4, 0, 2)
        line.addWidget(self.label, 1)
        line.addWidget(self.button, 0, Qt.AlignmentFlag.AlignTop)
        self.tell("")

    def tell(self, sentence: str, change: str = "") -> None:
        """Say what would mend the check; `change` names what the button does, "" for no button."""
        self.label.setText(sentence)
        self.button.setVisible(bool(change))
        self.button.setAccessibleName(f"Make this change: {change}" if change else "")
        self.button.setAccessibleDescription(sentence)
        self.button.setToolTip(change)
        self.setVisible(bool(sentence))
