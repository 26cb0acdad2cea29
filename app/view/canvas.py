"""The picture itself: an OpenGL widget that draws items through a camera.

It knows nothing of beds. Where OpenGL is software, pictures in motion are drawn plain and fast,
and once more with smooth edges as soon as they rest.
"""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
from OpenGL import GL
from pyqtgraph.opengl import GLViewWidget
from PySide6.QtCore import QElapsedTimer, QSize, QTimer, Signal
from PySide6.QtGui import (
    QImage,
    QMatrix4x4,
    QPainter,
    QSurfaceFormat,
)
from PySide6.QtOpenGL import QOpenGLFramebufferObject, QOpenGLFramebufferObjectFormat
from PySide6.QtWidgets import QWidget

from app.view.camera import Bounds, Camera, Picture

SMOOTH = 4  # samples per pixel
REST = 160  # ms without a change until the picture is drawn once more, smoothly
GLIDE = 220  # ms from one fixed view to another
FLOOR_ROUND = 700.0  # mm of floor beyond the bed

Overlay = Callable[[QPainter, Picture, Camera, float], None]  # last: scale of texts


class Canvas(GLViewWidget):
    """Draws its items, then an overlay."""

    camera_changed = Signal()

    def __init__(self, is_software: bool, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        form = QSurfaceFormat.defaultFormat()
        form.setSamples(0 if is_software else SMOOTH)
        form.setDepthBufferSize(24)
        self.setFormat(form)
        self.camera = Camera()
        self.reach = 5000.0  # mm: how far from the camera's centre anything may lie
        self.overlay: Overlay | None = None
        self.before_drawing: Callable[[], None] = lambda: None
        self._is_software, self._rests = is_software, False
        self._smooth: QOpenGLFramebufferObject | None = None
        self._rest = QTimer(self, singleShot=True, interval=REST, timeout=self._draw_smoothly)
        self._glide = QTimer(self, interval=0, timeout=self._glide_on)
        self._glide_time, self._glide_ends = QElapsedTimer(), (self.camera, self.camera)

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

    @property
    def is_gliding(self) -> bool:
        """Whether the camera is on its way."""
        return self._glide.isActive()

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
            picture = Picture(width, height)
            self.overlay(painter, picture, self.camera, picture.scale)
            painter.end()
        return image


def _framebuffer(size: QSize, samples: int) -> QOpenGLFramebufferObject:
    form = QOpenGLFramebufferObjectFormat()
    form.setSamples(samples)
    form.setAttachment(QOpenGLFramebufferObject.Attachment.CombinedDepthStencil)
    return QOpenGLFramebufferObject(size, form)
