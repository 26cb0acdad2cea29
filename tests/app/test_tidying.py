"""Nothing of the window is ever collected beside it: that once stopped the window for good."""

import gc
import threading
from collections.abc import Iterator
from typing import Any

import pytest
from pytestqt.qtbot import QtBot

from app import tidying
from app.worker import Worker


class Circle:
    """Something that only a collection can free; it tells in which thread that was."""

    def __init__(self, freed_in: list[int]) -> None:
        self.me, self.freed_in = self, freed_in

    def __del__(self) -> None:
        self.freed_in.append(threading.get_ident())


@pytest.fixture
def worker(qtbot: QtBot) -> Iterator[Worker]:
    worker = Worker()
    yield worker
    worker.wait()


def _make_many() -> int:
    """Enough new objects for Python to collect several times, were it left to itself."""
    kept = [[i] for i in range(300_000)]
    return len(kept)


def test_work_beside_the_window_collects_nothing(qtbot: QtBot, worker: Worker) -> None:
    freed_in: list[int] = []
    Circle(freed_in)
    answers: list[Any] = []

    worker.ask("lane", _make_many, answers.append)
    qtbot.waitUntil(lambda: bool(answers))

    assert all(thread == threading.get_ident() for thread in freed_in)
    assert not gc.isenabled()


def test_the_window_collects_once_many_objects_were_made(
    qtbot: QtBot, worker: Worker, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(tidying, "MANY", 0)
    freed_in: list[int] = []
    Circle(freed_in)

    qtbot.waitUntil(lambda: bool(freed_in))

    assert freed_in == [threading.get_ident()]


def test_few_new_objects_are_left_alone(
    qtbot: QtBot, worker: Worker, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A dragged slider is not held up for nothing."""
    gc.collect()
    collected: list[int] = []
    monkeypatch.setattr(tidying.gc, "collect", collected.append)

    qtbot.wait(2 * tidying.EVERY_MS)

    assert collected == []


def test_a_second_worker_brings_no_second_tidier(qtbot: QtBot, worker: Worker, qapp: Any) -> None:
    Worker(worker)

    assert len(qapp.findChildren(tidying.Tidier)) == 1
