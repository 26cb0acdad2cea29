"""The mouse and the keys: they turn, move and zoom the picture, or pull what can be gripped."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QPointF, Qt, Signal
from PySide6.QtGui import QKeyEvent, QMouseEvent, QWheelEvent
from PySide6.QtWidgets import QWidget

from app.view.canvas import Canvas

DEGREES_PER_PIXEL = 0.4
SLACK = 4  # px: less than this between press and release is a click
STEP = 5.0  # degrees per press of an arrow key
NEARER = 0.88  # per press of +

Grip = Callable[[float, float], None]  # mouse moved by dx, dy since the press


class SteeredCanvas(Canvas):
    """A canvas that obeys the hand, and tells where it was clicked."""

    clicked = Signal(float, float)
    double_clicked = Signal(float, float)
    hovered = Signal(float, float)

    def __init__(self, is_software: bool, parent: QWidget | None = None) -> None:
        super().__init__(is_software, parent)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMouseTracking(True)
        self.grip_at: Callable[[float, float], Grip | None] = lambda x, y: None
        self._press, self._last = QPointF(), QPointF()
        self._grip: Grip | None = None
        self._drags = False

    def mousePressEvent(self, event: QMouseEvent) -> None:
        self._press = self._last = event.position()
        self._drags = False
        is_left = event.button() == Qt.MouseButton.LeftButton
        plain = not event.modifiers() & Qt.KeyboardModifier.ShiftModifier
        self._grip = self.grip_at(self._press.x(), self._press.y()) if is_left and plain else None

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        at = event.position()
        if not event.buttons():
            self.hovered.emit(at.x(), at.y())
            return
        if not self._drags and (at - self._press).manhattanLength() < SLACK:
            return
        self._drags = True
        step, self._last = at - self._last, at
        if self._grip is not None:
            way = at - self._press
            self._grip(way.x(), way.y())
        elif event.buttons() & Qt.MouseButton.MiddleButton or (
            event.modifiers() & Qt.KeyboardModifier.ShiftModifier
        ):
            self.look(self.camera.panned(step.x(), step.y(), self.picture))
        elif event.buttons() & Qt.MouseButton.LeftButton:
            turn = DEGREES_PER_PIXEL * step
            self.look(self.camera.orbited(-turn.x(), turn.y()))

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        if not self._drags and event.button() == Qt.MouseButton.LeftButton:
            self.clicked.emit(event.position().x(), event.position().y())
        self._grip, self._drags = None, False

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        self._drags = True  # its release is no second click
        self.double_clicked.emit(event.position().x(), event.position().y())

    def wheelEvent(self, event: QWheelEvent) -> None:
        factor = 0.9988 ** event.angleDelta().y()
        at = (event.position().x(), event.position().y())
        self.look(self.camera.zoomed(factor, at, self.picture))
        event.accept()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        middle = (self.width() / 2, self.height() / 2)
        key = event.key()
        turns = {
            Qt.Key.Key_Left: (-STEP, 0.0),
            Qt.Key.Key_Right: (STEP, 0.0),
            Qt.Key.Key_Up: (0.0, STEP),
            Qt.Key.Key_Down: (0.0, -STEP),
        }
        zooms = {
            Qt.Key.Key_Plus: NEARER,
            Qt.Key.Key_Equal: NEARER,  # the same key without shift
            Qt.Key.Key_Minus: 1 / NEARER,
        }
        if key in turns:
            self.look(self.camera.orbited(*turns[Qt.Key(key)]))
        elif key in zooms:
            self.look(self.camera.zoomed(zooms[Qt.Key(key)], middle, self.picture))
        else:
            event.ignore()

    def keyReleaseEvent(self, event: QKeyEvent) -> None:
        event.ignore()
