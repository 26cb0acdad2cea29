"""The line above the boards and sheets: which page, which material, which board, how large."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QSignalBlocker, Qt, Signal
from PySide6.QtWidgets import (
    QButtonGroup,
    QComboBox,
    QHBoxLayout,
    QPushButton,
    QToolButton,
    QWidget,
)

PLANS, DRAWINGS, ORDER = range(3)
PAGES = ("Plans", "Drawings", "Cut order")


class CuttingTools(QWidget):
    """Says what was pressed; knows no plans."""

    page_chosen = Signal(int)
    plan_chosen = Signal(str)  # its key
    board_asked = Signal(int)  # -1 or 1
    zoom_asked = Signal(int)  # -1 or 1, 0 to fit
    room_asked = Signal(bool)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._switch = QButtonGroup(self)
        self.chooser = QComboBox()
        self.chooser.setAccessibleName("Material")
        self.chooser.setSizeAdjustPolicy(
            QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon
        )
        self.before_button = _tool(Qt.ArrowType.UpArrow, "The one before")
        self.after_button = _tool(Qt.ArrowType.DownArrow, "The next one")
        self.smaller_button, self.larger_button = _tool("−", "Smaller"), _tool("+", "Larger")
        self.fit_button = _tool("Fit", "As large as there is room")
        self.room_button = QPushButton("More room", checkable=True)
        self.room_button.setToolTip("Let the lists have most of the window, or give it back")
        self._lay_out()
        self._connect()

    def _lay_out(self) -> None:
        line = QHBoxLayout(self)
        line.setContentsMargins(6, 6, 6, 6)
        line.setSpacing(5)
        for place, words in enumerate(PAGES):
            button = QPushButton(words, checkable=True, checked=place == PLANS)
            self._switch.addButton(button, place)
            line.addWidget(button)
        line.addWidget(self.chooser, 1)
        for tool in (*self._drawing_tools, self.room_button):
            line.addWidget(tool)

    def _connect(self) -> None:
        self._switch.idClicked.connect(self.page_chosen)
        self.chooser.currentIndexChanged.connect(
            lambda place: self.plan_chosen.emit(self.chooser.itemData(place) or "")
        )
        self.before_button.clicked.connect(lambda: self.board_asked.emit(-1))
        self.after_button.clicked.connect(lambda: self.board_asked.emit(1))
        self.smaller_button.clicked.connect(lambda: self.zoom_asked.emit(-1))
        self.larger_button.clicked.connect(lambda: self.zoom_asked.emit(1))
        self.fit_button.clicked.connect(lambda: self.zoom_asked.emit(0))
        self.room_button.toggled.connect(self.room_asked)

    @property
    def _drawing_tools(self) -> tuple[QToolButton, ...]:
        return (
            self.before_button, self.after_button, self.smaller_button, self.larger_button,
            self.fit_button,
        )  # fmt: skip

    # ------------------------------------------------------------ what is shown

    @property
    def page(self) -> int:
        """The page whose button is down."""
        return self._switch.checkedId()

    def press_page(self, page: int) -> None:
        """A page is shown, whoever asked for it."""
        self._switch.button(page).setChecked(True)

    def page_button(self, page: int) -> QPushButton:
        """The button of a page."""
        button = self._switch.button(page)
        assert isinstance(button, QPushButton)
        return button

    def offer(self, listed: Sequence[tuple[str, str]], key: str) -> None:
        """What can be chosen, words and key of each, and which one is."""
        box = self.chooser
        with QSignalBlocker(box):
            if list(listed) != [(box.itemText(k), box.itemData(k)) for k in range(box.count())]:
                box.clear()
                for words, each in listed:
                    box.addItem(words, each)
            box.setCurrentIndex(box.findData(key))

    def show_drawing_tools(self, are_wanted: bool) -> None:
        """The buttons for what is drawn, while anything is."""
        for tool in self._drawing_tools:
            tool.setVisible(are_wanted)

    def show_board(self, place: int, count: int) -> None:
        """Which board is in sight, of how many."""
        self.before_button.setEnabled(place > 0)
        self.after_button.setEnabled(-1 < place < count - 1)


def _tool(face: Qt.ArrowType | str, name: str) -> QToolButton:
    button = QToolButton()
    if isinstance(face, str):
        button.setText(face)
    else:
        button.setArrowType(face)
    button.setProperty("kind", "plain")
    button.setMaximumWidth(34)
    button.setAccessibleName(name)
    button.setToolTip(name)
    return button
