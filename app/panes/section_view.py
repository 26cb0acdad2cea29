"""A section painted to scale: wood by kind, each gap with its number in a ring."""

from __future__ import annotations

from PySide6.QtCore import QLineF, QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QFont, QMouseEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QWidget

from app.panes.section import Drawing, Flat, Gap
from app.style import BRICK, FAINT, INK, SHEET

FILLS = {
    "frame": "#e6d3ad", "bearer": "#d9bd8b", "deck": "#efe3c6", "box": "#d3e3ea",
    "front": "#b9d3c4", "hardware": "#9aa5ad", "other box": "#eaf0f3", "other front": "#e3ede7",
    "mattress": "#f1f1ee",
}  # fmt: skip
ROOM, TITLE, RING = 10.0, 18.0, 9.0  # px
TICK = 4.0  # px, half of the stroke at each end of a gap


class SectionView(QWidget):
    """Shows one drawing; a click on a ring asks why that gap is what it is."""

    asked_why = Signal(str)
    pointed = Signal(int)  # the number under the mouse, 0 for none
    enlarged = Signal()  # a double click: more room, or back

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.drawing: Drawing | None = None
        self.rings: dict[int, list[QPointF]] = {}
        self._lit = 0
        self.setMouseTracking(True)
        self.setMinimumSize(150, 110)

    def sizeHint(self) -> QSize:
        return QSize(300, 220)

    def show_drawing(self, drawing: Drawing, told: str) -> None:
        """Show a drawing; `told` says its numbers in words, for those who do not see it."""
        self.drawing = drawing
        self.setAccessibleName(drawing.title)
        self.setAccessibleDescription(told)
        self.update()

    def light(self, number: int) -> None:
        """Make one number stand out."""
        if number != self._lit:
            self._lit = number
            self.update()

    # ------------------------------------------------------------ painting

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.fillRect(self.rect(), QColor(SHEET))
        if self.drawing is None:
            return
        painter.setPen(QColor(FAINT))
        room = self.width() - 2 * ROOM
        title = painter.fontMetrics().elidedText(
            self.drawing.title, Qt.TextElideMode.ElideRight, int(room)
        )
        painter.drawText(QRectF(ROOM, 0, room, TITLE), 0, title)
        painter.save()
        painter.setClipRect(self._rect(self.drawing.low, self.drawing.high).adjusted(-1, -1, 1, 2))
        for patch in self.drawing.patches:
            self._paint_patch(painter, self._rect(patch.low, patch.high), patch.kind, patch.is_cut)
        if self.drawing.low[1] == 0.0:
            self._paint_floor(painter)
        painter.restore()
        self.rings = {}
        for gap in self.drawing.gaps:
            self._paint_line(painter, gap)
        for gap in self.drawing.gaps:
            self._paint_ring(painter, gap)

    def _paint_patch(self, painter: QPainter, rect: QRectF, kind: str, is_cut: bool) -> None:
        colour = QColor(FILLS.get(kind, FILLS["frame"]))
        if is_cut:
            painter.setBrush(colour)
            painter.setPen(QPen(colour.darker(190), 1.0))
        else:
            colour.setAlpha(70)
            painter.setBrush(colour)
            painter.setPen(QPen(QColor(FAINT), 1.0, Qt.PenStyle.DashLine))
        painter.drawRect(rect)

    def _paint_floor(self, painter: QPainter) -> None:
        painter.setPen(QPen(QColor(INK), 1.5))
        y = self._at((0.0, 0.0)).y()
        painter.drawLine(QPointF(0, y), QPointF(self.width(), y))

    def _paint_line(self, painter: QPainter, gap: Gap) -> None:
        start, end = self._at(gap.start), self._at(gap.end)
        painter.setPen(QPen(QColor(BRICK), 2.0 if gap.number == self._lit else 1.2))
        painter.drawLine(start, end)
        is_upright = abs(start.x() - end.x()) < abs(start.y() - end.y())
        tick = QPointF(TICK, 0) if is_upright else QPointF(0, TICK)
        for point in (start, end):
            painter.drawLine(point - tick, point + tick)

    def _paint_ring(self, painter: QPainter, gap: Gap) -> None:
        centre = self._free_place(gap)
        self.rings.setdefault(gap.number, []).append(centre)
        is_lit = gap.number == self._lit
        painter.setPen(QPen(QColor(BRICK), 1.2))
        painter.setBrush(QColor(BRICK if is_lit else SHEET))
        painter.drawEllipse(centre, RING, RING)
        font = QFont(self.font())
        font.setPixelSize(11)
        font.setBold(True)
        painter.setFont(font)
        painter.setPen(QColor(SHEET if is_lit else BRICK))
        ring = QRectF(centre.x() - RING, centre.y() - RING, 2 * RING, 2 * RING)
        painter.drawText(ring, Qt.AlignmentFlag.AlignCenter, str(gap.number))

    def _free_place(self, gap: Gap) -> QPointF:
        """On the line where it is long enough, else beside it, and never on another ring."""
        start, end = self._at(gap.start), self._at(gap.end)
        middle = start + (end - start) * gap.ring
        long = max(abs(start.x() - end.x()), abs(start.y() - end.y())) > 2.6 * RING
        away = 0.0 if long else 1.9 * RING
        is_upright = abs(start.x() - end.x()) < abs(start.y() - end.y())
        step = QPointF(1, 0) if is_upright else QPointF(0, -1)
        taken = [point for points in self.rings.values() for point in points]
        for factor in (1.0, -1.0, 2.2, -2.2, 3.4, -3.4):
            place = middle + step * (away * factor if away else (factor - 1.0) * 1.1 * RING)
            if all(QLineF(place, t).length() > 2.1 * RING for t in taken):
                return self._inside(place)
        return self._inside(middle)

    def _inside(self, place: QPointF) -> QPointF:
        x = min(max(place.x(), RING + 2), self.width() - RING - 2)
        return QPointF(x, min(max(place.y(), TITLE + RING), self.height() - RING - 2))

    # ------------------------------------------------------------ scale

    def _paper(self) -> QRectF:
        return QRectF(self.rect()).adjusted(ROOM, TITLE, -ROOM, -ROOM)

    def _scale(self) -> float:
        assert self.drawing is not None
        low, high, paper = self.drawing.low, self.drawing.high, self._paper()
        return min(paper.width() / (high[0] - low[0]), paper.height() / (high[1] - low[1]))

    def _at(self, point: Flat) -> QPointF:
        """Millimetres to pixels; up is up, and the drawing stands in the middle."""
        assert self.drawing is not None
        low, high, paper, scale = self.drawing.low, self.drawing.high, self._paper(), self._scale()
        middle = ((low[0] + high[0]) / 2, (low[1] + high[1]) / 2)
        centre = paper.center()
        right = -scale if self.drawing.is_mirrored else scale
        return QPointF(
            centre.x() + (point[0] - middle[0]) * right, centre.y() - (point[1] - middle[1]) * scale
        )

    def _rect(self, low: Flat, high: Flat) -> QRectF:
        return QRectF(self._at(low), self._at(high)).normalized()

    # ------------------------------------------------------------ mouse

    def number_at(self, place: QPointF) -> int:
        """The number whose ring is under the mouse, 0 for none."""
        for number, rings in self.rings.items():
            if any((ring - place).manhattanLength() <= 1.5 * RING for ring in rings):
                return number
        return 0

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        number = self.number_at(event.position())
        self.pointed.emit(number)
        on_ring = Qt.CursorShape.PointingHandCursor if number else Qt.CursorShape.ArrowCursor
        self.setCursor(on_ring)

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        if not self.number_at(event.position()):
            self.enlarged.emit()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        number = self.number_at(event.position())
        if self.drawing is not None and number:
            self.asked_why.emit(next(g.name for g in self.drawing.gaps if g.number == number))
