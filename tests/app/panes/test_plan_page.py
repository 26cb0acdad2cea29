"""One page of the plan set on the screen: its size, its ways to other pages, its pieces."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QImage, QWheelEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QWidget
from pytestqt.qtbot import QtBot

from app.panes.plan_page import PlanPage
from app.panes.plan_paper import WHOLE, WIDTH
from app.view.page_player import LIT
from model.drawings.paper import Point
from tests.app.panes.sample_pages import INNER, OUTER, WAY, sample_page

LEFT = Qt.MouseButton.LeftButton
Key = Qt.Key


@pytest.fixture
def view(shown: Callable[[QWidget], QWidget]) -> PlanPage:
    made = PlanPage()
    made.resize(600, 500)
    made.show_page(sample_page())
    shown(made)
    return made


def spot(view: PlanPage, point: Point) -> QPoint:
    """Where a point of the paper lies in the window."""
    return view.on_screen(point).toPoint()


def middle(box: tuple[float, float, float, float]) -> tuple[float, float]:
    return ((box[0] + box[2]) / 2, (box[1] + box[3]) / 2)


def wheel(view: PlanPage, steps: int, at: QPoint, held: Qt.KeyboardModifier) -> None:
    place = QPointF(at)
    event = QWheelEvent(
        place, QPointF(view.viewport().mapToGlobal(at)), QPoint(), QPoint(0, 120 * steps),
        Qt.MouseButton.NoButton, held, Qt.ScrollPhase.NoScrollPhase, False,
    )  # fmt: skip
    QApplication.sendEvent(view.viewport(), event)


# ---------------------------------------------------------------- size


def test_at_first_the_whole_page_is_in_sight(view: PlanPage) -> None:
    high = view.page.drawing.height * view.pixels if view.page else 0.0

    assert view.follows == WHOLE
    assert 0.9 * view.viewport().height() < high < view.viewport().height()
    assert view.verticalScrollBar().maximum() == 0


def test_its_whole_width_fills_the_window(view: PlanPage) -> None:
    view.follow(WIDTH)

    assert view.page is not None
    wide = view.page.drawing.width * view.pixels
    assert 0.93 * view.viewport().width() < wide <= view.viewport().width()
    assert view.horizontalScrollBar().maximum() == 0
    assert view.verticalScrollBar().maximum() > 0
    view.resize(400, 500)
    assert view.page.drawing.width * view.pixels < 400


def test_true_size_goes_by_what_the_screen_says_of_itself(view: PlanPage) -> None:
    view.set_scale(1.0)

    left, right = spot(view, (0.0, 100.0)), spot(view, (100.0, 100.0))
    dots = view.screen().physicalDotsPerInch() / 25.4  # px to a mm
    assert right.x() - left.x() == pytest.approx(100 * dots, abs=1)  # whole px


def test_the_wheel_with_control_makes_larger_what_is_under_it(view: PlanPage) -> None:
    before, held = view.scale, spot(view, middle(OUTER))

    for _ in range(4):
        wheel(view, 1, held, Qt.KeyboardModifier.ControlModifier)

    assert view.scale == pytest.approx(before * 1.25**4)
    off = spot(view, middle(OUTER)) - held
    assert off.manhattanLength() <= 8  # scroll bars stand on whole px, one a step and axis


def test_the_wheel_alone_scrolls_or_where_nothing_is_hidden_turns_the_page(
    view: PlanPage, qtbot: QtBot
) -> None:
    none = Qt.KeyboardModifier.NoModifier
    with qtbot.waitSignal(view.turned) as turned:
        wheel(view, -1, view.viewport().rect().center(), none)
    assert turned.args == [1]

    view.follow(WIDTH)
    with qtbot.assertNotEmitted(view.turned):
        wheel(view, -1, view.viewport().rect().center(), none)
    assert view.verticalScrollBar().value() > 0


def test_pulling_moves_the_page_and_picks_nothing(view: PlanPage, qtbot: QtBot) -> None:
    view.set_scale(3.0)
    bar = view.verticalScrollBar()
    bar.setValue(bar.maximum() // 2)
    before, centre = bar.value(), view.viewport().rect().center()

    with qtbot.assertNotEmitted(view.piece_picked):
        QTest.mousePress(view.viewport(), LEFT, pos=centre)
        QTest.mouseMove(view.viewport(), centre - QPoint(0, 30))
        QTest.mouseMove(view.viewport(), centre - QPoint(0, 60))
        QTest.mouseRelease(view.viewport(), LEFT, pos=centre - QPoint(0, 60))

    assert bar.value() == before + 60


def test_the_same_page_drawn_anew_stays_where_it_was(view: PlanPage) -> None:
    view.set_scale(3.0)
    view.verticalScrollBar().setValue(100)

    view.show_page(sample_page(size='27 1/2"'))
    assert view.verticalScrollBar().value() == 100

    view.show_page(sample_page(key="plan"))
    assert view.verticalScrollBar().value() == 0


# ---------------------------------------------------------------- ways and pieces


def test_a_link_shows_a_hand_and_leads_to_its_page(view: PlanPage, qtbot: QtBot) -> None:
    here = spot(view, middle(WAY))
    qtbot.mouseMove(view.viewport(), here)
    qtbot.waitUntil(lambda: view.viewport().cursor().shape() == Qt.CursorShape.PointingHandCursor)

    with qtbot.waitSignal(view.link_followed) as followed:
        qtbot.mouseClick(view.viewport(), LEFT, pos=here)

    assert followed.args == ["part/S1"]


@pytest.mark.parametrize(
    ("point", "about"),
    [
        ((OUTER.x0, 170.0), "piece/S1-1"),  # on its line
        (middle(INNER), "piece/D1-2"),  # within the smaller one
        ((60.0, 170.0), "piece/S1-1"),  # within the larger one alone
        ((20.0, 170.0), ""),
    ],
)
def test_a_piece_is_picked_by_its_lines_or_what_they_reach_around(
    view: PlanPage, qtbot: QtBot, point: tuple[float, float], about: str
) -> None:
    with qtbot.waitSignal(view.piece_picked) as picked:
        qtbot.mouseClick(view.viewport(), LEFT, pos=spot(view, point))

    assert picked.args == [about]


def test_what_is_lit_is_seen_in_its_own_colour(view: PlanPage) -> None:
    assert not has_lit(view)

    view.light({"piece/D1-2"})
    assert has_lit(view)

    view.light(())
    assert not has_lit(view)


def has_lit(view: PlanPage) -> bool:
    picture = view.viewport().grab().toImage().convertToFormat(QImage.Format.Format_RGB32)
    size = (picture.height(), picture.width(), 4)
    pixels = np.frombuffer(picture.constBits(), np.uint8).reshape(size).astype(int)
    lit = [int(LIT[at : at + 2], 16) for at in (5, 3, 1)]  # blue, green, red
    return bool((abs(pixels[:, :, :3] - lit).max(axis=2) < 40).any())


def test_keys_turn_pages_and_change_the_size(view: PlanPage, qtbot: QtBot) -> None:
    with qtbot.waitSignal(view.turned) as down:
        qtbot.keyClick(view, Key.Key_PageDown)
    with qtbot.waitSignal(view.turned) as up:
        qtbot.keyClick(view, Key.Key_PageUp)
    with qtbot.waitSignal(view.turned_to_end) as end:
        qtbot.keyClick(view, Key.Key_End)
    before = view.scale
    qtbot.keyClick(view, Key.Key_Plus)

    assert (down.args, up.args, end.args) == ([1], [-1], [True])
    assert view.scale > before


def test_a_page_too_large_to_keep_is_painted_where_it_is_seen(view: PlanPage) -> None:
    view.set_scale(8.0, QPointF(spot(view, (INNER.x0, 170.0))))
    view.light({"piece/D1-2"})

    assert view._picture() is None
    assert has_lit(view)


def test_without_a_page_nothing_breaks(shown: Callable[[QWidget], QWidget]) -> None:
    view = shown(PlanPage())
    assert isinstance(view, PlanPage)

    view.set_scale(2.0)
    view.follow(WIDTH)
    QTest.mouseClick(view.viewport(), LEFT)
    view.grab()
