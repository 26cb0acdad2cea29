"""Circles of objects are collected in the window's own thread, and in no other.

Python collects them in whichever thread makes the next object. Beside the window that thread could
meet a closed pane's signals: it then holds Qt's lock and waits for Python's, while the window
holds Python's and waits for Qt's, and both stand still for good. So automatic collection is off
wherever work runs beside a window, and a timer of the window's thread does it instead.
"""

from __future__ import annotations

import gc

from PySide6.QtCore import QCoreApplication, QObject, QTimer

EVERY_MS = 500
MANY = 50_000  # new objects: fewer are left, so that a dragged slider is not held up
FULL_EVERY = 40  # collections of new objects to one of all that is there


class Tidier(QObject):
    """Collects new circles when there are many, and all of them now and then."""

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        gc.disable()
        self._collections = 0
        self._timer = QTimer(self)
        self._timer.setInterval(EVERY_MS)
        self._timer.timeout.connect(self.tidy)
        self._timer.start()

    def tidy(self) -> None:
        """Collect, if enough has been made since the last time."""
        if gc.get_count()[0] < MANY:
            return
        self._collections += 1
        gc.collect(2 if self._collections % FULL_EVERY == 0 else 1)


def tidy_in_this_thread() -> None:
    """Have circles collected here, the window's thread; asked for again, nothing changes."""
    application = QCoreApplication.instance()
    if application is not None and application.findChild(Tidier) is None:
        Tidier(application)
