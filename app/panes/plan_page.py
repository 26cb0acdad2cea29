"""One page of the plan set under the maker's hands: made larger, moved, followed by its links."""

from __future__ import annotations

from collections.abc import Callable, Collection

from PySide6.QtCore import QEvent, QPoint, QPointF, Qt, Signal
from PySide6.QtGui import QHelpEvent, QKeyEvent, QMouseEvent, QWheelEvent
from PySide6.QtWidgets import QToolTip, QWidget

from app.panes.plan_paper import PlanPaper
from app.panes.plan_places import PlanPlaces
from model.planset.page import Page

NEAR = 5.0  # px from a line that still belong to it
MOVED = 4  # px from which on a press is a pull


class PlanPage(PlanPaper):
    """Shows a page; says which link is followed, which piece is pressed, and which page is wanted
    next.
    """

    link_followed = Signal(str)  # the key of a page
    piece_picked = Signal(str)  # what it is about, "" beside all pieces
    turned = Signal(int)  # by so many pages
    turned_to_end = Signal(bool)  # the last, or the first

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.told: Callable[[str], str] = str  # what the note of a piece says
        self.named: Callable[[str], str] = str  # what a page's key is called
        self._places: PlanPlaces | None = None
        self._pressed: QPoint | None = None
        self._last = QPoint()
        self._is_pulled = False
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMouseTracking(True)
        self.viewport().setMouseTracking(True)

    def show_page(self, page: Page | None) -> None:
        """Another page from its top, or the same one drawn anew where it stands."""
        self._places = PlanPlaces(page) if page is not None else None
        super().show_page(page)

    def light(self, abouts: Collection[str]) -> None:
        """Light these pieces."""
        if self.lit != frozenset(abouts):
            self.lit = frozenset(abouts)
            self.viewport().update()

    def bring_to_sight(self, abouts: Collection[str]) -> None:
        """Scroll to the first of these pieces that stands on the page."""
        boxes = [self._places.box_of(about) for about in abouts] if self._places else []
        box = next((each for each in boxes if each is not None), None)
        if box is None:
            return
        middle = self.on_screen(((box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2))
        view = self.viewport().rect()
        if not view.contains(middle.toPoint()):
            off = middle.toPoint() - view.center()
            self.scroll_by(-off)

    # ------------------------------------------------------------ mouse

    def link_at(self, point: QPointF) -> str:
        """The key of the page that the place there leads to, or ""."""
        at = self.on_paper(point)
        link = self._places.link_at(at) if self._places is not None and at is not None else None
        return link.to if link is not None else ""

    def piece_at(self, point: QPointF) -> str:
        """What the piece there is about, or ""."""
        at = self.on_paper(point)
        if self._places is None or at is None:
            return ""
        return self._places.piece_at(at, NEAR / self.pixels)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        if event.button() in (Qt.MouseButton.LeftButton, Qt.MouseButton.MiddleButton):
            self._pressed = self._last = event.position().toPoint()
            self._is_pulled = False

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        here = event.position().toPoint()
        if self._pressed is None:
            self._show_hand(event.position())
            return
        if self._is_pulled or (here - self._pressed).manhattanLength() > MOVED:
            self._is_pulled = True
            self.viewport().setCursor(Qt.CursorShape.ClosedHandCursor)
            self.scroll_by(here - self._last)
            self._last = here

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        was_pressed, self._pressed = self._pressed, None
        self._show_hand(event.position())
        if was_pressed is None or self._is_pulled or event.button() != Qt.MouseButton.LeftButton:
            return
        key = self.link_at(event.position())
        if key:
            self.link_followed.emit(key)
        else:
            self.piece_picked.emit(self.piece_at(event.position()))

    def _show_hand(self, point: QPointF) -> None:
        is_way = bool(self.link_at(point) or self.piece_at(point))
        shape = Qt.CursorShape.PointingHandCursor if is_way else Qt.CursorShape.ArrowCursor
        self.viewport().setCursor(shape)

    def wheelEvent(self, event: QWheelEvent) -> None:
        steps = event.angleDelta().y()
        if event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            if steps:
                self.scale_by(1 if steps > 0 else -1, event.position())
        elif self.verticalScrollBar().maximum() or not steps:
            super().wheelEvent(event)
        else:  # nothing to scroll: the wheel turns the pages
            self.turned.emit(-1 if steps > 0 else 1)
        event.accept()

    def viewportEvent(self, event: QEvent) -> bool:
        if event.type() == QEvent.Type.ToolTip and isinstance(event, QHelpEvent):
            QToolTip.showText(event.globalPos(), self._note(QPointF(event.pos())), self.viewport())
            return True
        return super().viewportEvent(event)

    def _note(self, point: QPointF) -> str:
        key = self.link_at(point)
        if key:
            return f"Go to {self.named(key)}"
        about = self.piece_at(point)
        return self.told(about) if about else ""

    # ------------------------------------------------------------ keys

    def keyPressEvent(self, event: QKeyEvent) -> None:
        key = event.key()
        if key in (Qt.Key.Key_PageUp, Qt.Key.Key_PageDown):
            self.turned.emit(1 if key == Qt.Key.Key_PageDown else -1)
        elif key in (Qt.Key.Key_Home, Qt.Key.Key_End):
            self.turned_to_end.emit(key == Qt.Key.Key_End)
        elif key in (Qt.Key.Key_Plus, Qt.Key.Key_Equal, Qt.Key.Key_Minus):
            self.scale_by(-1 if key == Qt.Key.Key_Minus else 1)
        else:
            super().keyPressEvent(event)
