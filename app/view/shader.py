"""The shader programs of the view, and the buffers that feed them.

Programs belong to the item that uses them: each window has its own, whatever contexts are shared.
Without a `#version` line, `attribute` and `varying` run in every context that Qt may give.
"""

from __future__ import annotations

import numpy as np
import numpy.typing as npt
from OpenGL import GL
from PySide6.QtOpenGL import QOpenGLBuffer, QOpenGLShader, QOpenGLShaderProgram

from app.view.palette import Rgb
from app.view.use_scale import AT_LIMIT, PAST, STEPS, STRIPE

PRECISION = """
#ifdef GL_ES
precision mediump float;
#endif
"""

# Daylight from above and a broad lamp over the left shoulder; what is turned away stays warm.
WOOD = """
uniform mat4 u_mvp; uniform mat3 u_turn;
attribute vec3 a_position; attribute vec3 a_normal; attribute vec4 a_color; varying vec4 v_color;
void main() {
    float sky = 0.5 + 0.5 * a_normal.z;
    float lamp = 0.5 + 0.5 * dot(u_turn * a_normal, normalize(vec3(-0.50, 0.42, 0.80)));
    float bright = 0.47 + 0.15 * sky + 0.43 * lamp;
    vec3 tint = mix(vec3(1.02, 0.985, 0.94), vec3(1.0, 1.0, 1.005), lamp);
    v_color = vec4(min(a_color.rgb * bright * tint, 1.0), a_color.a);
    gl_Position = u_mvp * vec4(a_position, 1.0);
}
"""
PLAIN = """
uniform mat4 u_mvp;
attribute vec3 a_position; attribute vec4 a_color; varying vec4 v_color;
void main() { v_color = a_color; gl_Position = u_mvp * vec4(a_position, 1.0); }
"""
COLOUR = PRECISION + "varying vec4 v_color; void main() { gl_FragColor = v_color; }"
FLOOR = """
uniform mat4 u_mvp;
attribute vec3 a_position; attribute vec2 a_uv; varying vec2 v_uv;
void main() { v_uv = a_uv; gl_Position = u_mvp * vec4(a_position, 1.0); }
"""
SHADE = (
    PRECISION
    + """
varying vec2 v_uv; uniform sampler2D u_dark;
void main() { gl_FragColor = vec4(0.13, 0.14, 0.17, texture2D(u_dark, v_uv).r); }
"""
)

# The lamp is dimmed to a tenth: lit sides must not pass for another step of the scale.
WORKED = """
uniform mat4 u_mvp; uniform mat3 u_turn;
attribute vec3 a_position; attribute vec3 a_normal; attribute float a_use;
varying float v_use; varying float v_bright;
void main() {
    float lamp = 0.5 + 0.5 * dot(u_turn * a_normal, normalize(vec3(-0.50, 0.42, 0.80)));
    v_use = a_use;
    v_bright = 0.91 + 0.09 * lamp;
    gl_Position = u_mvp * vec4(a_position, 1.0);
}
"""


def _vec3(colour: Rgb) -> str:
    return f"vec3({', '.join(f'{part:.5f}' for part in colour)})"


def _steps() -> str:
    """The steps of the scale as code, the last one first: each next one is for less."""
    start = f"vec3 colour = {_vec3(STEPS[-1].colour)};"
    lower = reversed(STEPS[:-1])
    return start + "".join(
        f"\n    if (v_use <= {step.upto:.5f}) colour = {_vec3(step.colour)};" for step in lower
    )


SCALED = (
    PRECISION
    + f"""
varying float v_use; varying float v_bright; uniform float u_stripe;
void main() {{
    {_steps()}
    float across = mod(gl_FragCoord.x + gl_FragCoord.y, 2.0 * u_stripe);
    if (v_use > {AT_LIMIT:.6f}) colour = across < u_stripe ? {_vec3(STRIPE)} : {_vec3(PAST)};
    gl_FragColor = vec4(colour * v_bright, 1.0);
}}
"""
)


def program(vertex: str, fragment: str) -> QOpenGLShaderProgram:
    """A linked program, in the current context."""
    made = QOpenGLShaderProgram()
    for kind, code in (
        (QOpenGLShader.ShaderTypeBit.Vertex, vertex),
        (QOpenGLShader.ShaderTypeBit.Fragment, fragment),
    ):
        if not made.addShaderFromSourceCode(kind, code):
            raise RuntimeError(f"The view's shader does not compile: {made.log()}")
    made.bindAttributeLocation("a_position", 0)  # location 0 must be an array on some drivers
    if not made.link():
        raise RuntimeError(f"The view's shader does not link: {made.log()}")
    return made


class Buffer:
    """One array on the graphics card, sent again only when it has changed."""

    def __init__(self, width: int) -> None:
        self._width = width
        self._array: npt.NDArray[np.generic] | None = None
        self.forget_context()

    def forget_context(self) -> None:
        """The context has gone, and the card's memory with it: send the array again."""
        self._buffer = QOpenGLBuffer(QOpenGLBuffer.Type.VertexBuffer)
        self._size, self._is_sent = -1, False

    def put(self, array: npt.NDArray[np.generic]) -> None:
        """Keep an array until it is next drawn: float32, or uint8 that stand for 0 to 1."""
        self._array, self._is_sent = np.ascontiguousarray(array), False

    def use(self, location: int) -> None:
        """Feed the current program's attribute; needs the context to be current."""
        assert self._array is not None
        if not self._buffer.isCreated():
            self._buffer.create()
        self._buffer.bind()
        if not self._is_sent:
            self._send(self._array)
        is_byte = self._array.dtype == np.uint8
        kind = GL.GL_UNSIGNED_BYTE if is_byte else GL.GL_FLOAT
        GL.glEnableVertexAttribArray(location)
        GL.glVertexAttribPointer(location, self._width, kind, is_byte, 0, None)
        self._buffer.release()

    def _send(self, array: npt.NDArray[np.generic]) -> None:
        if array.nbytes == self._size:
            self._buffer.write(0, array, array.nbytes)
        else:
            self._buffer.allocate(array, array.nbytes)
        self._size, self._is_sent = array.nbytes, True
