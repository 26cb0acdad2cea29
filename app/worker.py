"""Work that takes longer than a frame runs beside the window; a late answer is dropped.

Work is asked for on a lane. A lane does one thing at a time and keeps only the newest of what
waits, so that a slider that runs ahead of the checks never leaves a queue behind it.
"""

from __future__ import annotations

import logging
from collections.abc import Callable
from typing import Any, NamedTuple

from PySide6.QtCore import QObject, QRunnable, QThreadPool, Signal

from app.tidying import tidy_in_this_thread

log = logging.getLogger(__name__)


class Job(NamedTuple):
    """What is to be done, and who gets the answer or the trouble."""

    work: Callable[[], Any]
    answered: Callable[[Any], None]
    failed: Callable[[Exception], None]


class _Post(QObject):
    """Carries answers from the worker's thread to the window's."""

    done = Signal(str, object, object)


class _Run(QRunnable):
    """One job under way. It lets go of the work, which may hold panes, before it answers: the
    window still holds it then, so that no pane is ever deleted beside the window.
    """

    def __init__(self, lane: str, work: Callable[[], Any], post: _Post) -> None:
        super().__init__()
        self._lane, self._post = lane, post
        self._work: Callable[[], Any] | None = work

    def run(self) -> None:
        answer: Any = None
        trouble: Exception | None = None
        try:
            assert self._work is not None
            answer = self._work()
        except Exception as reason:  # it is raised again, or told, in the window's own thread
            trouble = reason
        self._work = None
        self._post.done.emit(self._lane, answer, trouble)


class Worker(QObject):
    """Runs jobs in lanes. Answers arrive in the window's thread, unless a newer job has come.

    `leaving` is told before the last wait: a long search ends itself then.
    """

    leaving = Signal()

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        tidy_in_this_thread()
        self._pool = QThreadPool(self)
        self._post = _Post(self)
        self._post.done.connect(self._take)
        self._running: dict[str, Job] = {}
        self._waiting: dict[str, Job] = {}

    def ask(
        self,
        lane: str,
        work: Callable[[], Any],
        answered: Callable[[Any], None],
        failed: Callable[[Exception], None] | None = None,
    ) -> None:
        """Do this as soon as the lane is free; what waited there before is forgotten."""
        job = Job(work, answered, failed or self.unexpected)
        if lane in self._running:
            self._waiting[lane] = job
        else:
            self._start(lane, job)

    def forget(self, lane: str) -> None:
        """Nobody wants the lane's answers any more."""
        self._waiting.pop(lane, None)
        if lane in self._running:
            self._running[lane] = self._running[lane]._replace(answered=_drop, failed=_drop)

    def is_busy(self, lane: str = "") -> bool:
        """Whether the lane, or any lane, has work under way."""
        return lane in self._running if lane else bool(self._running)

    def wait(self) -> None:
        """Let what runs come to its end, and drop its answer: the window is closing."""
        self.leaving.emit()
        for lane in tuple(self._running):
            self.forget(lane)
        self._waiting.clear()
        self._pool.waitForDone()

    @staticmethod
    def unexpected(trouble: Exception) -> None:
        """Work broke off by a mistake of our own: it is logged with its trace."""
        log.error("Work beside the window broke off", exc_info=trouble)

    def _start(self, lane: str, job: Job) -> None:
        self._running[lane] = job
        self._pool.start(_Run(lane, job.work, self._post))

    def _take(self, lane: str, answer: Any, trouble: Exception | None) -> None:
        job = self._running.pop(lane)
        newer = self._waiting.pop(lane, None)
        if newer is not None:
            self._start(lane, newer)
        elif trouble is not None:
            job.failed(trouble)
        else:
            job.answered(answer)


def _drop(_: Any) -> None:
    pass
