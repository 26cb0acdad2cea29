"""In the whole window: a failed check is picked, its change is pressed, the bed on view holds."""

from __future__ import annotations

from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from app.panes.kept_work import KeptWork
from app.session import Session
from app.window import CHECKS, Window
from model.bed import Design
from model.checks.record import Verdict

pytestmark = pytest.mark.gl


def put_away(window: Window) -> None:
    """So that closing asks nothing."""
    window.session.worker.wait()
    window.session.mark_saved(None)


def test_a_press_mends_the_picked_check_and_one_step_back_undoes_it(
    qtbot: QtBot, tmp_path: Path
) -> None:
    session = Session(Design().with_choices({"side_fit": 4.0}))
    window = Window(session, KeptWork(session, tmp_path / "unsaved"))
    qtbot.addWidget(window, before_close_func=put_away)
    with qtbot.waitActive(window):
        window.show()
        window.activateWindow()
    qtbot.waitUntil(lambda: session.is_judged, timeout=20_000)
    width = session.bed["bed_width"]

    window.show_list(CHECKS)
    window.checks.table.choose(lambda finding: finding.id == "mattress_drops_in_across")
    button = window.checks.remedy.button
    qtbot.waitUntil(button.isVisible, timeout=20_000)
    with qtbot.waitSignal(session.judged, timeout=20_000):
        qtbot.mouseClick(button, Qt.MouseButton.LeftButton)

    assert window.view.bed is session.bed
    assert session.bed["bed_width"] > width
    finding = window.checks.finding
    assert finding is not None
    assert (finding.id, finding.verdict) == ("mattress_drops_in_across", Verdict.HOLDS)

    window.strip.undo_button.click()
    assert session.bed["bed_width"] == width
    assert not session.can_undo
