"""The plate that explains the colours of the strength view: load, scale, and how sag is drawn."""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QImage, QPainter, QPen

from app.view.camera import Picture
from app.view.palette import INK, Rgb
from app.view.plates import EDGE, draw_ground, plate_font
from app.view.use_scale import PAST, STEPS, STRIPE, STRIPE_WIDTH

STAND_OFF = 10.0  # px from the corner of the picture
LEAST = 160.0  # px: smaller pictures have no room for it
ROOM = 9.0  # px round what is written
CELL = (40.0, 13.0)  # px: one step of the scale
GAP = 22.0  # px between the scale and what is past it
LINE = 1.1  # from one line of text to the next, of a line's height
LIMIT_WORDS = "Share of its limit in use"
PAST_WORDS = "past it"


class Told(NamedTuple):
    """What the plate says: the load case, and below the scale what else there is to know."""

    title: str
    foot: str = ""
    has_scale: bool = True


def paint_told(painter: QPainter, picture: Picture, scale: float, told: Told) -> None:
    """Paint the plate into the lower left corner; a picture too small to hold it goes without."""
    if min(picture) < LEAST * scale:
        return
    ratio = painter.device().devicePixelRatioF()
    image = _image(told, plate_font(painter.font(), scale).toString(), scale, ratio)
    low = picture.height - STAND_OFF * scale - image.height() / ratio
    painter.drawImage(QPointF(round(STAND_OFF * scale), round(low)), image)


@lru_cache(maxsize=16)
def _image(told: Told, font: str, scale: float, ratio: float) -> QImage:
    plate = _Plate(told, font, scale)
    size = (round(plate.wide * ratio), round(plate.high * ratio))
    image = QImage(*size, QImage.Format.Format_ARGB32_Premultiplied)
    image.setDevicePixelRatio(ratio)
    image.fill(Qt.GlobalColor.transparent)
    painter = QPainter(image)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    plate.paint(painter, QRectF(0, 0, plate.wide, plate.high))
    painter.end()
    return image


class _Plate:
    """Title, scale and foot under each other; words are broken to the width of the scale."""

    def __init__(self, told: Told, font: str, scale: float) -> None:
        self.told, self.scale = told, scale
        self.plain, self.bold = QFont(), QFont()
        for each in (self.plain, self.bold):
            each.fromString(font)
        self.bold.setWeight(QFont.Weight.DemiBold)
        self.line = QFontMetricsF(self.plain).height() * LINE
        self.inner = (len(STEPS) * CELL[0] + GAP + CELL[0] + 8) * scale
        self.wide = round(self.inner + 2 * ROOM * scale)
        scale_high = 2 * self.line + self._cell_room() if told.has_scale else 0.0
        words = self._high(told.title, self.bold) + self._high(told.foot, self.plain)
        self.high = round(words + scale_high + ROOM * scale)

    def _cell_room(self) -> float:
        return (CELL[1] + 5) * self.scale

    def _high(self, words: str, font: QFont) -> float:
        """How much room words take, broken into lines."""
        if not words:
            return 0.0
        room = QRectF(0, 0, self.inner, 1e4)
        lines = QFontMetricsF(font).boundingRect(room, Qt.TextFlag.TextWordWrap, words)
        return float(lines.height()) * LINE

    def paint(self, painter: QPainter, area: QRectF) -> None:
        edge = QColor.fromRgbF(*INK)
        edge.setAlpha(EDGE)
        draw_ground(painter, area, self.scale, edge)
        room = ROOM * self.scale
        inner = area.adjusted(room, room / 2, -room, -room / 2)
        top = self._write(painter, inner, inner.top(), self.told.title, self.bold)
        if self.told.has_scale:
            top = self._write(painter, inner, top, LIMIT_WORDS, self.plain)
            self._cells(painter, QPointF(inner.left() + 4 * self.scale, top + 2 * self.scale))
            top += self._cell_room() + self.line
        if self.told.foot:
            self._write(painter, inner, top, self.told.foot, self.plain)

    def _write(self, painter: QPainter, area: QRectF, top: float, words: str, font: QFont) -> float:
        painter.setFont(font)
        painter.setPen(QColor.fromRgbF(*INK))
        high = self._high(words, font)
        place = QRectF(area.left(), top, area.width(), high)
        painter.drawText(place, Qt.TextFlag.TextWordWrap, words)
        return top + high

    def _cells(self, painter: QPainter, at: QPointF) -> None:
        """Steps beside each other with the shares at their ends; apart from them, what is past."""
        wide, high = CELL[0] * self.scale, CELL[1] * self.scale
        for k, step in enumerate(STEPS):
            cell = QRectF(at.x() + k * wide, at.y(), wide, high)
            painter.fillRect(cell, _colour(step.colour))
            self._frame(painter, cell)
            self._mark(painter, cell.left(), cell.bottom(), f"{_start(k):.0%}".rstrip("%"))
        end = at.x() + len(STEPS) * wide
        self._mark(painter, end, at.y() + high, f"{STEPS[-1].upto:.0%}")
        past = QRectF(end + GAP * self.scale, at.y(), wide, high)
        _hatch(painter, past, STRIPE_WIDTH * self.scale)
        self._frame(painter, past)
        self._mark(painter, past.center().x(), past.bottom(), PAST_WORDS)

    def _frame(self, painter: QPainter, cell: QRectF) -> None:
        painter.setPen(QPen(_colour(PAST), 0.8 * self.scale))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRect(cell)

    def _mark(self, painter: QPainter, x: float, bottom: float, words: str) -> None:
        painter.setFont(self.plain)
        painter.setPen(QColor.fromRgbF(*INK))
        wide = QFontMetricsF(self.plain).horizontalAdvance(words) + 2
        place = QRectF(x - wide / 2, bottom + 2 * self.scale, wide, self.line)
        painter.drawText(place, Qt.AlignmentFlag.AlignHCenter, words)


def _start(step: int) -> float:
    return STEPS[step - 1].upto if step else 0.0


def _hatch(painter: QPainter, cell: QRectF, width: float) -> None:
    """The stripes of the shader: they fall to the right, as wide as what is between them."""
    painter.save()
    painter.setClipRect(cell)
    painter.fillRect(cell, _colour(PAST))
    painter.setPen(QPen(_colour(STRIPE), width / 2**0.5))
    x = cell.left() - cell.height()
    while x < cell.right():
        painter.drawLine(
            QPointF(x, cell.top()), QPointF(x + cell.height(), cell.top() + cell.height())
        )
        x += 2 * width
    painter.restore()


def _colour(rgb: Rgb) -> QColor:
    return QColor.fromRgbF(*rgb)
