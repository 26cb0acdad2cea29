"""View, strip and pane show the same bed, load and piece; nothing is worked out that none sees."""

import threading
from collections.abc import Callable, Iterator
from types import SimpleNamespace
from typing import Any

import pytest
from PySide6.QtWidgets import QVBoxLayout, QWidget
from pytestqt.qtbot import QtBot

from app.panes import strength_desk
from app.panes.look_strip import LookStrip
from app.panes.strength_desk import BROKE_OFF, Answer, StrengthDesk, strength_of
from app.panes.strength_pane import LATE, StrengthPane
from app.panes.strength_strip import StrengthStrip
from app.session import Session
from app.view.bed_view import BedView
from app.view.strength_look import LATE as LOOKS_LATE
from model.bed import Bed, Design, solve
from model.structure.record import Unjudged


class Desk:
    """All that the desk keeps together, in one small window."""

    def __init__(self) -> None:
        self.session = Session(Design())
        self.window = QWidget()
        self.view, self.pane = BedView(), StrengthPane()
        self.strip, self.look = StrengthStrip(), LookStrip()
        layout = QVBoxLayout(self.window)
        for widget in (self.look, self.strip, self.view, self.pane):
            layout.addWidget(widget)
        self.look.coloured.connect(self.view.colour_by)
        self.session.changed.connect(lambda _: self.view.show_bed(self.session.bed))
        self.desk = StrengthDesk(self.session, self.view, self.pane, self.strip, self.look)
        self.view.show_bed(self.session.bed)
        self.window.resize(900, 800)


@pytest.fixture
def desk(shown: Callable[[QWidget], QWidget]) -> Iterator[Desk]:
    made = Desk()
    made.pane.hide()
    shown(made.window)
    yield made
    made.session.worker.wait()


@pytest.fixture
def asked(monkeypatch: pytest.MonkeyPatch) -> list[Bed]:
    """The beds whose strength is worked out."""
    found: list[Bed] = []
    plain = strength_of

    def watched(bed: Bed) -> Answer:
        found.append(bed)
        return plain(bed)

    monkeypatch.setattr(strength_desk, "strength_of", watched)
    return found


@pytest.mark.gl
def test_nothing_is_worked_out_while_nobody_looks(
    qtbot: QtBot, desk: Desk, asked: list[Bed]
) -> None:
    with qtbot.waitSignal(desk.session.changed):
        desk.session.choose("side_fit", 20.0)
    qtbot.waitUntil(lambda: not desk.session.worker.is_busy())

    assert asked == []


@pytest.mark.gl
def test_a_bed_is_worked_out_once_for_all_who_look(
    qtbot: QtBot, desk: Desk, asked: list[Bed]
) -> None:
    with qtbot.waitSignal(desk.desk.changed, timeout=20_000):
        desk.look.choose_colour("strength")
    with qtbot.waitSignal(desk.desk.changed, timeout=20_000):
        desk.pane.show()

    assert asked == [desk.session.bed]
    assert desk.pane.carried is desk.session.bed.strength
    assert desk.view.stage.strain.carried is desk.session.bed.strength


@pytest.mark.gl
def test_the_button_colours_the_bed_and_gives_it_back_its_paint(qtbot: QtBot, desk: Desk) -> None:
    desk.look.choose_colour("paint")
    assert not desk.strip.isVisible()

    desk.pane.bed_button.setChecked(True)
    assert desk.view.is_by_strength and desk.strip.isVisible()
    assert desk.look.colours.checkedAction().text() == "How hard each piece works"

    desk.pane.bed_button.setChecked(False)
    assert desk.view.stage.style.colour_by == "paint" and not desk.strip.isVisible()


@pytest.mark.gl
def test_a_load_is_the_same_everywhere(qtbot: QtBot, desk: Desk) -> None:
    desk.pane.show()
    with qtbot.waitSignal(desk.desk.changed, timeout=20_000):
        desk.look.choose_colour("strength")
    key = next(row.key for row in desk.pane.loads.sorted.rows.records if row.key)

    desk.strip.load_box.setCurrentIndex(desk.strip.load_box.findData(key))
    assert desk.view.strength.load == desk.pane.load == desk.pane.loads.record.key == key

    desk.pane.loads.choose(lambda row: row.key == "")
    assert desk.view.strength.load == desk.strip.load_box.currentData() == ""


@pytest.mark.gl
def test_an_answer_for_another_bed_is_dropped(qtbot: QtBot, desk: Desk) -> None:
    desk.pane.show()
    with qtbot.waitSignal(desk.desk.changed, timeout=20_000):
        desk.look.choose_colour("strength")
    other = strength_of(solve(Design().with_choices({"slat_width": 70.0})))

    with qtbot.assertNotEmitted(desk.desk.changed):
        desk.desk._tell(other)

    assert desk.pane.carried is desk.session.bed.strength


@pytest.mark.gl
def test_what_cannot_be_judged_is_said_in_view_and_pane(
    qtbot: QtBot, desk: Desk, monkeypatch: pytest.MonkeyPatch
) -> None:
    loose = Unjudged(sentence="The centre beam rests on nothing.")
    monkeypatch.setattr(
        strength_desk, "strength_of",
        lambda bed: strength_of(SimpleNamespace(strength=loose))._replace(bed=bed),
    )  # fmt: skip
    desk.pane.show()

    with qtbot.waitSignal(desk.desk.changed, timeout=20_000):
        desk.look.choose_colour("strength")

    assert desk.view.strength.told.title == desk.pane.told.text() == loose.sentence


@pytest.mark.gl
def test_what_takes_long_is_said_to_be_on_its_way(
    qtbot: QtBot, desk: Desk, monkeypatch: pytest.MonkeyPatch
) -> None:
    desk.pane.show()
    with qtbot.waitSignal(desk.desk.changed, timeout=20_000):
        desk.look.choose_colour("strength")
    gate = threading.Event()

    def slow(bed: Bed) -> Answer:
        assert gate.wait(20)
        return strength_of(bed)

    monkeypatch.setattr(strength_desk, "strength_of", slow)

    desk.session.choose("side_fit", 20.0)
    qtbot.waitUntil(lambda: desk.pane.told.text() == LATE, timeout=20_000)
    qtbot.waitUntil(lambda: desk.view.strength.note == LOOKS_LATE, timeout=20_000)
    with qtbot.waitSignal(desk.desk.changed, timeout=20_000):
        gate.set()

    assert desk.pane.told.text() != LATE
    assert desk.pane.carried is desk.view.stage.strain.carried is desk.session.bed.strength


@pytest.mark.gl
def test_a_mistake_of_our_own_is_logged_and_said(
    qtbot: QtBot, desk: Desk, monkeypatch: pytest.MonkeyPatch, caplog: Any
) -> None:
    def broken(bed: Bed) -> Answer:
        raise ZeroDivisionError

    monkeypatch.setattr(strength_desk, "strength_of", broken)

    with qtbot.waitSignal(desk.desk.changed, timeout=20_000):
        desk.look.choose_colour("strength")

    assert desk.view.strength.told.title == BROKE_OFF
    assert "broke off" in caplog.text
