"""Lists of one pane, one on view at a time, under a line with a button for each of them."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import Signal
from PySide6.QtWidgets import (
    QButtonGroup,
    QHBoxLayout,
    QPushButton,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)


class SwitchedLists(QStackedWidget):
    """The lists, and the `line` of their buttons, which has room for tools of the pane's own."""

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

    def add_tools(self, *tools: QWidget) -> None:
        """What is done to the list on view, at the far end of the line."""
        self.line.addStretch(1)
        for tool in tools:
            self.line.addWidget(tool)

    def fill(
        self, pane: QWidget, above: Sequence[QWidget] = (), below: Sequence[QWidget] = ()
    ) -> None:
        """Lay out a pane that holds the lists, and only what stands above and below them."""
        whole = QVBoxLayout(pane)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(0)
        whole.addLayout(self.line)
        for widget in above:
            whole.addWidget(widget)
        whole.addWidget(self, 1)
        for widget in below:
            whole.addWidget(widget)

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
