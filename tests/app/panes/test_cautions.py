"""The cautions stand below the checks: whose word counts at a glance, the rest on a press."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from app.panes.cautions import Cautions
from app.panes.checks_pane import ChecksPane
from model.checks.safety.cautions import all_cautions


def test_whose_word_counts_is_read_without_a_press(qtbot: QtBot) -> None:
    pane = ChecksPane()
    qtbot.addWidget(pane)

    (cautions,) = pane.findChildren(Cautions)

    assert "not an engineer's certificate" in cautions.heading.text()
    assert "local code" in cautions.heading.toolTip()


def test_a_press_opens_the_whole_list_and_another_closes_it(
    shown: Callable[[Any], Any], qtbot: QtBot
) -> None:
    cautions = shown(Cautions())
    assert not cautions.list.isVisible()

    qtbot.mouseClick(cautions.heading, Qt.MouseButton.LeftButton)
    assert cautions.list.isVisible()
    told = cautions.list.toPlainText()
    assert all(each.title in told and each.text in told for each in all_cautions())

    qtbot.mouseClick(cautions.heading, Qt.MouseButton.LeftButton)
    assert not cautions.list.isVisible()


def test_the_list_opens_with_the_space_bar(shown: Callable[[Any], Any], qtbot: QtBot) -> None:
    cautions = shown(Cautions())

    cautions.heading.setFocus()
    qtbot.keyClick(cautions.heading, Qt.Key.Key_Space)

    assert cautions.list.isVisible()
