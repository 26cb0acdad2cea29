"""Marks over the strength view at picked pieces: their outline, and how hard they work."""

from __future__ import annotations

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen

from app.view.camera import Camera, Picture
from app.view.palette import ACCENT
from app.view.plates import draw_plate, plate_font, plate_size
from app.view.strain import Floats

PICKED, POINTED_AT = 1.5, 1.0  # px: how wide outlines are
HALO = 1.6  # px more, so that they stand out from dark steps of the scale
ABOVE = 8.0  # px from the place that works hardest to the plate that says how hard


class StrengthMarks:
    """Paints over one picture; a line of the graphics card has no width to stand out by."""

    def __init__(self, painter: QPainter, picture: Picture, camera: Camera, scale: float) -> None:
        self.painter, self.picture, self.camera, self.scale = painter, picture, camera, scale

    def outline(self, ends: Floats, is_picked: bool) -> None:
        """Edges (n, 2, 3), mm, of a piece where it is drawn, over all that covers it."""
        seen = self.camera.project(ends.reshape(-1, 3), self.picture).reshape(-1, 2, 3)
        lines = [
            (QPointF(*a[:2]), QPointF(*b[:2])) for a, b in seen.tolist() if min(a[2], b[2]) > 0
        ]
        width = (PICKED if is_picked else POINTED_AT) * self.scale
        halo = QColor(255, 255, 255, 170)
        for colour, wide in ((halo, width + HALO * self.scale), (QColor.fromRgbF(*ACCENT), width)):
            pen = QPen(colour, wide, Qt.PenStyle.SolidLine, Qt.PenCapStyle.RoundCap)
            self.painter.setPen(pen)
            for start, end in lines:
                self.painter.drawLine(start, end)

    def share(self, triangles: Floats, use: Floats) -> None:
        """How hard a piece works, on a plate where it works hardest: corners and shares of them,
        (n, 3, 3) and (n, 3). None where nothing is known of the piece.
        """
        if not use.size:
            return
        worst = use.max()
        middle = triangles[use >= worst - 1e-4].mean(0)
        x, y, depth = self.camera.project(middle[None].astype(float), self.picture)[0].tolist()
        if depth <= 0:
            return
        words, font = f"{worst:.0%}", plate_font(self.painter.font(), self.scale)
        size = plate_size(words, font, self.scale)
        low = y - size.height() - ABOVE * self.scale
        plate = QRectF(QPointF(round(x - size.width() / 2), round(low)), size)
        draw_plate(self.painter, plate, words, font, self.scale, is_clearance=True)
