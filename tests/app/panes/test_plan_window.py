"""The plan set in the window: one pick on pages, in lists and on the bed; its commands by keys."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtPrintSupport import QPrintDialog
from pytestqt.qtbot import QtBot

from app.panes.kept_work import KeptWork
from app.session import Session
from app.window import CUTTING, PLAN_SET, Window
from model.bed import Design

pytestmark = pytest.mark.gl
CONTROL = Qt.KeyboardModifier.ControlModifier
LONG = 30_000  # ms


def put_away(window: Window) -> None:
    """So that closing asks nothing."""
    window.session.worker.wait()
    window.session.mark_saved(None)


@pytest.fixture
def window(qtbot: QtBot, tmp_path: Path) -> Iterator[Window]:
    session = Session(Design(choices={"left.drawers": 0, "right.drawers": 0}))
    made = Window(session, KeptWork(session, tmp_path / "unsaved"))
    qtbot.addWidget(made, before_close_func=put_away)
    with qtbot.waitActive(made):
        made.show()
        made.activateWindow()
    qtbot.waitUntil(lambda: session.is_judged, timeout=LONG)
    with qtbot.waitSignal(made.desk_of_plans.known, timeout=LONG):
        qtbot.keyClick(made, str(PLAN_SET + 1), CONTROL)
    yield made
    session.worker.wait()


def test_a_piece_pressed_on_a_page_is_picked_in_the_list_and_on_the_bed(
    window: Window, qtbot: QtBot
) -> None:
    with qtbot.waitSignal(window.desk_of_plans.shown, timeout=LONG):
        window.planset.go_to("ends")
    page = window.planset.page
    assert page._places is not None
    about, points = page._places._strokes[0]
    (x0, y0), (x1, y1) = points[:2]

    qtbot.mouseClick(
        page.viewport(),
        Qt.MouseButton.LeftButton,
        pos=page.on_screen(((x0 + x1) / 2, (y0 + y1) / 2)).toPoint(),
    )

    (piece,) = window.view.selected
    assert window.session.bed.pieces.labels[piece]
    assert piece in window.parts.parts.record.pieces
    assert window.parts.parts.record.mark == about.removeprefix("piece/").rpartition("-")[0]
    assert window.lists.currentIndex() == PLAN_SET


def test_a_piece_pressed_on_the_bed_is_lit_on_the_page(window: Window) -> None:
    mark = next(m for m in window.session.bed.marks if m.mark.startswith("H"))

    window.view.picked.emit(mark.pieces[0])

    assert f"piece/{mark.mark}-1" in window.planset.page.lit


def test_more_room_is_given_to_all_lists_at_once(window: Window, qtbot: QtBot) -> None:
    before = window.bench.right.sizes()
    qtbot.mouseClick(window.planset.tools.room_button, Qt.MouseButton.LeftButton)

    assert window.bench.right.sizes()[1] > before[1]
    assert window.cutting.tools.room_button.isChecked()
    window.show_list(CUTTING)
    qtbot.mouseClick(window.cutting.tools.room_button, Qt.MouseButton.LeftButton)
    assert not window.planset.tools.room_button.isChecked()


def test_print_by_its_key_brings_the_pages_and_asks_for_a_printer(
    window: Window, qtbot: QtBot
) -> None:
    window.show_list(CUTTING)
    qtbot.keyClick(window, Qt.Key.Key_P, CONTROL)

    qtbot.waitUntil(lambda: isinstance(window.plan_files.dialog, QPrintDialog), timeout=LONG)
    assert window.lists.currentIndex() == PLAN_SET
    assert window.plan_files.dialog is not None
    window.plan_files.dialog.reject()


def test_how_the_set_is_laid_out_is_chosen_among_the_choices(window: Window, qtbot: QtBot) -> None:
    with qtbot.waitSignal(window.desk_of_plans.known, timeout=LONG):
        window.session.choose("paper", "A4")

    def is_a4() -> None:
        page = window.planset.page.page
        assert page is not None and (page.drawing.width, page.drawing.height) == (210.0, 297.0)

    qtbot.waitUntil(is_a4, timeout=LONG)
    group = window.choices._group_of["paper"]
    assert group.title == "Plan set"
    labels = [window.choices.field(each.name).input().accessibleName() for each in group.choices]
    assert labels == ["Paper", "Sizes in", "Views stand"]
