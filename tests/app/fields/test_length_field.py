"""A length is read as makers write it, and what cannot be read stays to be mended."""

import pytest
from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from app.fields.length_field import LengthField
from model.brief import all_choices


@pytest.fixture
def field(qtbot: QtBot) -> LengthField:
    made = LengthField(all_choices()["side_fit"], "inch")
    qtbot.addWidget(made)
    made.show_value(12.7)
    return made


def type_in(qtbot: QtBot, field: LengthField, text: str) -> None:
    field.line.selectAll()
    qtbot.keyClicks(field.line, text)
    qtbot.keyClick(field.line, Qt.Key.Key_Return)


def test_the_value_is_shown_in_the_shown_unit(field: LengthField) -> None:
    assert field.line.text() == '1/2"'

    field.show_unit("mm")

    assert field.line.text() == "12.7 mm"


@pytest.mark.parametrize(
    ("text", "mm"),
    [("3/4", 19.05), ("1/2 + 1/4", 19.05), ("20 mm", 20.0), ("0,5", 12.7), ("1,9 cm", 19.0)],
)
def test_fractions_sums_and_units_are_read(
    qtbot: QtBot, field: LengthField, text: str, mm: float
) -> None:
    asked: list[float] = []
    field.show_value(1.0)
    field.edited.connect(lambda _, value: asked.append(value))

    type_in(qtbot, field, text)

    assert asked == pytest.approx([mm])


def test_what_cannot_be_read_is_kept_and_told(qtbot: QtBot, field: LengthField) -> None:
    with qtbot.assertNotEmitted(field.edited):
        type_in(qtbot, field, "half a hand")

    field.show_value(10.0)  # another choice has moved the bed meanwhile

    assert field.line.text() == "half a hand"
    assert "half a hand" in field.sentence


def test_a_length_outside_its_range_says_the_end_and_why(qtbot: QtBot, field: LengthField) -> None:
    with qtbot.assertNotEmitted(field.edited):
        type_in(qtbot, field, "5")

    assert field.sentence.startswith('5" is outside the range: the most is ')
    assert "swallows a hand" in field.sentence


def test_escape_gives_up_what_was_typed(qtbot: QtBot, field: LengthField) -> None:
    type_in(qtbot, field, "5")

    with qtbot.waitSignal(field.given_up):
        qtbot.keyClick(field.line, Qt.Key.Key_Escape)

    assert (field.line.text(), field.sentence) == ('1/2"', "")


def test_leaving_an_untouched_field_asks_for_nothing(qtbot: QtBot, field: LengthField) -> None:
    field.show_value(13.0)  # 33/64" and a bit: reading the shown text back would move the bed

    with qtbot.assertNotEmitted(field.edited):
        qtbot.keyClick(field.line, Qt.Key.Key_Return)


def test_the_way_back_to_the_default_shows_once_the_value_differs(
    qtbot: QtBot, field: LengthField
) -> None:
    field.show_value(field.choice.default)
    assert field._back.isHidden()
    field.show_value(20.0)
    assert not field._back.isHidden()

    with qtbot.waitSignal(field.edited) as asked:
        qtbot.mouseClick(field._back, Qt.MouseButton.LeftButton)

    assert asked.args == ["side_fit", field.choice.default]


def test_the_help_names_range_reason_and_default(field: LengthField) -> None:
    assert "mattress must drop in" in field.toolTip()
    assert "Default: " in field.toolTip()
