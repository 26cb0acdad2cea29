"""The picture itself: an OpenGL widget that draws items through a camera and obeys the mouse.

It knows nothing of beds. Where OpenGL is software, pictures in motion are drawn plain and fast,
and once more with smooth edges as soon as they rest.
"""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
from OpenGL import GL
from pyqtgraph.opengl import GLViewWidget
from PySide6.QtCore import QElapsedTimer, QPointF, QSize, Qt, QTimer, Signal
from PySide6.QtGui import (
    QImage,
    QKeyEvent,
    QMatrix4x4,
    QMouseEvent,
    QPainter,
    QSurfaceFormat,
    QWheelEvent,
)
from PySide6.QtOpenGL import QOpenGLFramebufferObject, QOpenGLFramebufferObjectFormat
from PySide6.QtWidgets import QWidget

from app.view.camera import Bounds, Camera, Picture

SMOOTH = 4  # samples per pixel
USUAL = (1000, 700)  # px: texts of larger exports grow with them
REST = 160  # ms without a change until the picture is drawn once more, smoothly
GLIDE = 220  # ms from one fixed view to another
DEGREES_PER_PIXEL = 0.4
SLACK = 4  # px: less than this between press and release is a click
FLOOR_ROUND = 700.0  # mm of floor beyond the bed
STEP = 5.0  # degrees per press of an arrow key

Overlay = Callable[[QPainter, Picture, Camera, float], None]  # last: scale of texts
Grip = Callable[[float, float], None]  # mouse moved by dx, dy since the press


class Canvas(GLViewWidget):
    """Draws its items, then an overlay; tells where it was clicked."""

    clicked = Signal(float, float)
    double_clicked = Signal(float, float)
    hovered = Signal(float, float)
    camera_changed = Signal()

    def __init__(self, is_software: bool, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        form = QSurfaceFormat.defaultFormat()
        form.setSamples(0 if is_software else SMOOTH)
        form.setDepthBufferSize(24)
        self.setFormat(form)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMouseTracking(True)
        self.camera = Camera()
        self.reach = 5000.0  # mm: how far from the camera's centre anything may lie
        self.overlay: Overlay | None = None
        self.before_drawing: Callable[[], None] = lambda: None
        self.grip_at: Callable[[float, float], Grip | None] = lambda x, y: None
        self._is_software, self._rests = is_software, False
        self._smooth: QOpenGLFramebufferObject | None = None
        self._rest = QTimer(self, singleShot=True, interval=REST, timeout=self._draw_smoothly)
        self._glide = QTimer(self, interval=0, timeout=self._glide_on)
        self._glide_time, self._glide_ends = QElapsedTimer(), (self.camera, self.camera)
        self._press, self._last = QPointF(), QPointF()
        self._grip: Grip | None = None
        self._drags = False

    # ------------------------------------------------------------ camera

    @property
    def picture(self) -> Picture:
        """Size in logical pixels."""
        return Picture(max(self.width(), 1), max(self.height(), 1))

    def look(self, camera: Camera) -> None:
        """Look through another camera at once."""
        self._glide.stop()
        self._set_camera(camera)

    def glide(self, camera: Camera) -> None:
        """Move to another camera in a few pictures, so that the eye can follow."""
        if not self.isVisible():
            self.look(camera)
            return
        self._glide_ends = (self.camera, camera)
        self._glide_time.start()
        self._glide.start()

    def _glide_on(self) -> None:
        share = min(self._glide_time.elapsed() / GLIDE, 1.0)
        if share >= 1:
            self._glide.stop()
        eased = share * share * (3 - 2 * share)
        start, end = self._glide_ends
        self._set_camera(start.towards(end, eased) if share < 1 else end)

    def hold(self, bounds: Bounds) -> None:
        """Let nothing within the bounds be cut off in depth."""
        far = np.abs(np.array(bounds) - self.camera.centre).max(0)
        self.reach = 1.6 * float(np.linalg.norm(far)) + FLOOR_ROUND

    def _set_camera(self, camera: Camera) -> None:
        self.camera = camera
        self.camera_changed.emit()
        self.refresh()

    def viewMatrix(self) -> QMatrix4x4:
        return QMatrix4x4(self.camera.view_matrix().ravel().tolist())

    def projectionMatrix(self, region: object, viewport: tuple[int, int, int, int]) -> QMatrix4x4:
        picture = Picture(viewport[2], viewport[3])
        return QMatrix4x4(self.camera.projection_matrix(picture, self.reach).ravel().tolist())

    # ------------------------------------------------------------ drawing

    def refresh(self) -> None:
        """Something has changed: draw soon."""
        self._rests = False
        if self._is_software:
            self._rest.start()
        self.update()

    def _draw_smoothly(self) -> None:
        self._rests = True
        self.update()

    def initializeGL(self) -> None:
        self._smooth = None
        for item in self.items:
            item.forget_context()
        super().initializeGL()

    def paintGL(self) -> None:
        self.before_drawing()
        if self._rests and self._is_software:
            self._paint_smoothly()
        else:
            super().paintGL()
        if self.overlay is not None:
            painter = QPainter(self)
            self.overlay(painter, self.picture, self.camera, 1.0)
            painter.end()

    def _paint_smoothly(self) -> None:
        size = QSize(self.deviceWidth(), self.deviceHeight())
        if self._smooth is None or self._smooth.size() != size:
            self._smooth = _framebuffer(size, SMOOTH)
        self._smooth.bind()
        GL.glViewport(0, 0, size.width(), size.height())
        super().paintGL()
        self._smooth.release()
        QOpenGLFramebufferObject.blitFramebuffer(None, self._smooth)

    def render_image(self, width: int, height: int, samples: int = SMOOTH) -> QImage:
        """The picture at any size, overlay included. Needs OpenGL but no visible window."""
        if not self.isValid():
            self.grabFramebuffer()  # makes the context
        self.before_drawing()
        self.makeCurrent()
        buffer = _framebuffer(QSize(width, height), samples)
        buffer.bind()
        GL.glViewport(0, 0, width, height)
        area = (0, 0, width, height)
        self.paint(region=area, viewport=area)
        image = buffer.toImage().convertToFormat(QImage.Format.Format_RGB32)
        buffer.release()
        self.doneCurrent()
        if self.overlay is not None:
            painter = QPainter(image)
            scale = max(min(width / USUAL[0], height / USUAL[1]), 1.0)
            self.overlay(painter, Picture(width, height), self.camera, scale)
            painter.end()
        return image

    # ------------------------------------------------------------ mouse and keys

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
        zooms = {Qt.Key.Key_Plus: 0.88, Qt.Key.Key_Equal: 0.88, Qt.Key.Key_Minus: 1 / 0.88}
        if key in turns:
            self.look(self.camera.orbited(*turns[Qt.Key(key)]))
        elif key in zooms:
            self.look(self.camera.zoomed(zooms[Qt.Key(key)], middle, self.picture))
        else:
            event.ignore()

    def keyReleaseEvent(self, event: QKeyEvent) -> None:
        event.ignore()


def _framebuffer(size: QSize, samples: int) -> QOpenGLFramebufferObject:
    form = QOpenGLFramebufferObjectFormat()
    form.setSamples(samples)
    form.setAttachment(QOpenGLFramebufferObject.Attachment.CombinedDepthStencil)
    return QOpenGLFramebufferObject(size, form)
