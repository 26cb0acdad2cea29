"""Plays a page as it is printed: black on white, pens as wide as they are, one item after another.

The same strokes go to the screen and to a printer; only the screen keeps lines from growing thinner
than can be seen. What is lit is painted over the page, and on the screen alone.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Sequence
from typing import NamedTuple

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import (
    QBrush,
    QColor,
    QGlyphRun,
    QImage,
    QPainter,
    QPainterPath,
    QPen,
    QPolygonF,
)

from app.view.page_letters import LARGE, glyph_runs, letters_path, size_of
from model.cutting.record import Box
from model.drawings.by_pen import Lines, by_pen
from model.drawings.letters import text_box
from model.drawings.paper import (
    DASHES,
    PEN_WIDTHS,
    Area,
    Drawing,
    Fill,
    Pen,
    Picture,
    Point,
    Ring,
    Stroke,
    Text,
)
from model.units import Mm

LIT, LIT_GROUND = "#1f7f8c", QColor(31, 127, 140, 40)  # as pieces are picked on the bed
LIT_WIDTH: Mm = 0.7
LONGEST = 10  # points of one path
LARGEST = 56.0  # px: larger letters Qt leaves out where they are painted small


class Paths(NamedTuple):
    """Strokes of one pen that follow each other."""

    pen: Pen
    path: QPainterPath


class Letters(NamedTuple):
    """A line of words, its letters set, and the room that it takes, y down."""

    text: Text
    runs: tuple[QGlyphRun, ...]
    room: QRectF


class Shown(NamedTuple):
    """A picture, read."""

    place: Picture
    image: QImage


Op = Paths | Letters | Shown | Ring | Fill


class PlayedPage(NamedTuple):
    """A page made ready to be painted: in mm, y down from its upper edge."""

    drawing: Drawing
    ops: tuple[Op, ...]


def prepared_page(drawing: Drawing) -> PlayedPage:
    """Gather what follows each other with one pen, set the letters, read the pictures. For the
    thread that paints it alone.
    """
    return PlayedPage(drawing, tuple(_ops(drawing)))


def _ops(drawing: Drawing) -> Iterator[Op]:
    for step in by_pen(drawing.items):
        match step:
            case Lines():
                yield from (Paths(step.pen, path) for path in _paths(step.lines, drawing.height))
            case Text():
                yield Letters(step, glyph_runs(step), _rect(text_box(step), drawing.height))
            case Picture():
                yield Shown(step, QImage.fromData(step.file))
            case Ring() | Fill():
                yield step


def _paths(lines: Iterable[Sequence[Point]], height: Mm) -> Iterator[QPainterPath]:
    """Short ones: what a long path covers takes long to find out."""
    path = QPainterPath()
    for points in lines:
        path.moveTo(points[0][0], height - points[0][1])
        for x, y in points[1:]:
            path.lineTo(x, height - y)
        if path.elementCount() > LONGEST:
            yield path
            path = QPainterPath()
    yield path


# ---------------------------------------------------------------- painting


def play_page(
    painter: QPainter, played: PlayedPage, thinnest: Mm = 0.0, as_outlines: bool = False
) -> None:
    """Paint it with a painter whose unit is a mm and whose origin is the paper's upper left corner;
    no line thinner than `thinnest`, letters as their outlines for a printer.
    """
    high = played.drawing.height
    for op in played.ops:
        if isinstance(op, Paths):
            painter.setPen(_pen(op.pen, thinnest))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawPath(op.path)
        elif isinstance(op, Letters):
            _play_letters(painter, op, high, as_outlines)
        elif isinstance(op, Ring):
            painter.setPen(_pen(op.pen, thinnest))
            painter.setBrush(QColor("white") if op.blank else QBrush(Qt.BrushStyle.NoBrush))
            painter.drawEllipse(QPointF(op.at[0], high - op.at[1]), op.radius, op.radius)
        elif isinstance(op, Fill):
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(QColor.fromRgbF(*[1.0 - op.tone] * 3))
            painter.drawPolygon(QPolygonF([QPointF(x, high - y) for x, y in op.outline]))
        else:
            painter.drawImage(_rect(op.place.box, high), op.image)


def _rect(box: Box, high: Mm) -> QRectF:
    return QRectF(QPointF(box.x0, high - box.y1), QPointF(box.x1, high - box.y0))


def _pen(pen: Pen, thinnest: Mm) -> QPen:
    width = max(PEN_WIDTHS[pen], thinnest)
    cap = Qt.PenCapStyle.FlatCap if pen in DASHES else Qt.PenCapStyle.RoundCap
    made = QPen(QColor("black"), width, Qt.PenStyle.SolidLine, cap, Qt.PenJoinStyle.RoundJoin)
    if pen in DASHES:
        shares = [share * PEN_WIDTHS[pen] / width for share in DASHES[pen]]
        made.setDashPattern(shares)
    return made


def _play_letters(painter: QPainter, letters: Letters, high: Mm, as_outlines: bool) -> None:
    text, seen = letters.text, painter.clipBoundingRect()
    if not seen.isEmpty() and not seen.intersects(letters.room):
        return
    painter.save()
    painter.translate(text.at[0], high - text.at[1])
    size = size_of(text)
    if as_outlines or size * painter.worldTransform().m11() > LARGEST:
        painter.fillPath(letters_path(text), QColor("black"))
    else:
        if text.turned:
            painter.rotate(-90)
        painter.scale(size / LARGE, size / LARGE)
        painter.setPen(QColor("black"))
        for run in letters.runs:
            painter.drawGlyphRun(QPointF(0, 0), run)
    painter.restore()


def play_lit(painter: QPainter, drawing: Drawing, lit: Collection[str]) -> None:
    """Paint over a page what is lit on it: strokes and rings in colour, grounds tinted."""
    some = [item for item in drawing.items if item.about and item.about in lit]
    high = drawing.height
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(LIT_GROUND)
    for item in some:
        if isinstance(item, Area) and item.has_ground:
            painter.drawRect(_rect(item.box, high))
    painter.setPen(QPen(QColor(LIT), LIT_WIDTH))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    for path in _paths((item.points for item in some if isinstance(item, Stroke)), high):
        painter.drawPath(path)
    for item in some:
        if isinstance(item, Ring):
            painter.drawEllipse(QPointF(item.at[0], high - item.at[1]), item.radius, item.radius)
