from PySide6.QtCore import QObject
from pytestqt.qtbot import QtBot

from app.view.drawer_slide import DrawerSlide


def test_a_drawer_goes_from_where_it_is_to_where_it_is_sent(qtbot: QtBot) -> None:
    owner, told = QObject(), []
    slide = DrawerSlide(owner)
    slide.moved.connect(lambda drawer, share: told.append(share))

    slide.send({"left-1": 0.25}, 0.5)
    qtbot.waitUntil(lambda: told[-1:] == [0.5])

    assert told == sorted(told)
    assert told[0] > 0.25


def test_a_drawer_that_has_arrived_is_left_in_peace(qtbot: QtBot) -> None:
    owner, told = QObject(), []
    slide = DrawerSlide(owner)
    slide.moved.connect(lambda drawer, share: told.append(share))
    slide.send({"left-1": 0.45}, 0.5)
    qtbot.waitUntil(lambda: told == [0.5])

    slide.send({"right-1": 0.0}, 1.0)
    qtbot.waitUntil(lambda: told[-1:] == [1.0])

    assert told.count(0.5) <= 2  # once on its own, and the other drawer passes by
    assert len(told) <= 12


def test_a_drawer_in_the_hand_slides_no_more(qtbot: QtBot) -> None:
    owner, told = QObject(), []
    slide = DrawerSlide(owner)
    slide.moved.connect(lambda drawer, share: told.append(drawer))

    slide.send({"left-1": 0.0, "right-1": 0.0}, 1.0)
    slide.forget(["left-1"])
    qtbot.waitUntil(lambda: len(told) >= 5)

    assert set(told) == {"right-1"}
