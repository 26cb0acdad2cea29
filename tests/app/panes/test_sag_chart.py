"""The chart of sag: drawn downwards, its limit beside it, read off by mouse and by key."""

import math
from collections.abc import Callable

import numpy as np
import pytest
from PySide6.QtCore import QPointF, Qt
from PySide6.QtWidgets import QWidget
from pytestqt.qtbot import QtBot

from app.panes.sag_chart import NOTHING, SagChart, SagLine

AT = np.linspace(0, 1524, 7)
SLAT = SagLine("slat 3 of the deck", AT, 6.35 * np.sin(np.pi * AT / 1524), 8.0)
RAIL = SagLine("top rail of the left side", AT * 1.2, 3.175 * np.sin(np.pi * AT / 1524), math.inf)


@pytest.fixture
def chart(shown: Callable[[QWidget], QWidget]) -> SagChart:
    made = SagChart()
    made.resize(420, 260)
    made.show_lines((SLAT, RAIL), "inch")
    shown(made)
    return made


def drawn(chart: SagChart) -> list[tuple[np.ndarray, np.ndarray]]:
    return [item.getData() for item in chart.plot.getPlotItem().listDataItems()]


def limits(chart: SagChart) -> list[float]:
    items = chart.plot.getPlotItem().items
    return [item.value() for item in items if getattr(item, "angle", None) == 0]


def test_each_line_is_drawn_as_it_is_known(chart: SagChart) -> None:
    (at, sag), (far, _) = drawn(chart)

    assert (at == SLAT.at).all() and (sag == SLAT.sag).all()
    assert far[-1] == RAIL.at[-1]


def test_lines_are_told_apart_by_their_stroke_not_by_colour_alone(chart: SagChart) -> None:
    pens = [item.opts["pen"] for item in chart.plot.getPlotItem().listDataItems()]

    assert pens[0].style() != pens[1].style()


def test_only_what_has_a_limit_gets_one(chart: SagChart) -> None:
    assert limits(chart) == [8.0]


def test_two_limits_are_named_side_by_side(chart: SagChart) -> None:
    chart.show_lines((SLAT, RAIL._replace(limit=7.9)), "mm")

    assert sorted(limits(chart)) == [7.9, 8.0]
    items = chart.plot.getPlotItem().items
    places = {item.label.orthoPos for item in items if getattr(item, "angle", None) == 0}
    assert len(places) == 2


def test_sag_hangs_down_and_the_limit_is_in_the_picture(chart: SagChart) -> None:
    box = chart.plot.getPlotItem().getViewBox()

    (_, (top, bottom)) = box.viewRange()

    assert box.yInverted()
    assert top < 0 < 8.0 < bottom


def test_the_names_say_sag_and_limit_in_the_makers_unit(chart: SagChart) -> None:
    assert 'Sags 1/4" of ~5/16": slat 3 of the deck' in chart.names[0].text()
    assert 'Sags 1/8": top rail of the left side' in chart.names[1].text()

    chart.show_lines((SLAT,), "mm")

    assert "Sags 6.35 mm of 8 mm" in chart.names[0].text()
    assert chart.names[1].isHidden()
    assert chart._along.unit == "mm"


def test_who_does_not_see_it_is_told_the_same(chart: SagChart) -> None:
    assert chart.accessibleName() == "Sag along the piece"
    assert 'Sags 1/4" of ~5/16": slat 3 of the deck' in chart.accessibleDescription()


def test_the_mouse_reads_the_lines_off(chart: SagChart, qtbot: QtBot) -> None:
    box = chart.plot.getPlotItem().getViewBox()
    middle = chart.plot.mapFromScene(box.mapViewToScene(QPointF(762.0, 3.0)))

    qtbot.mouseMove(chart.plot.viewport(), middle)

    qtbot.waitUntil(lambda: chart.reading.text().strip() != "")
    at, _, told = chart.reading.text().partition(": ")
    assert at.startswith("At ") and told.startswith(('1/4"', '~1/4"')) and " and " in told
    assert chart._cursor.isVisible()


def test_reading_ends_when_the_mouse_has_gone(chart: SagChart) -> None:
    chart.read(700.0)
    assert chart.reading.text().strip()

    chart.leaveEvent(None)

    assert not chart.reading.text().strip()
    assert not chart._cursor.isVisible()


def test_arrow_keys_read_along_the_piece(chart: SagChart, qtbot: QtBot) -> None:
    chart.setFocus()

    qtbot.keyClick(chart, Qt.Key.Key_Right)
    first = chart.read_at
    qtbot.keyClick(chart, Qt.Key.Key_Right)

    assert 0 < first < chart.read_at
    assert chart.accessibleDescription() == chart.reading.text()
    for _ in range(60):
        qtbot.keyClick(chart, Qt.Key.Key_Left)
    assert chart.read_at == 0


def test_it_is_read_off_at_marks_of_a_tape(chart: SagChart) -> None:
    chart.read(100.0)

    assert chart.reading.text().startswith('At 3 7/8": ')  # 3.937 in


def test_nothing_is_said_to_be_nothing(chart: SagChart) -> None:
    chart.show_lines((), "mm")

    assert chart.names[0].text() == NOTHING
    assert drawn(chart) == []


def test_a_chart_that_was_filled_before_it_is_seen_is_drawn_when_it_is(
    shown: Callable[[QWidget], QWidget],
) -> None:
    chart = SagChart()
    chart.show_lines((SLAT,), "mm")
    assert chart.plot is None

    shown(chart)

    assert len(drawn(chart)) == 1
