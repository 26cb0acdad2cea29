"""Plays a drawing to the screen: paper white, ink dark, a light on what the pane says."""

from __future__ import annotations

from collections.abc import Mapping
from typing import NamedTuple

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QImage, QPainter, QPainterPath, QPen, QPolygonF

from app.style import INK, SHEET
from app.view.drawing_letters import LARGE, drawing_letters
from model.cutting.record import Box
from model.drawings.fonts import CAPITAL
from model.drawings.hatching import hatch_strokes
from model.drawings.measures import inked
from model.drawings.paper import (
    DASHES,
    PEN_WIDTHS,
    Drawing,
    Fill,
    Hatch,
    Item,
    Pen,
    Picture,
    Point,
    Ring,
    Stroke,
    Text,
)

FINE = "#9b9da0"  # grain and hatching recede on a screen, where all lines have about one width
THINNEST = 1.0  # px


class Light(NamedTuple):
    """How an item that stands for something is shown: its ink, its ground ("" as paper), how much
    wider its strokes are, and the ink of its words ("" as the strokes).
    """

    ink: str = INK
    ground: str = ""
    width: float = 1.0
    words: str = ""


PLAIN = Light()
Lights = Mapping[str, Light]


class Screen(NamedTuple):
    """Where a drawing lies on the widget: its upper left corner, and pixels to a mm of paper."""

    origin: QPointF
    scale: float
    height: float  # of the drawing, mm

    def point(self, point: Point) -> QPointF:
        """Paper to screen: up is up."""
        x, y = point
        return self.origin + QPointF(x * self.scale, (self.height - y) * self.scale)

    def rect(self, box: Box) -> QRectF:
        """A box of paper on the screen."""
        return QRectF(self.point((box.x0, box.y1)), self.point((box.x1, box.y0)))


class Played(NamedTuple):
    """A drawing made ready: one path for each pen and thing, and all its other items."""

    drawing: Drawing
    strokes: tuple[tuple[str, Pen, QPainterPath], ...]
    items: tuple[Item, ...]


def prepared(drawing: Drawing) -> Played:
    """Gather strokes into paths, in paper's own axes turned upside down (y down), once."""
    paths: dict[tuple[str, Pen], QPainterPath] = {}
    items = tuple(inked(drawing.items))
    for item in items:
        if isinstance(item, Stroke):
            _add(paths.setdefault((item.about, item.pen), QPainterPath()), item.points)
        elif isinstance(item, Hatch):
            path = paths.setdefault((item.about, "fine"), QPainterPath())
            for stroke in hatch_strokes(item):
                _add(path, stroke)
    strokes = tuple((about, pen, path) for (about, pen), path in paths.items())
    return Played(drawing, strokes, items)


def _add(path: QPainterPath, points: tuple[Point, ...]) -> None:
    path.moveTo(points[0][0], -points[0][1])
    for x, y in points[1:]:
        path.lineTo(x, -y)


def play(painter: QPainter, played: Played, screen: Screen, lights: Lights) -> None:
    """Paint it: grounds and fills, lines, rings, words."""
    drawing = played.drawing
    for area in drawing.areas():
        ground = lights.get(area.about, PLAIN).ground
        if ground and area.has_ground:
            painter.fillRect(screen.rect(area.box), QColor(ground))
    for item in played.items:
        if isinstance(item, Fill):
            _play_fill(painter, item, screen)
    _play_strokes(painter, played, screen, lights)
    for item in played.items:
        if isinstance(item, Ring):
            _play_ring(painter, item, screen, lights.get(item.about, PLAIN))
        elif isinstance(item, Picture):
            painter.drawImage(screen.rect(item.box), QImage.fromData(item.file))
        elif isinstance(item, Text):
            _play_text(painter, item, screen, lights.get(item.about, PLAIN))


def _play_fill(painter: QPainter, fill: Fill, screen: Screen) -> None:
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(QColor.fromRgbF(*[1.0 - fill.tone] * 3))
    painter.drawPolygon(QPolygonF([screen.point(point) for point in fill.outline]))


def _play_strokes(painter: QPainter, played: Played, screen: Screen, lights: Lights) -> None:
    painter.save()
    painter.translate(screen.point((0.0, 0.0)))
    painter.scale(screen.scale, screen.scale)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    # What is lit lies on top: it would be broken where others cross it.
    for about, pen, path in sorted(played.strokes, key=lambda each: each[0] in lights):
        painter.setPen(_pen(pen, screen.scale, lights.get(about, PLAIN)))
        painter.drawPath(path)
    painter.restore()


def _pen(pen: Pen, scale: float, light: Light) -> QPen:
    is_fine = pen == "fine"
    colour = FINE if is_fine and light.ink == INK else light.ink
    width = max(PEN_WIDTHS[pen], (0.6 if is_fine else THINNEST) / scale) * light.width
    made = QPen(QColor(colour), width, Qt.PenStyle.SolidLine, Qt.PenCapStyle.FlatCap)
    if pen in DASHES:
        made.setDashPattern(list(DASHES[pen]))
    return made


def _play_ring(painter: QPainter, ring: Ring, screen: Screen, light: Light) -> None:
    painter.setPen(QPen(QColor(light.ink), THINNEST * light.width))
    ground = light.ground or (SHEET if ring.blank else light.ink)
    painter.setBrush(QColor(ground))
    radius = ring.radius * screen.scale
    painter.drawEllipse(screen.point(ring.at), radius, radius)


def _play_text(painter: QPainter, text: Text, screen: Screen, light: Light) -> None:
    """Letters are set large and made smaller, so that their widths are true at every size."""
    large = drawing_letters(text.bold)
    metrics = QFontMetricsF(large)
    size = text.height * screen.scale / (CAPITAL * LARGE)
    long = metrics.horizontalAdvance(text.words)
    painter.save()
    painter.translate(screen.point(text.at))
    if text.turned:
        painter.rotate(-90)
    painter.scale(size, size)
    painter.setFont(large)
    painter.setPen(QColor(light.words or light.ink))
    start = {"left": 0.0, "middle": -long / 2, "right": -long}[text.anchor]
    painter.drawText(QPointF(start, CAPITAL * LARGE / 2), text.words)
    painter.restore()
