"""Lists of one pane, one on view at a time, under a line with a button for each of them."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QButtonGroup, QHBoxLayout, QPushButton, QStackedWidget, QWidget


class SwitchedLists(QStackedWidget):
    """The lists; the pane lays out their `line`, and adds tools of its own behind the buttons."""

    asked = Signal(int)  # a button was pressed: the place of its list

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.line = QHBoxLayout()
        self.line.setContentsMargins(6, 6, 6, 6)
        self.line.setSpacing(6)
        self._switch = QButtonGroup(self)
        self._switch.idClicked.connect(self.asked)

    def add_list(self, words: str, shown: QWidget, about: str = "") -> None:
        """One more list, and its button at the end of the line."""
        button = QPushButton(words, checkable=True, toolTip=about)
        self._switch.addButton(button, self.addWidget(shown))
        self.line.addWidget(button)

    def show_list(self, place: int) -> None:
        """Bring a list to the front, whoever asked for it."""
        self.setCurrentIndex(place)
        self._switch.button(place).setChecked(True)

    @property
    def place(self) -> int:
        """Which of the lists is on view."""
        return self.currentIndex()

    @property
    def buttons(self) -> tuple[QPushButton, ...]:
        """The buttons, in the order of the lists."""
        return tuple(self._switch.button(place) for place in range(self.count()))
