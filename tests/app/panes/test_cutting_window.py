"""Boards and sheets in the window: one pick in the lists, on the bed and on its board."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from app.panes.cutting_tools import DRAWINGS, ORDER
from app.panes.kept_work import KeptWork
from app.session import Session
from app.window import CUTTING, PARTS, Window
from model.bed import Design

pytestmark = pytest.mark.gl


def put_away(window: Window) -> None:
    """So that closing asks nothing."""
    window.session.worker.wait()
    window.session.mark_saved(None)


@pytest.fixture
def window(qtbot: QtBot, tmp_path: Path) -> Iterator[Window]:
    session = Session(Design())
    made = Window(session, KeptWork(session, tmp_path / "unsaved"))
    qtbot.addWidget(made, before_close_func=put_away)
    with qtbot.waitActive(made):
        made.show()
        made.activateWindow()
    qtbot.waitUntil(lambda: session.is_judged, timeout=20_000)
    with qtbot.waitSignal(made.desk_of_cutting.changed, timeout=30_000):
        qtbot.keyClick(made, str(CUTTING + 1), Qt.KeyboardModifier.ControlModifier)
    made.desk_of_cutting.pause()  # first plans are enough here
    yield made
    session.worker.wait()


def test_the_list_comes_up_by_its_key(window: Window) -> None:
    assert window.lists.currentIndex() == CUTTING
    assert window.cutting.plans


def test_a_piece_pressed_on_its_board_is_picked_in_the_list_and_on_the_bed(
    window: Window, qtbot: QtBot
) -> None:
    pane = window.cutting
    pane.show_page(DRAWINGS)
    qtbot.waitUntil(lambda: pane.view.isVisible() and not pane.view._soon.isActive())
    name = pane.plan.layouts[0].placed[0].name
    pane.view.show_about(f"piece/{name}")
    rect = pane.view.sheets.rect_of(f"piece/{name}")
    # Near its corner: rings of cuts may lie on its middle.
    corner = (rect.topLeft() * 0.9 + rect.bottomRight() * 0.1).toPoint()

    qtbot.mouseClick(pane.view.sheets, Qt.MouseButton.LeftButton, pos=corner)

    (piece,) = window.view.selected
    assert name in window.desk_of_cutting._names.of_bed_piece(piece)
    assert piece in window.parts.parts.record.pieces
    assert window.lists.currentIndex() == CUTTING
    assert window.parts.parts.record.mark in window.look.picked_label.text()


def test_a_piece_pressed_on_the_bed_is_lit_on_its_board(window: Window) -> None:
    plan = window.cutting.plans[-1]
    name = plan.layouts[0].placed[0].name
    piece = window.desk_of_cutting._names.bed_piece(name)

    window.view.picked.emit(piece)

    assert window.lists.currentIndex() == CUTTING
    assert window.cutting.plan.holding(name)
    assert f"piece/{name}" in window.cutting.view.sheets.lights


def test_a_row_of_the_parts_list_lights_all_its_pieces(window: Window) -> None:
    window.show_list(PARTS)
    window.parts.parts.choose(lambda record: record.quantity > 1)
    record = window.parts.parts.record
    window.show_list(CUTTING)

    lit = [a for a in window.cutting.view.sheets.lights if a.startswith("piece/")]

    names = window.desk_of_cutting._names
    assert {names.bed_piece(a.removeprefix("piece/")) for a in lit} == set(record.pieces)


def test_more_room_makes_the_lists_larger_and_gives_the_bed_its_room_back(
    window: Window, qtbot: QtBot
) -> None:
    pane, before = window.cutting, (window.view.height(), window.cutting.height())

    qtbot.mouseClick(pane.tools.room_button, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: pane.height() > 1.3 * before[1])
    assert window.view.height() < before[0]
    qtbot.mouseClick(pane.tools.room_button, Qt.MouseButton.LeftButton)

    qtbot.waitUntil(lambda: (window.view.height(), pane.height()) == before)


def test_a_ticked_cut_is_saved_with_the_design(window: Window, qtbot: QtBot) -> None:
    window.cutting.show_page(ORDER)
    window.cutting.view.setFocus()
    key = window.cutting.plan.steps[0].key

    qtbot.keyClick(window.cutting.view, Qt.Key.Key_Space)

    assert key in window.session.design.progress.cuts_done
    assert window.session.is_unsaved and window.strip.undo_button.isEnabled()
