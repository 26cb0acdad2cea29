"""Counts, options, flags, tables and measured sizes: shown, asked for, refused."""

import pytest
from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from app.fields.count_field import CountField
from app.fields.field import Field
from app.fields.flag_field import FlagField
from app.fields.make import field_for
from app.fields.measured_field import MeasuredField
from app.fields.option_field import OptionField
from model.brief import all_choices


def made(qtbot: QtBot, name: str) -> Field:
    field = field_for(all_choices()[name], "inch")
    qtbot.addWidget(field)
    return field


@pytest.mark.parametrize("name", list(all_choices()))
def test_every_choice_has_a_field_that_says_its_name(qtbot: QtBot, name: str) -> None:
    field = made(qtbot, name)

    assert field.choice.label.lower() in field.input().accessibleName().lower()
    assert field._heading.buddy() is field.input()  # what a list is called by, on Linux


def test_a_count_steps_by_one(qtbot: QtBot) -> None:
    field = made(qtbot, "left.drawers")
    assert isinstance(field, CountField)

    with qtbot.waitSignal(field.edited) as asked:
        qtbot.keyClick(field.box, Qt.Key.Key_Up)

    assert asked.args == ["left.drawers", field.choice.default + 1]


def test_a_count_outside_its_range_is_kept_and_told(qtbot: QtBot) -> None:
    field = made(qtbot, "left.drawers")
    assert isinstance(field, CountField)

    field.box.lineEdit().selectAll()
    with qtbot.assertNotEmitted(field.edited):
        qtbot.keyClicks(field.box, "9")
        qtbot.keyClick(field.box, Qt.Key.Key_Return)

    assert field.box.value() == 9
    assert "the most is 6" in field.sentence


def test_an_option_is_asked_for_by_its_key(qtbot: QtBot) -> None:
    field = made(qtbot, "mattress_kind")
    assert isinstance(field, OptionField)

    with qtbot.waitSignal(field.edited) as asked:
        qtbot.keyClick(field.box, Qt.Key.Key_Down)

    assert asked.args == ["mattress_kind", "hybrid"]


def test_a_long_table_is_searched_by_typing(qtbot: QtBot) -> None:
    field = made(qtbot, "frame_wood")
    assert isinstance(field, OptionField)
    field.box.lineEdit().selectAll()

    with qtbot.waitSignal(field.edited) as asked:
        qtbot.keyClicks(field.box, "Hard maple (sugar maple)")
        qtbot.keyClick(field.box, Qt.Key.Key_Return)

    assert asked.args == ["frame_wood", "sugar_maple"]


def test_a_row_that_no_table_has_is_told(qtbot: QtBot) -> None:
    field = made(qtbot, "frame_wood")
    assert isinstance(field, OptionField)
    field.box.lineEdit().selectAll()

    with qtbot.assertNotEmitted(field.edited):
        qtbot.keyClicks(field.box, "plastic")
        qtbot.keyClick(field.box, Qt.Key.Key_Return)

    assert "plastic" in field.sentence


def test_a_flag_is_ticked(qtbot: QtBot) -> None:
    field = made(qtbot, "has_skirting")
    assert isinstance(field, FlagField)

    with qtbot.waitSignal(field.edited) as asked:
        field.box.click()

    assert asked.args == ["has_skirting", True]


def test_an_emptied_measured_size_is_the_nominal_one_again(qtbot: QtBot) -> None:
    field = made(qtbot, "mattress_width_measured")
    assert isinstance(field, MeasuredField)
    field.show_value(1500.0)
    field.line.selectAll()

    with qtbot.waitSignal(field.edited) as asked:
        qtbot.keyClick(field.line, Qt.Key.Key_Backspace)
        qtbot.keyClick(field.line, Qt.Key.Key_Return)

    assert asked.args == ["mattress_width_measured", None]
    assert "not measured" in field.line.placeholderText()
