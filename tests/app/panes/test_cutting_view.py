"""Boards drawn one below the other: fitted, enlarged, pointed at and pressed."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QHelpEvent, QWheelEvent
from PySide6.QtWidgets import QApplication, QToolTip, QWidget
from pytestqt.qtbot import QtBot

from app.panes.cutting_sheets import Board
from app.panes.cutting_view import CuttingView
from model.drawings.cut_told import Shown
from tests.model.drawings.sample_layout import small_sheet

LEFT_BUTTON = Qt.MouseButton.LeftButton


@pytest.fixture
def view(shown: Callable[[QWidget], QWidget]) -> CuttingView:
    made = CuttingView()
    made.resize(640, 420)
    made.show_boards(
        [
            Board(
                small_sheet(n),
                Shown(title=f"Sheet {n}", numbers=range(7 * n - 6, 7 * n + 1), all_named=False),
            )
            for n in (1, 2, 3)
        ]
    )
    shown(made)
    return made


def middle(view: CuttingView, about: str) -> QPoint:
    """Beside the words in the middle of a place."""
    rect = view.sheets.rect_of(about)
    assert not rect.isEmpty()
    return rect.center().toPoint()


def test_a_drawing_fits_the_window(view: CuttingView) -> None:
    room = view.viewport().size()

    for place in view.sheets.places:
        assert place.rect.width() <= room.width() and place.rect.height() <= room.height()
    first = view.sheets.places[0].rect
    assert first.width() > 0.9 * room.width() or first.height() > 0.9 * room.height()


def test_drawings_lie_below_each_other(view: CuttingView) -> None:
    one, two, three = (place.rect for place in view.sheets.places)

    assert one.bottom() < two.top() and two.bottom() < three.top()


def test_only_what_is_in_sight_is_drawn(view: CuttingView, qtbot: QtBot) -> None:
    qtbot.waitUntil(lambda: 0 in view.sheets._made)

    assert 2 not in view.sheets._made


@pytest.mark.parametrize("about", ["piece/B1-1", "piece/B2-1"])
def test_a_piece_that_is_pressed_says_its_name(view: CuttingView, qtbot: QtBot, about: str) -> None:
    with qtbot.waitSignal(view.piece_picked) as told:
        qtbot.mouseClick(view.sheets, LEFT_BUTTON, pos=middle(view, about))

    assert told.args == [about.removeprefix("piece/")]


def test_a_number_that_is_pressed_is_its_cut(view: CuttingView, qtbot: QtBot) -> None:
    with qtbot.waitSignal(view.cut_picked) as told:
        qtbot.mouseClick(view.sheets, LEFT_BUTTON, pos=middle(view, "cut/4"))

    assert told.args == [4]


def test_a_press_beside_all_pieces_picks_none(view: CuttingView, qtbot: QtBot) -> None:
    with qtbot.waitSignal(view.piece_picked) as told:
        qtbot.mouseClick(view.sheets, LEFT_BUTTON, pos=QPoint(2, 2))

    assert told.args == [""]


def test_the_piece_under_the_mouse_is_told_once(view: CuttingView, qtbot: QtBot) -> None:
    told: list[str] = []
    view.piece_pointed.connect(told.append)

    for about in ("piece/B1-1", "piece/B1-2"):
        place = middle(view, about)
        qtbot.mouseMove(view.sheets, place)
        qtbot.mouseMove(view.sheets, place + QPoint(3, 1))
    qtbot.mouseMove(view.sheets, QPoint(2, 2))

    qtbot.waitUntil(lambda: told == ["B1-1", "B1-2", ""])


def test_the_note_of_a_piece_is_shown_beside_the_mouse(view: CuttingView, qtbot: QtBot) -> None:
    view.tip = lambda about: f"note of {about}"
    place = middle(view, "piece/B1-1")

    ask = QHelpEvent(QHelpEvent.Type.ToolTip, place, view.sheets.mapToGlobal(place))
    QApplication.sendEvent(view.sheets, ask)

    assert QToolTip.text() == "note of piece/B1-1"
    QToolTip.hideText()


def test_larger_is_larger_and_fit_goes_back(view: CuttingView, qtbot: QtBot) -> None:
    before = view.sheets.places[0].rect.width()

    qtbot.keyClick(view, Qt.Key.Key_Plus)
    assert view.sheets.places[0].rect.width() > 1.3 * before
    qtbot.keyClick(view, Qt.Key.Key_Minus)

    assert view.sheets.places[0].rect.width() == before


def test_the_wheel_with_control_enlarges(view: CuttingView) -> None:
    wheel = QWheelEvent(
        QPointF(50, 50), QPointF(50, 50), QPoint(), QPoint(0, 120), Qt.MouseButton.NoButton,
        Qt.KeyboardModifier.ControlModifier, Qt.ScrollPhase.NoScrollPhase, False,
    )  # fmt: skip

    QApplication.sendEvent(view.viewport(), wheel)

    assert view.zoom > 1.0


def test_arrows_step_and_space_ticks(view: CuttingView, qtbot: QtBot) -> None:
    steps: list[int] = []
    view.stepped.connect(steps.append)

    qtbot.keyClick(view, Qt.Key.Key_Right)
    qtbot.keyClick(view, Qt.Key.Key_Left)
    with qtbot.waitSignal(view.ticked):
        qtbot.keyClick(view, Qt.Key.Key_Space)

    assert steps == [1, -1]


def test_a_board_is_brought_into_sight_and_named(view: CuttingView, qtbot: QtBot) -> None:
    with qtbot.waitSignal(view.board_changed) as told:
        view.show_board(2)

    assert told.args == [2] and view.board == 2
    rect = view.sheets.places[2].rect
    assert not view.sheets.visibleRegion().intersected(rect).isEmpty()
    assert view.accessibleDescription().startswith("Sheet 3: ")
    assert "B1-1" in view.accessibleDescription()


def test_who_scrolls_is_told_the_board_in_sight(view: CuttingView, qtbot: QtBot) -> None:
    bar = view.verticalScrollBar()

    with qtbot.waitSignal(view.board_changed) as told:
        bar.setValue(bar.maximum())

    assert told.args[0] > 0
    assert view.accessibleDescription().startswith(f"Sheet {told.args[0] + 1}: ")


def test_the_drawings_follow_the_size_of_the_window(view: CuttingView, qtbot: QtBot) -> None:
    before = view.sheets.places[0].rect.width()

    view.resize(900, 640)

    qtbot.waitUntil(lambda: view.sheets.places[0].rect.width() > 1.2 * before)


def test_no_boards_is_an_empty_sheet(view: CuttingView) -> None:
    view.show_boards(())

    assert view.board == -1
    assert view.sheets.places == ()
