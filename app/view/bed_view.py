"""The 3D view of a bed, as the window embeds it.

Without OpenGL it shows a sentence in the picture's place, and everything else goes on working.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import replace
from typing import TYPE_CHECKING, Any

import numpy as np
from PySide6.QtCore import QRectF, Qt, QTimer, Signal
from PySide6.QtGui import QImage, QKeyEvent, QPainter
from PySide6.QtWidgets import QLabel, QVBoxLayout, QWidget

from app.view.camera import VIEWS, Camera, Picture, corners
from app.view.clearance_lines import lines_to_draw
from app.view.drawer_slide import DrawerSlide
from app.view.framing import Frame, Framing
from app.view.hand import Hand
from app.view.items import BackdropItem
from app.view.layers import STRENGTH
from app.view.line_choice import chosen
from app.view.overlay import DimensionPainter, Show
from app.view.renderer import is_software, renderer
from app.view.scene import Scene, scene_of
from app.view.stage import Stage
from app.view.steering import SteeredCanvas
from app.view.strength_look import LATE, StrengthLook

if TYPE_CHECKING:
    from model.bed import Bed
    from model.structure.bent import Body
    from model.structure.record import Carried

PATIENCE = 300  # ms that the last bed stays on view while the next one's strength is worked out
BESIDE = np.array((260.0, 220.0, 0.0))  # mm: and room for dimension lines


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
        self.strength = StrengthLook(self.stage)
        self._next: tuple[Bed, Scene] | None = None  # not shown yet: its strength is on its way
        self._patience = QTimer(self, singleShot=True, interval=PATIENCE)
        self._patience.timeout.connect(self._show_next)
        self._has_dimensions = True
        self._show_length: Show = "{:.0f}".format
        self._slide = DrawerSlide(self)
        self._slide.moved.connect(self._drawer_moved)
        self._hand: Hand | None = None
        self.canvas = self._made_canvas()
        self._wants_fit = True
        self._framing = Framing()
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.addWidget(self.canvas or _placeholder(self.tr(NO_OPENGL)))
        self.setFocusProxy(self.canvas)

    # ------------------------------------------------------------ what to show

    def show_bed(self, bed: Bed, mesh: Any = None) -> None:
        """Show a bed; the camera stays, but for the first one and one that it would cut off.

        `mesh`: where it is at hand. Coloured by strength, the last bed stays on view until
        `show_strength` tells of this one, or patience ends: else its colours would flicker.
        """
        self._next = bed, scene_of(bed, mesh)
        if self.is_by_strength and self.stage.strain is not None:
            self._patience.start()
        else:
            self._show_next()

    def _show_next(self) -> None:
        if self._next is None:
            return
        self._patience.stop()
        (self.bed, scene), self._next = self._next, None
        self.stage.show(scene)
        self.strength.forget()
        if self.canvas is not None and not self._wants_fit:
            frame = self._frame(self.canvas.picture)
            if frame.shows(self.canvas.camera, box=-1):
                self._framing.accept(frame)
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
        """By "wood", "paint", "assembly" or "strength"."""
        self._restyle(colour_by=what)
        self._show_next()
        self._describe()

    # ------------------------------------------------------------ strength

    @property
    def is_by_strength(self) -> bool:
        """Whether pieces are coloured by how hard they work."""
        return self.stage.style.colour_by == STRENGTH

    def show_strength(self, bed: Bed, carried: Carried, body: Body) -> None:
        """What a bed carries; nothing happens where another one is on view by now."""
        self._take(bed)
        if bed is self.bed:
            self.strength.know(carried, body)
            self._refresh()
            self._describe()

    def show_no_strength(self, bed: Bed, why: str = LATE) -> None:
        """What a bed carries is not known, and why."""
        self._take(bed)
        if bed is self.bed:
            self.strength.forget(why)
            self._refresh()
            self._describe()

    def show_load(self, load: str | None = None, times: float | None = None) -> None:
        """Show the strength under another load (its key; "" is the worst of all), or the sag drawn
        another number of times.
        """
        self.strength.choose(load, times)
        self._refresh()
        self._describe()

    def _describe(self) -> None:
        """Say in words what the colours are of, for those who do not see them."""
        told = self.strength.told
        words = f"{told.title}. {told.foot}".strip() if self.is_by_strength else ""
        self.setAccessibleDescription(words)

    def _take(self, bed: Bed) -> None:
        if self._next is not None and self._next[0] is bed:
            self._show_next()

    def show_shadow(self, on: bool) -> None:
        """Show the shadow on the floor."""
        self.stage.floor.setVisible(on)
        self._refresh()

    def show_dimensions(self, on: bool) -> None:
        """Show dimension lines and clearances with their numbers."""
        self._has_dimensions = on
        self._refresh()

    def write_lengths(self, show: Show, say: Callable[[str], str] = str) -> None:
        """Write the numbers on the bed as this says, from mm, and sentences that hold some."""
        self._show_length, self.strength.say = show, say
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
        self._slide.forget(names)
        self.stage.move(dict.fromkeys(names, share))
        self._refresh()

    def slide_drawers(self, share: float, drawers: Iterable[str]) -> None:
        """As `pull_drawers`, but watched on the way."""
        here = self.drawers
        self._slide.send({name: here[name] for name in drawers}, share)

    def pull_apart(self, share: float) -> None:
        """Move the assemblies from each other: 0 together, 1 apart."""
        self.stage.move(apart=share)
        self._refresh()

    def _drawer_moved(self, drawer: str, share: float) -> None:
        self.stage.move({drawer: share})
        if self.canvas is not None:
            self._framing.accept(self._frame(self.canvas.picture))
        self._refresh()
        self.drawer_moved.emit(drawer, share)

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
        return self._frame(picture or self.canvas.picture).fitted(camera)

    def _frame(self, picture: Picture) -> Frame:
        """The bed, and the room that its dimension lines take."""
        bed = corners(self.stage.bounds)
        room = bed + BESIDE * np.sign(bed - bed.mean(0))
        is_measured = self._has_dimensions and not self.stage.apart
        return Frame(picture, (np.concatenate((bed, room)) if is_measured else bed, bed))

    def _keep_whole(self) -> None:
        """Keep in the picture what was wholly in it, when the bed or the picture changes."""
        if self.canvas is None or self.stage.scene is None or self.canvas.is_gliding:
            return
        frame = self._frame(self.canvas.picture)
        if self._wants_fit:
            self._wants_fit = False
            self.canvas.camera = frame.fitted(self.canvas.camera)
        self.canvas.camera = self._framing.kept(self.canvas.camera, frame)

    # ------------------------------------------------------------ pictures

    def render_image(
        self, width: int, height: int, samples: int = 4, view: str | None = None
    ) -> QImage:
        """The picture at any size, from a fixed view or as it is; a null image without OpenGL."""
        if self.canvas is None:
            return QImage()
        self._keep_whole()
        kept = self.canvas.camera
        if view is not None:
            self.canvas.camera = self._fitted(kept.turned_to(view), Picture(width, height))
        image = self.canvas.render_image(width, height, samples)
        self.canvas.camera = kept
        return image

    # ------------------------------------------------------------ inside

    def _made_canvas(self) -> SteeredCanvas | None:
        draws_with = renderer()
        if not draws_with:
            return None
        canvas = SteeredCanvas(is_software(draws_with), self)
        stage = self.stage
        items = (stage.floor, *stage.layers.items, *stage.worked.items)
        for item in (BackdropItem(-100), *items):
            canvas.addItem(item)
        canvas.before_drawing = self._prepare
        canvas.overlay = self._paint_overlay
        self._hand = hand = Hand(self.stage, canvas)
        hand.picked.connect(self._pick)
        hand.dimension_picked.connect(self.dimension_picked)
        hand.hovered.connect(self._hover)
        hand.pulled.connect(self._pull_drawer)
        hand.toggled.connect(self._toggle_drawer)
        return canvas

    def _prepare(self) -> None:
        if self.canvas is None or self.stage.scene is None:
            return
        self._keep_whole()
        self.canvas.hold(self.stage.bounds)
        self.stage.prepare(self.canvas.camera.axes[2])

    def _paint_overlay(
        self, painter: QPainter, picture: Picture, camera: Camera, scale: float
    ) -> None:
        plates = self._painted(painter, picture, camera, scale)
        if self._hand is not None and isinstance(painter.device(), QWidget):
            self._hand.plates = plates

    def _painted(
        self, painter: QPainter, picture: Picture, camera: Camera, scale: float
    ) -> tuple[tuple[QRectF, str], ...]:
        scene, bed = self.stage.scene, self.bed
        if bed is None or scene is None:
            return ()
        if self.is_by_strength:  # sizes would hide the colours
            self.strength.paint(painter, picture, camera, scale)
            return ()
        if not self._has_dimensions or self.stage.apart > 0:
            return ()
        lines = lines_to_draw(bed, self.selected, self.stage.reach)
        drawn = chosen(lines, camera, picture, scene.bounds)
        return DimensionPainter(painter, picture, scale).paint(drawn, self._show_length)

    def _restyle(self, **changes: Any) -> None:
        if self.stage.restyle(**changes):
            self._refresh()

    def _refresh(self) -> None:
        if self.canvas is not None:
            self.canvas.refresh()

    def _pick(self, piece: int) -> None:
        self._show_next()  # who picks means the bed that all others speak of
        self.picked.emit(piece)

    def _hover(self, piece: int) -> None:
        self._restyle(hovered=piece)
        self.hovered.emit(piece)

    def _pull_drawer(self, drawer: str, share: float) -> None:
        self._slide.forget([drawer])
        self._drawer_moved(drawer, share)

    def _toggle_drawer(self, drawer: str) -> None:
        self.slide_drawers(0.0 if self.drawers[drawer] > 0.5 else 1.0, [drawer])

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
