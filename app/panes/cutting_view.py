"""The boards and sheets of a plan, drawn to scale one below the other."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from PySide6.QtCore import QEvent, QPoint, QPointF, QRect, QRectF, QSize, Qt, QTimer, Signal
from PySide6.QtGui import (
    QColor,
    QFontMetricsF,
    QHelpEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QResizeEvent,
    QWheelEvent,
)
from PySide6.QtWidgets import QScrollArea, QToolTip, QWidget

from app.style import SHEET
from app.view.drawing_player import Lights, Played, Screen, play, prepared
from model.cutting.record import Layout
from model.drawings.cut_layout import cut_layout, paper_size
from model.drawings.cut_sheet import Room
from model.drawings.cut_told import Shown
from model.drawings.labels import HEIGHTS
from model.drawings.paper import Area

GAP = 14  # px between two drawings
LEAST = Room(70.0, 42.0)  # mm: smaller, nothing could be read
ZOOMS = (1.0, 1.5, 2.0, 3.0, 4.5, 6.0)
PIECE, CUT = "piece/", "cut/"


class Board(NamedTuple):
    """What is drawn, and how it is told."""

    layout: Layout
    shown: Shown


class _Place(NamedTuple):
    """Where a drawing stands among the others, px, and the room that it was given, mm."""

    rect: QRect
    room: Room


class _Sheets(QWidget):
    """The drawings themselves; only those in sight are made."""

    pressed = Signal(str)  # what the area under the mouse stands for
    pointed = Signal(str)

    def __init__(self, view: CuttingView) -> None:
        super().__init__()
        self.view = view
        self.boards: tuple[Board, ...] = ()
        self.places: tuple[_Place, ...] = ()
        self.lights: Lights = {}
        self._made: dict[int, Played] = {}
        self.setMouseTracking(True)

    @property
    def scale(self) -> float:
        """Pixels to a mm of paper: words on the drawing are as large as those of the window."""
        return max(QFontMetricsF(self.font()).capHeight(), 6.0) / HEIGHTS[0]

    def arrange(self, viewport: QSize, zoom: float) -> None:
        """Give every drawing the whole width, and no more than the height of the window."""
        px, width, y = self.scale, viewport.width(), GAP // 2
        room = Room(
            max(zoom * viewport.width() / px, LEAST.width),
            max(zoom * (viewport.height() - GAP) / px, LEAST.height),
        )
        places = []
        for board in self.boards:
            wide, high = (round(px * side) for side in paper_size(board.layout, room, board.shown))
            width = max(width, wide)
            places.append(_Place(QRect(0, y, wide, high), room))
            y += high + GAP
        self.places = tuple(
            each._replace(rect=each.rect.translated((width - each.rect.width()) // 2, 0))
            for each in places
        )
        self._made.clear()
        self.resize(width, max(y, viewport.height()))
        self.update()

    def show_boards(self, boards: Sequence[Board]) -> None:
        self.boards = tuple(boards)
        self._made.clear()

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.fillRect(event.rect(), QColor(SHEET))
        for number, place in enumerate(self.places):
            if place.rect.intersects(event.rect()):
                play(painter, self.made(number), self._screen(number), self.lights)

    def made(self, number: int) -> Played:
        """A drawing, made when it is first seen."""
        if number not in self._made:
            board, place = self.boards[number], self.places[number]
            self._made[number] = prepared(cut_layout(board.layout, place.room, board.shown))
        return self._made[number]

    def _screen(self, number: int) -> Screen:
        corner = QPointF(self.places[number].rect.topLeft())
        return Screen(corner, self.scale, self.made(number).drawing.height)

    def areas_at(self, point: QPointF) -> list[Area]:
        """What lies under a point, the topmost first."""
        for number, place in enumerate(self.places):
            if place.rect.contains(point.toPoint()):
                screen, drawing = self._screen(number), self.made(number).drawing
                areas = [each for each in drawing.areas() if screen.rect(each.box).contains(point)]
                return areas[::-1]
        return []

    def rect_of(self, about: str) -> QRectF:
        """Where something stands; an empty rectangle if it is nowhere."""
        for number in range(len(self.places)):
            for area in self.made(number).drawing.areas():
                if area.about == about:
                    return self._screen(number).rect(area.box)
        return QRectF()

    def about_at(self, point: QPointF) -> str:
        """The cut or piece under a point, or ""."""
        found = (each.about for each in self.areas_at(point))
        return next((about for about in found if about.startswith((CUT, PIECE))), "")

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        about = self.about_at(event.position())
        hand = Qt.CursorShape.PointingHandCursor if about else Qt.CursorShape.ArrowCursor
        self.setCursor(hand)
        self.pointed.emit(about)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        self.view.setFocus(Qt.FocusReason.MouseFocusReason)
        if event.button() == Qt.MouseButton.LeftButton:
            self.pressed.emit(self.about_at(event.position()))

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        event.accept()  # it belongs to the press

    def leaveEvent(self, event: QEvent) -> None:
        self.pointed.emit("")

    def event(self, event: QEvent) -> bool:
        if event.type() == QEvent.Type.ToolTip and isinstance(event, QHelpEvent):
            self.view.tell(self.about_at(QPointF(event.pos())), event.globalPos())
            return True
        return super().event(event)


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
        self.sheets = _Sheets(self)
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
