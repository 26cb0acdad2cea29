"""The line that says under which load the bed is shown, and how far bent."""

import pytest
from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from app.panes.strength_strip import MOVEMENT, StrengthStrip
from app.view.strength_look import AS_SUITS, STILL

LOADS = [("lying", "Two sleepers lying"), ("kneel", "One kneeling")]


@pytest.fixture
def strip(qtbot: QtBot) -> StrengthStrip:
    made = StrengthStrip()
    qtbot.addWidget(made)
    made.offer(LOADS)
    return made


def test_the_worst_of_all_is_offered_first_and_chosen_at_first(strip: StrengthStrip) -> None:
    box = strip.load_box

    assert [box.itemData(k) for k in range(box.count())] == ["", "lying", "kneel"]
    assert box.currentData() == ""


def test_a_load_is_chosen_by_key(qtbot: QtBot, strip: StrengthStrip) -> None:
    with qtbot.waitSignal(strip.load_chosen) as chosen:
        qtbot.keyClick(strip.load_box, Qt.Key.Key_Down)

    assert chosen.args == ["lying"]


def test_other_loads_leave_what_was_chosen(qtbot: QtBot, strip: StrengthStrip) -> None:
    strip.choose_load("kneel")

    with qtbot.assertNotEmitted(strip.load_chosen):
        strip.offer([("kneel", "One kneeling on slat 5"), ("lying", "Two sleepers lying")])

    assert strip.load_box.currentText() == "One kneeling on slat 5"


def test_what_is_chosen_elsewhere_is_not_told_again(qtbot: QtBot, strip: StrengthStrip) -> None:
    with qtbot.assertNotEmitted(strip.load_chosen):
        strip.choose_load("kneel")

    assert strip.load_box.currentData() == "kneel"


def test_movement_is_drawn_of_one_load_only(strip: StrengthStrip) -> None:
    assert not strip.move_box.isEnabled()
    assert strip.move_box.toolTip()

    strip.choose_load("lying")

    assert strip.move_box.isEnabled()


def test_the_movement_is_chosen_in_fixed_steps(qtbot: QtBot, strip: StrengthStrip) -> None:
    strip.choose_load("lying")

    with qtbot.waitSignal(strip.movement_chosen) as chosen:
        strip.move_box.setCurrentIndex(list(MOVEMENT).index("20 times"))

    assert chosen.args == [20.0]
    assert list(MOVEMENT.values())[:2] == [AS_SUITS, STILL]  # as the view understands them


def test_both_boxes_have_a_name(strip: StrengthStrip) -> None:
    assert strip.load_box.accessibleName() == "Load that is shown"
    assert strip.move_box.accessibleName() == "Movement drawn"
