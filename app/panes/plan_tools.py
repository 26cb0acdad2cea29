"""The line above a page of the plan set: which page, and how large it is shown."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QToolButton, QWidget

from app.panes.plan_paper import FREE, WHOLE, WIDTH
from model.units import Share

TRUE: Share = 1.0
ROOM, LEAST = 28, 32  # px: beside the words of a button, and of any button


class PlanTools(QWidget):
    """Says what was pressed; knows no pages."""

    turned = Signal(int)  # -1 or 1
    scale_asked = Signal(int)  # -1 or 1
    follow_asked = Signal(str)  # WHOLE, WIDTH, or FREE for true size
    room_asked = Signal(bool)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.before_button = _tool(Qt.ArrowType.UpArrow, "The page before (Page up)")
        self.after_button = _tool(Qt.ArrowType.DownArrow, "The next page (Page down)")
        self.place, self.scale = QLabel(), QLabel()
        self.place.setAccessibleName("Page on view")
        self.scale.setAccessibleName("Size on the screen")
        self.scale.setMinimumWidth(self.fontMetrics().horizontalAdvance("800 %"))
        self.scale.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self.smaller_button, self.larger_button = _tool("−", "Smaller"), _tool("+", "Larger")
        self.whole_button = _tool("Page", "The whole page")
        self.width_button = _tool("Width", "The whole width of the page")
        self.true_button = _tool(
            "1 : 1", "True size: as large as it prints, by the size of this screen"
        )
        self.room_button = QPushButton("More room", checkable=True)
        self.room_button.setToolTip("Let the lists have most of the window, or give it back")
        self._lay_out()
        self._connect()

    def _lay_out(self) -> None:
        line = QHBoxLayout(self)
        line.setContentsMargins(6, 6, 6, 6)
        line.setSpacing(4)
        for widget in (self.before_button, self.after_button, self.place):
            line.addWidget(widget)
        line.addStretch(1)
        for widget in (
            self.smaller_button, self.scale, self.larger_button, self.whole_button,
            self.width_button, self.true_button, self.room_button,
        ):  # fmt: skip
            line.addWidget(widget)
        for button in (self.whole_button, self.width_button):
            button.setCheckable(True)

    def _connect(self) -> None:
        self.before_button.clicked.connect(lambda: self.turned.emit(-1))
        self.after_button.clicked.connect(lambda: self.turned.emit(1))
        self.smaller_button.clicked.connect(lambda: self.scale_asked.emit(-1))
        self.larger_button.clicked.connect(lambda: self.scale_asked.emit(1))
        self.whole_button.clicked.connect(lambda: self.follow_asked.emit(WHOLE))
        self.width_button.clicked.connect(lambda: self.follow_asked.emit(WIDTH))
        self.true_button.clicked.connect(lambda: self.follow_asked.emit(FREE))
        self.room_button.toggled.connect(self.room_asked)

    def show_place(self, place: int, count: int) -> None:
        """Which page is on view, of how many; -1 where there is none."""
        self.place.setText(f"{place + 1} / {count}" if 0 <= place < count else "")
        self.before_button.setEnabled(place > 0)
        self.after_button.setEnabled(-1 < place < count - 1)

    def show_scale(self, scale: Share, follows: str) -> None:
        """How large the page is shown, and what that follows."""
        self.scale.setText(f"{round(100 * scale)} %")
        self.whole_button.setChecked(follows == WHOLE)
        self.width_button.setChecked(follows == WIDTH)


def _tool(face: Qt.ArrowType | str, name: str) -> QToolButton:
    button = QToolButton()
    words = face if isinstance(face, str) else ""
    if isinstance(face, str):
        button.setText(face)
    else:
        button.setArrowType(face)
    button.setProperty("kind", "plain")
    button.setFixedWidth(max(button.fontMetrics().horizontalAdvance(words) + ROOM, LEAST))
    button.setAccessibleName(name)
    button.setToolTip(name)
    return button
