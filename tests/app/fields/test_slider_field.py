"""A slider moves the bed under the hand; its field stays exact."""

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtWidgets import QStyle, QStyleOptionSlider
from pytestqt.qtbot import QtBot

from app.fields.slider_field import SliderField
from model.brief import all_choices


@pytest.fixture
def field(qtbot: QtBot) -> SliderField:
    made = SliderField(all_choices()["mattress_width"], "inch")
    qtbot.addWidget(made)
    made.resize(300, 60)
    made.show_value(1524.0)
    made.show()
    return made


def handle(field: SliderField) -> QPoint:
    option = QStyleOptionSlider()
    field.slider.initStyleOption(option)
    control, part = QStyle.ComplexControl.CC_Slider, QStyle.SubControl.SC_SliderHandle
    return field.slider.style().subControlRect(control, option, part, field.slider).center()


def test_a_drag_reports_each_step_and_its_end(qtbot: QtBot, field: SliderField) -> None:
    steps: list[float] = []
    field.dragged.connect(lambda _, value: steps.append(value))
    start, left = handle(field), Qt.MouseButton.LeftButton

    qtbot.mousePress(field.slider, left, pos=start)
    for pixels in (10, 20, 30):
        qtbot.mouseMove(field.slider, start + QPoint(pixels, 0))
    with qtbot.waitSignal(field.settled):
        qtbot.mouseRelease(field.slider, left, pos=start + QPoint(30, 0))

    assert len(steps) >= 2
    assert steps == sorted(steps)


def test_a_slider_in_inches_stands_on_quarters_of_an_inch(qtbot: QtBot, field: SliderField) -> None:
    with qtbot.waitSignal(field.edited) as asked:
        qtbot.keyClick(field.slider, Qt.Key.Key_Right)

    assert asked.args[1] / 25.4 == pytest.approx(60.25)


def test_the_range_holds_in_both_units(field: SliderField) -> None:
    choice = field.choice
    for unit in ("mm", "inch"):
        field.show_unit(unit)
        for end in (0, field.slider.maximum()):
            value = field._low() + end * field._step(unit)
            assert choice.least <= value <= choice.most


def test_a_value_moves_the_handle_and_asks_for_nothing(qtbot: QtBot, field: SliderField) -> None:
    before = field.slider.value()

    with qtbot.assertNotEmitted(field.edited), qtbot.assertNotEmitted(field.dragged):
        field.show_value(1930.0)

    assert field.slider.value() > before
