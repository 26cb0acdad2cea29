"""The picked check comes with what would mend it, and one press does it."""

from __future__ import annotations

import threading
from collections.abc import Callable
from typing import Any

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QWidget
from pytestqt.qtbot import QtBot

from app.panes.checks_pane import ChecksPane
from app.panes.remedies import SEARCHING, Remedies
from app.panes.remedy_line import RemedyLine
from app.session import Session
from model.bed import Design
from model.checks.record import Verdict
from model.improve import NOTHING

Show = Callable[[QWidget], QWidget]
FEW = {"slats_by": "count", "slat_count": 11}  # too far apart for foam; 14 are not
WIDE = {"left.drawers": 1, "left.depth": "slide", "slide_length": 304.8}  # it racks


class Desk:
    """A session and its list of checks, as the window joins them."""

    def __init__(self, changes: dict[str, Any]) -> None:
        self.session = Session(Design().with_choices(changes))
        self.checks = ChecksPane()
        self.remedies = Remedies(self.session, self.checks)
        self.session.judged.connect(self.show)

    def show(self) -> None:
        self.checks.show_findings(self.session.bed.findings, self.session.unit)

    def pick(self, id: str) -> None:
        self.checks.table.choose(lambda finding: finding.id == id)
        assert self.checks.finding is not None and self.checks.finding.id == id

    @property
    def line(self) -> RemedyLine:
        return self.checks.remedy


@pytest.fixture
def desk(qtbot: QtBot, shown: Show) -> Callable[..., Desk]:
    def made(changes: dict[str, Any], is_shown: bool = True) -> Desk:
        desk = Desk(changes)
        if is_shown:
            shown(desk.checks)
        else:
            qtbot.addWidget(desk.checks)
        qtbot.waitUntil(lambda: desk.session.is_judged, timeout=20_000)
        desks.append(desk)
        return desk

    desks: list[Desk] = []
    yield made  # type: ignore[misc]
    for each in desks:
        each.session.worker.wait()


def offered(qtbot: QtBot, desk: Desk) -> None:
    qtbot.waitUntil(lambda: desk.line.button.isVisible(), timeout=20_000)


def test_a_failed_check_that_is_picked_comes_with_a_change(
    qtbot: QtBot, desk: Callable[..., Desk]
) -> None:
    few = desk(FEW)

    few.pick("slat_gap")
    assert few.line.label.text() == SEARCHING

    offered(qtbot, few)
    assert few.line.label.text().startswith("Slat count 14 in place of 11 would do")
    assert few.line.button.accessibleName() == "Make this change: Slat count 14 in place of 11"


def test_one_press_makes_the_change_and_the_check_is_seen_to_hold(
    qtbot: QtBot, desk: Callable[..., Desk]
) -> None:
    few = desk(FEW)
    few.pick("slat_gap")
    offered(qtbot, few)

    with qtbot.waitSignal(few.session.judged, timeout=20_000):
        qtbot.mouseClick(few.line.button, Qt.MouseButton.LeftButton)

    assert few.session.design.value("slat_count") == 14
    assert few.checks.finding is not None
    assert (few.checks.finding.id, few.checks.finding.verdict) == ("slat_gap", Verdict.HOLDS)
    assert "14 in place of 11" in few.line.label.text()
    assert not few.line.button.isVisible()


def test_the_change_is_one_step_back(qtbot: QtBot, desk: Callable[..., Desk]) -> None:
    """A sheet brings its thickness: two values, one step."""
    thick = desk({"bottom_stock": 9.0})
    before = thick.session.design
    thick.pick("bottom_sheet_thickness")
    offered(qtbot, thick)
    with qtbot.waitSignal(thick.session.changed):
        qtbot.mouseClick(thick.line.button, Qt.MouseButton.LeftButton)
    assert thick.session.design.value("bottom_sheet") == "birch_ply_9"

    thick.session.undo()

    assert thick.session.design == before
    assert not thick.session.can_undo


def test_the_button_is_reached_and_pressed_by_keyboard(
    qtbot: QtBot, desk: Callable[..., Desk]
) -> None:
    few = desk(FEW)
    few.pick("slat_gap")
    offered(qtbot, few)
    few.checks.table.setFocus()

    qtbot.keyClick(few.checks.table, Qt.Key.Key_Tab)
    assert QApplication.focusWidget() is few.line.button
    with qtbot.waitSignal(few.session.changed):
        qtbot.keyClick(few.line.button, Qt.Key.Key_Space)

    assert few.session.design.value("slat_count") == 14
    assert QApplication.focusWidget() is few.checks.table


def test_an_offer_goes_with_its_bed(qtbot: QtBot, desk: Callable[..., Desk]) -> None:
    few = desk(FEW)
    few.pick("slat_gap")
    offered(qtbot, few)

    few.session.choose("slat_count", 12)
    few.session.take_now()
    assert few.line.isHidden()  # before the new bed is judged

    offered(qtbot, few)
    assert few.line.label.text().startswith("Slat count 14 in place of 12")


def test_an_answer_for_an_old_bed_is_dropped(qtbot: QtBot, desk: Callable[..., Desk]) -> None:
    wide = desk(WIDE)
    wide.pick("left.drawer_racks")
    assert wide.session.worker.is_busy("improve")

    wide.session.choose("left.drawers", 3)
    wide.session.take_now()
    qtbot.waitUntil(lambda: not wide.session.worker.is_busy(), timeout=20_000)

    assert not wide.line.button.isVisible()
    assert NOTHING not in wide.line.label.text()


def test_an_answer_that_comes_after_its_bed_is_gone_is_dropped(
    qtbot: QtBot, desk: Callable[..., Desk], monkeypatch: pytest.MonkeyPatch
) -> None:
    """The search may have ended just before the bed was changed."""
    gate = threading.Event()
    monkeypatch.setattr("model.improve.improvement", lambda *_: None if gate.wait(20) else None)
    few = desk(FEW)
    few.pick("slat_gap")
    few.session.drag("slat_count", 12)  # under the hand, so that nothing new is searched
    few.session.take_now()
    qtbot.waitUntil(lambda: few.session.is_judged, timeout=20_000)

    gate.set()
    qtbot.waitUntil(lambda: not few.session.worker.is_busy("improve"), timeout=20_000)

    assert few.remedies.improvement is None
    few.session.settle("slat_count")
    assert few.line.label.text() == SEARCHING  # and not the old answer


def test_it_is_said_when_no_single_change_would_do(qtbot: QtBot, desk: Callable[..., Desk]) -> None:
    wide = desk(WIDE)

    wide.pick("left.drawer_racks")
    qtbot.waitUntil(lambda: wide.line.label.text() == NOTHING, timeout=30_000)

    assert not wide.line.button.isVisible()


def test_a_check_that_holds_asks_for_nothing(qtbot: QtBot, desk: Callable[..., Desk]) -> None:
    few = desk(FEW)

    few.pick("slat_bearing")

    assert few.line.isHidden()
    assert not few.session.worker.is_busy("improve")


def test_nothing_is_searched_while_the_list_is_out_of_sight_or_a_slider_is_dragged(
    qtbot: QtBot, desk: Callable[..., Desk], shown: Show
) -> None:
    few = desk(FEW, is_shown=False)
    few.pick("slat_gap")
    assert not few.session.worker.is_busy("improve")

    few.session.drag("slat_count", 12)
    few.session.take_now()
    qtbot.waitUntil(lambda: few.session.is_judged, timeout=20_000)
    shown(few.checks)
    assert not few.session.worker.is_busy("improve")

    few.session.settle("slat_count")
    offered(qtbot, few)


def test_an_answer_is_kept_while_its_bed_is_on_view(
    qtbot: QtBot, desk: Callable[..., Desk]
) -> None:
    few = desk(FEW)
    few.pick("slat_gap")
    offered(qtbot, few)

    few.pick("slat_bearing")
    few.pick("slat_gap")

    assert few.line.button.isVisible()
    assert not few.session.worker.is_busy("improve")
