"""Numbers on plates: small pictures that are kept, for OpenGL is slow to set a text."""

from __future__ import annotations

from functools import lru_cache

from PySide6.QtCore import QRectF, QSizeF, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QImage, QPainter, QPen

from app.view.palette import ACCENT, INK

TEXT = 12.5  # px
ROOM = (6.0, 2.5)  # px beside and above the text
ROUND = 4.0  # px, corners
EDGE = 60  # opacity of the line round a plate


def plate_font(like: QFont, scale: float) -> QFont:
    """The font of the numbers, of the window's family."""
    font = QFont(like)
    font.setPixelSize(max(round(TEXT * scale), 9))
    return font


def plate_size(text: str, font: QFont, scale: float) -> QSizeF:
    """How much room a text takes on its plate: whole pixels, so that it stays crisp."""
    metrics = QFontMetricsF(font)
    wide = metrics.horizontalAdvance(text) + 2 * ROOM[0] * scale
    high = metrics.height() + 2 * ROOM[1] * scale
    return QSizeF(round(wide), round(high))


def draw_plate(
    painter: QPainter, plate: QRectF, text: str, font: QFont, scale: float, is_clearance: bool
) -> None:
    """Draw a text on its plate; clearances stand out by their colour."""
    ratio = painter.device().devicePixelRatioF()
    size = (round(plate.width() * ratio), round(plate.height() * ratio))
    image = _image(text, font.toString(), size, scale, ratio, is_clearance)
    painter.drawImage(plate.topLeft(), image)


def draw_ground(painter: QPainter, area: QRectF, scale: float, edge: QColor) -> None:
    """The light ground of a plate, with a thin line round it."""
    painter.setPen(QPen(edge, scale))
    painter.setBrush(QColor(255, 254, 251, 236))
    inner = area.adjusted(scale / 2, scale / 2, -scale / 2, -scale / 2)
    painter.drawRoundedRect(inner, ROUND * scale, ROUND * scale)


@lru_cache(maxsize=128)
def _image(
    text: str, font: str, size: tuple[int, int], scale: float, ratio: float, is_clearance: bool
) -> QImage:
    image = QImage(*size, QImage.Format.Format_ARGB32_Premultiplied)
    image.setDevicePixelRatio(ratio)
    image.fill(Qt.GlobalColor.transparent)
    colour = QColor.fromRgbF(*(ACCENT if is_clearance else INK))
    edge = QColor(colour)
    edge.setAlpha(150 if is_clearance else EDGE)
    area = QRectF(0, 0, size[0] / ratio, size[1] / ratio)
    painter = QPainter(image)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    draw_ground(painter, area, scale, edge)
    used = QFont()
    used.fromString(font)
    painter.setFont(used)
    painter.setPen(colour)
    painter.drawText(area, Qt.AlignmentFlag.AlignCenter, text)
    painter.end()
    return image
