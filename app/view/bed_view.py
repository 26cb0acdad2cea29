"""The 3D view of a bed, as the window embeds it.

Without OpenGL it shows a sentence in the picture's place, and everything else goes on working.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace
from functools import partial
from typing import TYPE_CHECKING, Any

import numpy as np
from PySide6.QtCore import QRectF, Qt, QTimer, Signal
from PySide6.QtGui import QImage, QKeyEvent, QPainter
from PySide6.QtWidgets import QLabel, QVBoxLayout, QWidget

from app.view.camera import VIEWS, Camera, Picture, corners
from app.view.canvas import Canvas, Grip
from app.view.clearance_lines import lines_to_draw
from app.view.drawer_pull import pulled
from app.view.items import BackdropItem
from app.view.line_choice import chosen
from app.view.overlay import DimensionPainter, Show
from app.view.renderer import is_software, renderer
from app.view.scene import scene_of
from app.view.stage import Stage

if TYPE_CHECKING:
    from model.bed import Bed

FIT = 1.10  # leaves some air round the bed
BESIDE = np.array((260.0, 220.0, 0.0))  # mm: and room for dimension lines
SLIDE = 0.10  # share of its way that a drawer moves per picture


class BedView(QWidget):
    """Shows a bed; tells which piece was clicked. Pieces are indices into `bed.pieces`."""

    picked = Signal(int)  # a piece, or -1 for none
    hovered = Signal(int)
    dimension_picked = Signal(str)  # the full name of a dimension whose number was clicked
    drawer_moved = Signal(str, float)  # by the mouse: the drawer, and how far open, 0 to 1

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(self.tr("The bed in three dimensions"))
        self.bed: Bed | None = None
        self.stage = Stage()
        self._has_dimensions = True
        self._show_length: Show = "{:.0f}".format
        self._plates: tuple[tuple[QRectF, str], ...] = ()
        self._goals: dict[str, float] = {}
        self._slide = QTimer(self, interval=15, timeout=self._slide_on)
        self.canvas = self._made_canvas()
        self._wants_fit = True
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.addWidget(self.canvas or _placeholder(self.tr(NO_OPENGL)))
        self.setFocusProxy(self.canvas)

    # ------------------------------------------------------------ what to show

    def show_bed(self, bed: Bed, mesh: Any = None) -> None:
        """Show a bed; the camera stays, but for the first one. `mesh`: where it is at hand."""
        self.bed = bed
        self.stage.show(scene_of(bed, mesh))
        self._refresh()

    def select(self, pieces: Iterable[int]) -> None:
        """Mark these pieces and no others."""
        self._restyle(selected=self.stage.known(pieces))

    @property
    def selected(self) -> frozenset[int]:
        """The pieces that are marked."""
        return frozenset(self.stage.style.selected)

    def see_through(self, on: bool) -> None:
        """Show all but the selected pieces as if of glass."""
        self._restyle(is_see_through=on)

    def show_mattress(self, on: bool) -> None:
        """Show the mattress, or what lies under it."""
        self._restyle(has_mattress=on)

    def colour_by(self, what: str) -> None:
        """By "wood", "paint" or "assembly"."""
        self._restyle(colour_by=what)

    def show_shadow(self, on: bool) -> None:
        """Show the shadow on the floor."""
        self.stage.floor.setVisible(on)
        self._refresh()

    def show_dimensions(self, on: bool) -> None:
        """Show dimension lines and clearances with their numbers."""
        self._has_dimensions = on
        self._refresh()

    def write_lengths(self, show: Show) -> None:
        """Write the numbers on the bed as this says, from mm."""
        self._show_length = show
        self._refresh()

    # ------------------------------------------------------------ what moves

    @property
    def drawers(self) -> Mapping[str, float]:
        """Every drawer, such as `left-1`, and how far it is open: 0 to 1."""
        names = self.stage.scene.travel if self.stage.scene is not None else ()
        return {name: self.stage.open.get(name, 0.0) for name in names}

    def pull_drawers(self, share: float, drawers: Iterable[str] | None = None) -> None:
        """Open drawers by a share of their travel; all of them, if none is named."""
        names = tuple(self.drawers if drawers is None else drawers)
        for name in names:
            self._goals.pop(name, None)
        self.stage.move(dict.fromkeys(names, share))
        self._refresh()

    def slide_drawers(self, share: float, drawers: Iterable[str]) -> None:
        """As `pull_drawers`, but watched on the way."""
        self._goals |= dict.fromkeys(drawers, share)
        self._slide.start()

    def pull_apart(self, share: float) -> None:
        """Move the assemblies from each other: 0 together, 1 apart."""
        self.stage.move(apart=share)
        self._refresh()

    def _slide_on(self) -> None:
        for name, goal in tuple(self._goals.items()):
            here = self.stage.open.get(name, 0.0)
            there = min(max(goal, here - SLIDE), here + SLIDE)
            self.stage.move({name: there})
            self.drawer_moved.emit(name, there)
            if there == goal:
                del self._goals[name]
        if not self._goals:
            self._slide.stop()
        self._refresh()

    # ------------------------------------------------------------ camera

    def look_from(self, view: str) -> None:
        """One of the fixed views: "foot", "head", "left", "right", "above", "corner"."""
        if self.canvas is not None:
            self.canvas.glide(self._fitted(self.canvas.camera.turned_to(view)))

    def look_parallel(self, on: bool) -> None:
        """Parallel lines stay parallel, or run together as the eye sees them."""
        if self.canvas is not None:
            self.canvas.look(replace(self.canvas.camera, is_parallel=on))

    def fit(self) -> None:
        """Show the whole bed, from where the eye is now."""
        if self.canvas is not None:
            self.canvas.glide(self._fitted(self.canvas.camera))

    def _fitted(self, camera: Camera, picture: Picture | None = None) -> Camera:
        if self.stage.scene is None or self.canvas is None:
            return camera
        points = corners(self.stage.bounds)
        if self._has_dimensions and not self.stage.apart:
            points = np.concatenate((points, points + BESIDE * np.sign(points - points.mean(0))))
        return camera.fitted(points, picture or self.canvas.picture, FIT)

    # ------------------------------------------------------------ pictures

    def render_image(
        self, width: int, height: int, samples: int = 4, view: str | None = None
    ) -> QImage:
        """The picture at any size, from a fixed view or as it is; a null image without OpenGL."""
        if self.canvas is None:
            return QImage()
        kept = self.canvas.camera
        if view is not None:
            self.canvas.camera = self._fitted(kept.turned_to(view), Picture(width, height))
        image = self.canvas.render_image(width, height, samples)
        self.canvas.camera = kept
        return image

    # ------------------------------------------------------------ inside

    def _made_canvas(self) -> Canvas | None:
        draws_with = renderer()
        if not draws_with:
            return None
        canvas = Canvas(is_software(draws_with), self)
        for item in (BackdropItem(-100), self.stage.floor, *self.stage.layers.items):
            canvas.addItem(item)
        canvas.before_drawing = self._prepare
        canvas.overlay = self._paint_overlay
        canvas.grip_at = self._grip_at
        canvas.clicked.connect(self._pick)
        canvas.double_clicked.connect(self._toggle_drawer)
        canvas.hovered.connect(self._hover)
        return canvas

    def _prepare(self) -> None:
        if self.canvas is None or self.stage.scene is None:
            return
        if self._wants_fit:
            self._wants_fit = False
            self.canvas.camera = self._fitted(self.canvas.camera)
        self.canvas.hold(self.stage.bounds)
        self.stage.prepare(self.canvas.camera.axes[2])

    def _paint_overlay(
        self, painter: QPainter, picture: Picture, camera: Camera, scale: float
    ) -> None:
        self._plates = ()
        if (
            self.bed is None
            or self.stage.scene is None
            or not self._has_dimensions
            or self.stage.apart > 0
        ):
            return
        lines = lines_to_draw(self.bed, self.selected, any(self.stage.open.values()))
        drawn = chosen(lines, camera, picture, self.stage.scene.bounds)
        self._plates = DimensionPainter(painter, picture, scale).paint(drawn, self._show_length)

    def _restyle(self, **changes: Any) -> None:
        if self.stage.restyle(**changes):
            self._refresh()

    def _refresh(self) -> None:
        if self.canvas is not None:
            self.canvas.refresh()

    def _piece_at(self, x: float, y: float) -> int:
        assert self.canvas is not None
        return self.stage.piece_on(*self.canvas.camera.ray(x, y, self.canvas.picture))

    def _pick(self, x: float, y: float) -> None:
        for plate, name in self._plates:
            if plate.contains(x, y):
                self.dimension_picked.emit(name)
                return
        self.picked.emit(self._piece_at(x, y))

    def _hover(self, x: float, y: float) -> None:
        piece = self._piece_at(x, y)
        if piece != self.stage.style.hovered:
            self._restyle(hovered=piece)
            self.hovered.emit(piece)

    def _toggle_drawer(self, x: float, y: float) -> None:
        drawer = self.stage.drawer_on(self._piece_at(x, y))
        if drawer:
            self.slide_drawers(0.0 if self.drawers[drawer] > 0.5 else 1.0, [drawer])

    def _grip_at(self, x: float, y: float) -> Grip | None:
        """A drawer's front or pull can be gripped; what else is dragged turns the bed."""
        piece = self._piece_at(x, y)
        drawer = self.stage.drawer_on(piece)
        if not drawer or self.stage.scene.looks[piece].assembly != "fronts":
            return None
        return partial(self._drag_drawer, drawer, self.drawers[drawer])

    def _drag_drawer(self, drawer: str, start: float, dx: float, dy: float) -> None:
        assert self.canvas is not None and self.stage.scene is not None
        travel = self.stage.scene.travel[drawer]
        share = pulled(travel, start, (dx, dy), self.canvas.camera, self.canvas.picture)
        self.pull_drawers(share, [drawer])
        self.drawer_moved.emit(drawer, share)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_F:
            self.fit()
        elif Qt.Key.Key_1 <= event.key() < Qt.Key.Key_1 + len(VIEWS):
            self.look_from(tuple(VIEWS)[event.key() - Qt.Key.Key_1])
        else:
            super().keyPressEvent(event)


NO_OPENGL = "The bed cannot be shown in three dimensions: nothing on this computer draws OpenGL."


def _placeholder(sentence: str) -> QLabel:
    label = QLabel(sentence)
    label.setAlignment(Qt.AlignmentFlag.AlignCenter)
    label.setWordWrap(True)
    return label
