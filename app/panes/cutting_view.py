"""The boards and sheets of a plan, drawn to scale one below the other."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QPoint, Qt, QTimer, Signal
from PySide6.QtGui import QKeyEvent, QResizeEvent, QWheelEvent
from PySide6.QtWidgets import QScrollArea, QToolTip, QWidget

from app.panes.cutting_sheets import CUT, PIECE, Board, CuttingSheets
from app.style import SHEET
from app.view.drawing_player import Lights

ZOOMS = (1.0, 1.5, 2.0, 3.0, 4.5, 6.0)


class CuttingView(QScrollArea):
    """Shows boards; says which piece or cut is pointed at and pressed, and which key was used."""

    piece_picked = Signal(str)  # its name, "" beside all pieces
    piece_pointed = Signal(str)
    cut_picked = Signal(int)  # its number
    stepped = Signal(int)  # -1 or 1
    ticked = Signal()  # Space
    board_changed = Signal(int)  # place of the one in sight

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.zoom = ZOOMS[0]
        self.board = -1  # the place of the one that is told, -1 where there is none
        self.tip = str  # what a piece's note says
        self.sheets = CuttingSheets()
        self.setWidget(self.sheets)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName("Boards and sheets, to scale")
        self.setStyleSheet(f"QScrollArea {{ background: {SHEET}; }}")
        self.setMinimumSize(180, 110)
        self._pointed = ""
        self._soon = QTimer(self, singleShot=True, interval=0)
        self._soon.timeout.connect(self.arrange)
        self.sheets.pressed.connect(self._press)
        self.sheets.pointed.connect(self._point)
        self.sheets.touched.connect(lambda: self.setFocus(Qt.FocusReason.MouseFocusReason))
        self.sheets.note_asked.connect(self.tell)
        self.verticalScrollBar().valueChanged.connect(lambda _: self._scrolled())

    # ------------------------------------------------------------ what is shown

    def show_boards(self, boards: Sequence[Board]) -> None:
        """Other boards, or the same ones told otherwise."""
        self.sheets.show_boards(boards)
        self.board = min(max(self.board, 0), len(boards) - 1)
        self.arrange()
        self._tell_board()

    def light(self, lights: Lights) -> None:
        """Light what `about` names."""
        if lights != self.sheets.lights:
            self.sheets.lights = dict(lights)
            self.sheets.update()

    def arrange(self) -> None:
        """Fit the drawings to the window."""
        bar = self.verticalScrollBar()
        share = bar.value() / max(bar.maximum(), 1)
        self.sheets.arrange(self.maximumViewportSize(), self.zoom)
        room = self.viewport().size()  # narrower, once there is a bar beside the drawings
        if room.width() < self.maximumViewportSize().width():
            self.sheets.arrange(room, self.zoom)
        bar.setValue(round(share * bar.maximum()))
        self._scrolled()

    def set_zoom(self, zoom: float) -> None:
        """1 fits a drawing into the window."""
        self.zoom = min(max(zoom, ZOOMS[0]), ZOOMS[-1])
        self.arrange()

    def zoom_by(self, steps: int) -> None:
        """Larger or smaller."""
        nearest = min(range(len(ZOOMS)), key=lambda k: abs(ZOOMS[k] - self.zoom))
        self.set_zoom(ZOOMS[min(max(nearest + steps, 0), len(ZOOMS) - 1)])

    def show_board(self, place: int) -> None:
        """Bring a board into sight: in the middle, or as near to it as there are others."""
        if 0 <= place < len(self.sheets.places):
            self.board = place
            rect = self.sheets.places[place].rect
            spare = max(self.viewport().height() - rect.height(), 0) // 2
            self.verticalScrollBar().setValue(rect.top() - spare)
            self._tell_board()

    def _scrolled(self) -> None:
        """The board that is told stays the same as long as most of it is in sight."""
        top = self.verticalScrollBar().value()
        sight = range(top, top + self.viewport().height())
        seen = [k for k, each in enumerate(self.sheets.places) if each.rect.center().y() in sight]
        if seen and self.board not in seen:
            self.board = seen[0]
            self._tell_board()

    def show_about(self, about: str) -> None:
        """Bring a piece or a blank into sight."""
        rect = self.sheets.rect_of(about)
        if rect.isEmpty():
            return
        middle, room = rect.center().toPoint(), self.viewport().size()
        self.ensureVisible(middle.x(), middle.y(), room.width() // 3, room.height() // 3)

    def tell(self, about: str, where: QPoint) -> None:
        """Show the note of what is under the mouse."""
        QToolTip.showText(where, self.tip(about) if about else "", self.sheets)

    def _tell_board(self) -> None:
        if self.board >= 0:
            board = self.sheets.boards[self.board]
            names = ", ".join(each.name for each in board.layout.placed)
            self.setAccessibleDescription(f"{board.shown.title}: {names}")
        self.board_changed.emit(self.board)

    # ------------------------------------------------------------ mouse and keys

    def _press(self, about: str) -> None:
        if about.startswith(CUT):
            self.cut_picked.emit(int(about.removeprefix(CUT)))
        else:
            self.piece_picked.emit(about.removeprefix(PIECE))

    def _point(self, about: str) -> None:
        name = about.removeprefix(PIECE) if about.startswith(PIECE) else ""
        if name != self._pointed:
            self._pointed = name
            self.piece_pointed.emit(name)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        key = event.key()
        if key in (Qt.Key.Key_Left, Qt.Key.Key_Right):
            self.stepped.emit(1 if key == Qt.Key.Key_Right else -1)
        elif key == Qt.Key.Key_Space:
            self.ticked.emit()
        elif key in (Qt.Key.Key_Plus, Qt.Key.Key_Minus):
            self.zoom_by(1 if key == Qt.Key.Key_Plus else -1)
        else:
            super().keyPressEvent(event)

    def wheelEvent(self, event: QWheelEvent) -> None:
        if event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            self.zoom_by(1 if event.angleDelta().y() > 0 else -1)
        else:
            super().wheelEvent(event)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._soon.start()
