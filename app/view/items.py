"""What is drawn with OpenGL: backdrop, shadow on the floor, faces and edges of the bed."""

from __future__ import annotations

import numpy as np
import numpy.typing as npt
from OpenGL import GL
from pyqtgraph.opengl.GLGraphicsItem import GLGraphicsItem
from PySide6.QtGui import QMatrix4x4
from PySide6.QtOpenGL import QOpenGLShaderProgram

from app.view.camera import Picture
from app.view.palette import Backdrop
from app.view.shader import COLOUR, FLOOR, PLAIN, SCALED, SHADE, WOOD, WORKED, Buffer, program
from app.view.shadow import Shadow
from app.view.use_scale import STRIPE_WIDTH

Array = npt.NDArray[np.generic]
OVER = (GL.GL_SRC_ALPHA, GL.GL_ONE_MINUS_SRC_ALPHA, GL.GL_ONE, GL.GL_ONE_MINUS_SRC_ALPHA)


class Item(GLGraphicsItem):
    """An item with its own program and buffers. `order`: lower is drawn first."""

    vertex, fragment = PLAIN, COLOUR
    widths = {"a_position": 3, "a_color": 4}

    def __init__(self, order: int) -> None:
        super().__init__()
        self.setDepthValue(order)
        self.buffers = {name: Buffer(width) for name, width in self.widths.items()}
        self.corners = 0
        self._program: QOpenGLShaderProgram | None = None

    def put(self, **arrays: Array) -> None:
        """New arrays by attribute, such as `a_position` (..., 3)."""
        for name, array in arrays.items():
            self.buffers[name].put(array)
        if "a_position" in arrays:
            self.corners = arrays["a_position"].size // 3

    def forget_context(self) -> None:
        """The context has gone: make everything anew when next drawn."""
        self._program = None
        for buffer in self.buffers.values():
            buffer.forget_context()

    def paint(self) -> None:
        if not self.corners:
            return
        if self._program is None:
            self._program = program(self.vertex, self.fragment)
        used = self._program
        used.bind()
        locations = [used.attributeLocation(name) for name in self.buffers]
        for location, buffer in zip(locations, self.buffers.values(), strict=True):
            buffer.use(location)
        GL.glBlendFuncSeparate(*OVER)
        self.draw(used)
        for location in locations:  # the painter of the numbers comes after us
            GL.glDisableVertexAttribArray(location)
        used.release()

    def draw(self, used: QOpenGLShaderProgram) -> None:
        """Set the switches and draw."""
        raise NotImplementedError


class BackdropItem(Item):
    """A calm gradient behind everything."""

    def __init__(self, order: int) -> None:
        super().__init__(order)
        colours = np.ones((4, 4), np.float32)
        colours[:2, :3], colours[2:, :3] = Backdrop().foot, Backdrop().top
        corners = [(-1, -1, 0), (1, -1, 0), (-1, 1, 0), (1, 1, 0)]
        self.put(a_position=np.array(corners, np.float32), a_color=colours)

    def draw(self, used: QOpenGLShaderProgram) -> None:
        GL.glDisable(GL.GL_DEPTH_TEST)
        GL.glDisable(GL.GL_BLEND)
        used.setUniformValue("u_mvp", QMatrix4x4())
        GL.glDrawArrays(GL.GL_TRIANGLE_STRIP, 0, 4)


class FloorItem(Item):
    """The soft shadow, as one textured rectangle on the floor."""

    vertex, fragment = FLOOR, SHADE
    widths = {"a_position": 3, "a_uv": 2}

    def __init__(self, order: int) -> None:
        super().__init__(order)
        self.put(a_uv=np.array([(0, 0), (1, 0), (0, 1), (1, 1)], np.float32))
        self._shadow: Shadow | None = None
        self._texture, self._is_sent = 0, False

    def show_shadow(self, shadow: Shadow) -> None:
        """Lay another shadow on the floor."""
        (x0, y0), (x1, y1) = shadow.low, shadow.high
        corners = [(x0, y0, 0), (x1, y0, 0), (x0, y1, 0), (x1, y1, 0)]
        self.put(a_position=np.array(corners, np.float32))
        self._shadow, self._is_sent = shadow, False

    def forget_context(self) -> None:
        super().forget_context()
        self._texture, self._is_sent = 0, False

    def draw(self, used: QOpenGLShaderProgram) -> None:
        GL.glDisable(GL.GL_DEPTH_TEST)
        GL.glEnable(GL.GL_BLEND)
        self._bind_texture()
        used.setUniformValue("u_mvp", self.mvpMatrix())
        used.setUniformValue1i(used.uniformLocation("u_dark"), 0)
        GL.glDrawArrays(GL.GL_TRIANGLE_STRIP, 0, 4)
        GL.glBindTexture(GL.GL_TEXTURE_2D, 0)

    def _bind_texture(self) -> None:
        assert self._shadow is not None
        self._texture = self._texture or int(GL.glGenTextures(1))
        GL.glActiveTexture(GL.GL_TEXTURE0)
        GL.glBindTexture(GL.GL_TEXTURE_2D, self._texture)
        if self._is_sent:
            return
        grey = np.repeat((self._shadow.dark * 255).astype(np.uint8)[:, :, None], 4, axis=2)
        size = (grey.shape[1], grey.shape[0])
        GL.glTexImage2D(
            GL.GL_TEXTURE_2D, 0, GL.GL_RGBA, *size, 0, GL.GL_RGBA, GL.GL_UNSIGNED_BYTE, grey
        )
        for name in (GL.GL_TEXTURE_MIN_FILTER, GL.GL_TEXTURE_MAG_FILTER):
            GL.glTexParameteri(GL.GL_TEXTURE_2D, name, GL.GL_LINEAR)
        for name in (GL.GL_TEXTURE_WRAP_S, GL.GL_TEXTURE_WRAP_T):
            GL.glTexParameteri(GL.GL_TEXTURE_2D, name, GL.GL_CLAMP_TO_EDGE)
        self._is_sent = True


class FacesItem(Item):
    """Faces in one buffer. Ghosts are seen through: they hide nothing that comes after them."""

    vertex = WOOD
    widths = {"a_position": 3, "a_normal": 3, "a_color": 4}

    def __init__(self, order: int, is_ghost: bool = False) -> None:
        super().__init__(order)
        self.is_ghost = is_ghost

    def draw(self, used: QOpenGLShaderProgram) -> None:
        GL.glEnable(GL.GL_DEPTH_TEST)
        (GL.glEnable if self.is_ghost else GL.glDisable)(GL.GL_BLEND)
        GL.glDepthMask(not self.is_ghost)
        # Edges lie in the faces: pushed back a little, faces do not fight with them.
        GL.glEnable(GL.GL_POLYGON_OFFSET_FILL)
        GL.glPolygonOffset(1.0, 1.0)
        used.setUniformValue("u_mvp", self.mvpMatrix())
        used.setUniformValue("u_turn", self.modelViewMatrix().normalMatrix())
        # What is turned away is never seen from outside, and costs half of the picture.
        (GL.glDisable if self.is_ghost else GL.glEnable)(GL.GL_CULL_FACE)
        GL.glDrawArrays(GL.GL_TRIANGLES, 0, self.corners)
        GL.glDisable(GL.GL_CULL_FACE)
        GL.glDisable(GL.GL_POLYGON_OFFSET_FILL)
        GL.glDepthMask(True)


class WorkedItem(FacesItem):
    """Faces coloured by how hard they work: `a_use`, 1 at the limit, stripes past it."""

    vertex, fragment = WORKED, SCALED
    widths = {"a_position": 3, "a_normal": 3, "a_use": 1}

    def draw(self, used: QOpenGLShaderProgram) -> None:
        _, _, wide, high = GL.glGetIntegerv(GL.GL_VIEWPORT)
        stripe = STRIPE_WIDTH * Picture(int(wide), int(high)).scale
        used.setUniformValue1f(used.uniformLocation("u_stripe"), stripe)
        super().draw(used)


class EdgesItem(Item):
    """Lines of one pixel. Drawn through everything, they show where a hidden piece is."""

    def __init__(self, order: int, is_through: bool = False, is_solid: bool = False) -> None:
        super().__init__(order)
        self.is_through, self.is_solid = is_through, is_solid

    def draw(self, used: QOpenGLShaderProgram) -> None:
        (GL.glDisable if self.is_through else GL.glEnable)(GL.GL_DEPTH_TEST)
        (GL.glDisable if self.is_solid else GL.glEnable)(GL.GL_BLEND)
        GL.glDepthMask(False)
        used.setUniformValue("u_mvp", self.mvpMatrix())
        GL.glDrawArrays(GL.GL_LINES, 0, self.corners)
        GL.glDepthMask(True)
