"""The lists of a pane: a press asks for one, and the button that is down is the one on view."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel
from pytestqt.qtbot import QtBot

from app.panes.switched_lists import SwitchedLists


@pytest.fixture
def lists(qtbot: QtBot) -> SwitchedLists:
    made = SwitchedLists()
    qtbot.addWidget(made)
    for words in ("Wood", "Hardware"):
        made.add_list(words, QLabel(words), f"About {words}")
    for button in made.buttons:
        qtbot.addWidget(button)
    return made


def test_a_press_asks_for_the_list_of_its_button(qtbot: QtBot, lists: SwitchedLists) -> None:
    with qtbot.waitSignal(lists.asked) as asked:
        qtbot.mouseClick(lists.buttons[1], Qt.MouseButton.LeftButton)

    assert asked.args == [1]


def test_the_button_of_the_list_on_view_is_down(lists: SwitchedLists) -> None:
    for place in (1, 0):
        lists.show_list(place)

        assert lists.place == place
        assert [button.isChecked() for button in lists.buttons] == [place == 0, place == 1]


def test_buttons_say_what_their_lists_hold(lists: SwitchedLists) -> None:
    assert [(button.text(), button.toolTip()) for button in lists.buttons] == [
        ("Wood", "About Wood"),
        ("Hardware", "About Hardware"),
    ]
