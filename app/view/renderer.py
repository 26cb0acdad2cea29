"""What draws OpenGL on this computer."""

from functools import cache

from PySide6.QtGui import QGuiApplication, QOffscreenSurface, QOpenGLContext

GL_RENDERER = 0x1F01
CANNOT_DRAW = ("offscreen", "minimal", "linuxfb", "vnc")  # some say that they can, and draw nothing
SOFTWARE = ("llvmpipe", "softpipe", "swrast", "SwiftShader", "GDI Generic", "Basic Render")


@cache  # 40 ms, and asked for by whoever opens a window as well as by each view
def renderer() -> str:
    """The name of the renderer, "" where nothing draws OpenGL."""
    if QGuiApplication.platformName() in CANNOT_DRAW:
        return ""
    context, surface = QOpenGLContext(), QOffscreenSurface()
    if not context.create():
        return ""
    surface.setFormat(context.format())
    surface.create()
    if not context.makeCurrent(surface):
        return ""
    name = str(context.functions().glGetString(GL_RENDERER))
    context.doneCurrent()
    return name


def is_software(name: str) -> bool:
    """Whether every pixel costs the processor."""
    return any(word.lower() in name.lower() for word in SOFTWARE)
