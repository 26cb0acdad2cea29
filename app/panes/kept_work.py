"""Unsaved work is written aside every few seconds, so that a crash or a power cut loses nothing."""

from __future__ import annotations

import contextlib
import os
import uuid
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QLockFile, QObject, QStandardPaths, QTimer

from model.errors import BadInput

if TYPE_CHECKING:
    from app.session import Session
    from model.bed import Design

PAUSE = 2000  # ms after the last change


def folder() -> Path:
    """Where unsaved work lies: the user's own place for data that programs keep."""
    where = QStandardPaths.StandardLocation.GenericDataLocation
    return Path(QStandardPaths.writableLocation(where)) / "bedwright" / "unsaved"


class KeptWork(QObject):
    """Keeps one session's unsaved design, and finds what windows that ended badly left behind."""

    def __init__(self, session: Session, place: Path | None = None) -> None:
        super().__init__(session)
        self._session = session
        self._place = place or folder()
        self._file = self._place / f"{uuid.uuid4().hex}.bedwright"
        self._lock: QLockFile | None = None
        self._soon = QTimer(self, singleShot=True, interval=PAUSE)
        self._soon.timeout.connect(self.keep)
        session.history_moved.connect(self._soon.start)

    def keep(self) -> None:
        """Write the design aside if it is unsaved; take it away if it is not."""
        if not self._session.is_unsaved:
            self.forget()
            return
        from model.designs import write

        with contextlib.suppress(OSError, BadInput):  # a full disk must not stop the maker
            self._place.mkdir(parents=True, exist_ok=True)
            self._hold()
            write(self._session.design, self._file)

    def forget(self) -> None:
        """The work is saved, or was thrown away on purpose."""
        self._soon.stop()
        with contextlib.suppress(OSError):
            self._file.unlink(missing_ok=True)
        if self._lock is not None:
            self._lock.unlock()
            self._lock = None

    def found(self) -> list[Path]:
        """Designs whose windows are gone, the newest first."""
        left = [path for path in self._place.glob("*.bedwright") if _is_left_behind(path)]
        return sorted(left, key=os.path.getmtime, reverse=True)

    def read(self, path: Path) -> Design | None:
        """A design that was left behind; None where the crash left only half of one."""
        from model.designs import read

        try:
            return read(path)
        except BadInput:
            return None

    def throw_away(self, path: Path) -> None:
        """It was taken over, or nobody wants it."""
        with contextlib.suppress(OSError):
            path.unlink(missing_ok=True)

    def _hold(self) -> None:
        if self._lock is None:
            self._lock = QLockFile(str(self._file.with_suffix(".lock")))
            self._lock.setStaleLockTime(0)  # stale only when its process is gone
            self._lock.tryLock(0)


def _is_left_behind(path: Path) -> bool:
    lock = QLockFile(str(path.with_suffix(".lock")))
    lock.setStaleLockTime(0)
    if not lock.tryLock(0):
        return False
    lock.unlock()
    return True
