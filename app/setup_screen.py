"""Is there a screen that a window can open on? Standard library only."""

import ctypes
import os
import re
import socket
import sys
from pathlib import Path


def has_screen() -> bool:
    """Windows and macOS always have one; elsewhere a display server has to answer."""
    if sys.platform in ("win32", "darwin"):
        return True
    return wayland_answers() or x11_answers()


def wayland_answers() -> bool:
    name = os.environ.get("WAYLAND_DISPLAY")
    return bool(name) and _answers(str(Path(os.environ.get("XDG_RUNTIME_DIR", "/run"), name or "")))


def x11_answers() -> bool:
    """Ask the way Qt will, with its permissions; by bare socket while the library is missing."""
    name = os.environ.get("DISPLAY")
    if not name:
        return False
    try:
        return _opens(ctypes.CDLL("libxcb.so.1"), name)
    except OSError:
        return _listens(name)


def _opens(xcb: ctypes.CDLL, name: str) -> bool:
    xcb.xcb_connect.restype = ctypes.c_void_p
    connection = ctypes.c_void_p(xcb.xcb_connect(name.encode(), None))
    refused = xcb.xcb_connection_has_error(connection)
    xcb.xcb_disconnect(connection)
    return not refused


def _listens(name: str) -> bool:
    """DISPLAY is `host:number.screen`; no host means this machine."""
    parts = re.fullmatch(r"(?P<host>.*):(?P<number>\d+)(\.\d+)?", name)
    if parts is None:
        return False
    host, number = parts["host"], int(parts["number"])
    if host in ("", "unix"):
        path = f"/tmp/.X11-unix/X{number}"
        return _answers(path) or _answers(f"\0{path}")
    try:
        socket.create_connection((host, 6000 + number), timeout=3).close()
    except OSError:
        return False
    return True


def _answers(path: str) -> bool:
    with socket.socket(socket.AF_UNIX) as asking:
        try:
            asking.connect(path)
        except OSError:
            return False
    return True
