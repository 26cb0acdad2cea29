"""The line above the bed says how it should be shown, and nothing more."""

import pytest
from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from app.panes.look_strip import COLOURS, LookStrip


@pytest.fixture
def strip(qtbot: QtBot) -> LookStrip:
    made = LookStrip()
    qtbot.addWidget(made)
    return made


def test_drawers_are_pulled_by_key_as_well(qtbot: QtBot, strip: LookStrip) -> None:
    with qtbot.waitSignal(strip.drawers_pulled) as pulled:
        qtbot.keyClick(strip.drawers_slider, Qt.Key.Key_End)

    assert pulled.args == [1.0]


def test_each_switch_names_what_it_shows(qtbot: QtBot, strip: LookStrip) -> None:
    with qtbot.waitSignal(strip.switched) as switched:
        strip.actions_by_name["mattress"].trigger()

    assert switched.args == ["mattress", False]


def test_one_way_of_colouring_is_on_at_a_time(qtbot: QtBot, strip: LookStrip) -> None:
    paint = strip.colours.actions()[list(COLOURS).index("paint")]

    with qtbot.waitSignal(strip.coloured) as coloured:
        paint.trigger()

    assert coloured.args == ["paint"]
    assert [a.isChecked() for a in strip.colours.actions()] == [name == "paint" for name in COLOURS]


def test_a_colour_asked_for_elsewhere_is_picked_in_the_menu(qtbot: QtBot, strip: LookStrip) -> None:
    with qtbot.waitSignal(strip.coloured) as coloured:
        strip.choose_colour("strength")

    assert coloured.args == ["strength"]
    assert strip.colours.checkedAction().text() == COLOURS["strength"]
