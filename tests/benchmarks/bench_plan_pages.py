"""How soon a page of the plan set is on view after a change, against solving the changed bed.

Run by name: `python3 tests/run.py tests/benchmarks/bench_plan_pages.py -s`. Prints; asserts no
times. Aim: 100 ms from a change to the page, where the page needs no cutting plans.
"""

from __future__ import annotations

import statistics
import time
from pathlib import Path

import pytest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from app.panes.plan_desk import PlanDesk
from app.panes.plan_pane import PlanPane
from app.session import Session
from app.view.page_player import prepared_page
from model import designs
from model.bed import solve

DEMO = (
    Path(__file__).resolve().parents[2] / "resources" / "demos" / "painted_storage_queen.bedwright"
)
KEYS = ("cover", "ends", "sections", "part/S1", "parts", "steps/4")
CHANGES = 5
LONG = 120_000  # ms


def say(line: str, capsys: pytest.CaptureFixture[str]) -> None:
    with capsys.disabled():
        print("\n  " + line, end="")


@pytest.fixture
def desk(qtbot: QtBot) -> PlanDesk:
    pane = PlanPane()
    qtbot.addWidget(pane)
    pane.resize(900, 700)
    made = PlanDesk(Session(designs.read(DEMO)), pane)
    with qtbot.waitSignal(made.known, timeout=LONG):
        pane.show()
    return made


def heights(desk: PlanDesk) -> list[float]:
    low = float(desk.session.design.value("rail_height"))
    return [low + step * 25.4 / 16 for step in range(1, CHANGES + 1)]


def solving_ms(desk: PlanDesk) -> float:
    times, bed = [], desk.session.bed
    for height in heights(desk):
        start = time.perf_counter()
        bed = solve(bed.design.with_choices({"rail_height": height}), last=bed)
        times.append(time.perf_counter() - start)
    return 1000 * statistics.median(times)


def shown_ms(desk: PlanDesk, key: str, qtbot: QtBot) -> float:
    """From the change until the page is painted; the list is not awaited, as by a busy maker."""
    times = []
    for height in heights(desk):
        start = time.perf_counter()
        desk.session.choose("rail_height", height)
        with qtbot.waitSignal(desk.shown, timeout=LONG):
            pass
        QApplication.processEvents()
        times.append(time.perf_counter() - start)
        desk.stop()
        qtbot.waitUntil(lambda: not desk.session.worker.is_busy(), timeout=LONG)
        assert desk.pane.page.page is not None and desk.pane.page.page.key == key
    return 1000 * statistics.median(times)


def test_a_page_after_a_change(
    desk: PlanDesk, qtbot: QtBot, capsys: pytest.CaptureFixture[str]
) -> None:
    base = solving_ms(desk)
    say(f"solving the changed bed: {base:.1f} ms", capsys)
    for key in KEYS:
        if desk.pane.page.page is None or desk.pane.page.page.key != key:
            with qtbot.waitSignal(desk.shown, timeout=LONG):
                desk.pane.go_to(key)
        took = shown_ms(desk, key, qtbot)
        say(f"{key}: on view after {took:.0f} ms, {took / base:.1f} × solving", capsys)


def test_painting_a_page(desk: PlanDesk, qtbot: QtBot, capsys: pytest.CaptureFixture[str]) -> None:
    assert desk.listed is not None
    pages = [desk.listed.planset.page(desk.listed.place(key)) for key in KEYS]
    view = desk.pane.page
    for page in pages:
        start = time.perf_counter()
        prepared_page(page.drawing)
        ready = time.perf_counter()
        view.show_page(page)
        view.repaint()
        done = time.perf_counter()
        made, painted = 1000 * (ready - start), 1000 * (done - ready)
        say(f"{page.key}: {made:.1f} ms to prepare, {painted:.1f} ms with painting", capsys)
