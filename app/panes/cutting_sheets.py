"""The drawings of boards and sheets one below the other, and what of them is under the mouse."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from PySide6.QtCore import QEvent, QPoint, QPointF, QRect, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QFontMetricsF, QHelpEvent, QMouseEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

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
PIECE, CUT = "piece/", "cut/"


class Board(NamedTuple):
    """What is drawn, and how it is told."""

    layout: Layout
    shown: Shown


class _Place(NamedTuple):
    """Where a drawing stands among the others, px, and the room that it was given, mm."""

    rect: QRect
    room: Room


class CuttingSheets(QWidget):
    """The drawings themselves; only those in sight are made."""

    pressed = Signal(str)  # what the area under the mouse stands for
    pointed = Signal(str)
    touched = Signal()  # by any button of the mouse
    note_asked = Signal(str, QPoint)  # what is under the mouse, and where on the screen that is

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
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
        """Other boards; they are drawn once they have been given their places."""
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
        self.touched.emit()
        if event.button() == Qt.MouseButton.LeftButton:
            self.pressed.emit(self.about_at(event.position()))

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        event.accept()  # it belongs to the press

    def leaveEvent(self, event: QEvent) -> None:
        self.pointed.emit("")

    def event(self, event: QEvent) -> bool:
        if event.type() == QEvent.Type.ToolTip and isinstance(event, QHelpEvent):
            self.note_asked.emit(self.about_at(QPointF(event.pos())), event.globalPos())
            return True
        return super().event(event)
