"""Dimension lines with arrows and numbers on plates, painted over the finished picture."""

from __future__ import annotations

from collections.abc import Callable, Iterable

import numpy as np
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen, QPolygonF

from app.view.camera import Array, Picture
from app.view.line_choice import Drawn
from app.view.palette import ACCENT, INK, Rgb
from app.view.plates import draw_plate, plate_font, plate_size

ARROW = (8.0, 2.6)  # px long, half as wide
ALONG = (0.5, 0.36, 0.64, 0.24, 0.76)  # where on its line a plate may lie, best first
Show = Callable[[float], str]


class DimensionPainter:
    """Paints the chosen dimensions; `scale` above 1 suits pictures made for print."""

    def __init__(self, painter: QPainter, picture: Picture, scale: float = 1.0) -> None:
        self.painter, self.picture, self.scale = painter, picture, scale
        self._font = plate_font(painter.font(), scale)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        self._taken: list[QRectF] = []

    def paint(self, drawn: Iterable[Drawn], show: Show) -> tuple[tuple[QRectF, str], ...]:
        """Lines first, then plates, so that no line crosses a number.

        Gives the plates and the names of the dimensions on them.
        """
        placed = []
        for each in drawn:
            text = f"{each.dimension.word} {show(each.dimension.value)}".strip()
            plate = self._free_plate(each, text)
            if plate is not None:
                self._taken.append(plate)
                placed.append((each, plate, text))
        for each, _, _ in placed:
            self._line(each)
        for each, plate, text in placed:
            is_clearance = each.dimension.is_clearance
            draw_plate(self.painter, plate, text, self._font, self.scale, is_clearance)
        return tuple((plate, each.dimension.name) for each, plate, _ in placed)

    # ------------------------------------------------------------ plates

    def _free_plate(self, drawn: Drawn, text: str) -> QRectF | None:
        """A place for the number that covers no other number, or None."""
        size = plate_size(text, self._font, self.scale)
        wide, high = size.width(), size.height()
        inside = QRectF(2, 2, self.picture.width - 4, self.picture.height - 4)
        for x, y in self._places(drawn.line, wide, high):
            corner = QPointF(round(x - wide / 2), round(y - high / 2))
            plate = QRectF(corner, size)
            if inside.contains(plate) and not any(plate.intersects(t) for t in self._taken):
                return plate
        return None

    def _places(self, line: Array, wide: float, high: float) -> Iterable[tuple[float, float]]:
        way = line[1] - line[0]
        length = float(np.linalg.norm(way))
        unit = way / length if length > 1e-6 else np.array((0.0, -1.0))
        needed = abs(unit[0]) * wide + abs(unit[1]) * high
        if length > needed + 3 * ARROW[0] * self.scale:
            for share in ALONG:
                yield tuple(line[0] + way * share)
        beside = np.array((-unit[1], unit[0]))
        far = (abs(beside[0]) * wide + abs(beside[1]) * high) / 2 + 6 * self.scale
        off = needed / 2 + 14 * self.scale
        middle = line.mean(0)
        yield tuple(line[1] + unit * off)
        for step in (beside * far, beside * 2 * far):
            yield tuple(middle + step)
            yield tuple(middle - step)
        yield tuple(line[0] - unit * off)

    # ------------------------------------------------------------ lines

    def _line(self, drawn: Drawn) -> None:
        colour = _colour(ACCENT if drawn.dimension.is_clearance else INK)
        faint, halo = QColor(colour), QColor(255, 255, 255, 150)
        faint.setAlpha(95)
        ends = [QPointF(*point) for point in drawn.line]
        self.painter.setPen(QPen(faint, 0.9 * self.scale))
        for measured, end in zip(drawn.measured, ends, strict=True):
            self.painter.drawLine(QPointF(*measured), end)
        for pen in (QPen(halo, 3.2 * self.scale), QPen(colour, 1.2 * self.scale)):
            self.painter.setPen(pen)
            self.painter.drawLine(*ends)
        self._arrows(drawn.line, colour)

    def _arrows(self, line: Array, colour: QColor) -> None:
        """Arrows point outwards from within the line, or inwards from beyond a short one."""
        way = line[1] - line[0]
        length = float(np.linalg.norm(way))
        unit = way / length if length > 1e-6 else np.array((0.0, -1.0))
        long, half = np.array(ARROW) * self.scale
        is_short = length < 3 * long
        side = np.array((-unit[1], unit[0])) * half
        self.painter.setPen(Qt.PenStyle.NoPen)
        self.painter.setBrush(colour)
        for tip, sign in ((line[0], 1.0), (line[1], -1.0)):
            back = tip + unit * long * (-sign if is_short else sign)
            self.painter.drawPolygon(
                QPolygonF([QPointF(*tip), QPointF(*(back + side)), QPointF(*(back - side))])
            )


def _colour(rgb: Rgb) -> QColor:
    return QColor.fromRgbF(*rgb)
