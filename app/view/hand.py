"""What the mouse does to the bed: it picks pieces and numbers, and pulls drawers."""

from __future__ import annotations

from collections.abc import Iterable
from functools import partial

from PySide6.QtCore import QObject, QRectF, Signal

from app.view.drawer_pull import pulled
from app.view.stage import Stage
from app.view.steering import Grip, SteeredCanvas

GRIPPED = "fronts"  # the assembly that a hand takes hold of; what else is dragged turns the bed


class Hand(QObject):
    """Turns places in the picture into pieces, drawers and names of dimensions."""

    picked = Signal(int)
    hovered = Signal(int)
    dimension_picked = Signal(str)
    pulled = Signal(str, float)  # a drawer, and how far open: 0 to 1
    toggled = Signal(str)  # a drawer that is to open, or to shut

    def __init__(self, stage: Stage, canvas: SteeredCanvas) -> None:
        super().__init__(canvas)
        self.plates: Iterable[tuple[QRectF, str]] = ()  # numbers in the picture, and their names
        self._stage, self._canvas = stage, canvas
        canvas.grip_at = self._grip_at
        canvas.clicked.connect(self._pick)
        canvas.double_clicked.connect(self._toggle)
        canvas.hovered.connect(self._hover)

    def _piece_at(self, x: float, y: float) -> int:
        return self._stage.piece_on(*self._canvas.camera.ray(x, y, self._canvas.picture))

    def _pick(self, x: float, y: float) -> None:
        name = next((name for plate, name in self.plates if plate.contains(x, y)), None)
        if name is not None:
            self.dimension_picked.emit(name)
        else:
            self.picked.emit(self._piece_at(x, y))

    def _hover(self, x: float, y: float) -> None:
        piece = self._piece_at(x, y)
        if piece != self._stage.style.hovered:
            self.hovered.emit(piece)

    def _toggle(self, x: float, y: float) -> None:
        drawer = self._stage.drawer_on(self._piece_at(x, y))
        if drawer:
            self.toggled.emit(drawer)

    def _grip_at(self, x: float, y: float) -> Grip | None:
        scene, piece = self._stage.scene, self._piece_at(x, y)
        drawer = self._stage.drawer_on(piece)
        if scene is None or not drawer or scene.looks[piece].assembly != GRIPPED:
            return None
        return partial(self._pull, drawer, scene.travel[drawer], self._stage.open.get(drawer, 0.0))

    def _pull(
        self, drawer: str, travel: tuple[float, float, float], start: float, dx: float, dy: float
    ) -> None:
        share = pulled(travel, start, (dx, dy), self._canvas.camera, self._canvas.picture)
        self.pulled.emit(drawer, share)
