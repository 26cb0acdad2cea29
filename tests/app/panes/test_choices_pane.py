"""Choices are found, changed, refused and brought back in the pane that holds them all."""

from typing import Any

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from app.fields.length_field import LengthField
from app.panes.choices_pane import ChoicesPane
from model.brief import all_choices, defaults


@pytest.fixture
def pane(qtbot: QtBot) -> ChoicesPane:
    made = ChoicesPane()
    qtbot.addWidget(made)
    made.resize(320, 600)
    made.show_values(dict(defaults()), "inch")
    made.show()
    return made


def values(**changes: Any) -> dict[str, Any]:
    return {**defaults(), **changes}


def shown(pane: ChoicesPane) -> set[str]:
    return {name for name, field in pane.fields().items() if field.isVisible()}


def test_every_choice_stands_in_one_group(pane: ChoicesPane) -> None:
    held = [choice.name for group in pane.groups.values() for choice in group.choices]

    assert sorted(held) == sorted(all_choices())


def test_choices_of_a_side_stand_together(pane: ChoicesPane) -> None:
    names = {choice.name for choice in pane.groups["Left side"].choices}

    assert {"left.side", "left.drawers", "left.room"} <= names


def test_a_measured_size_stands_below_its_nominal_one(pane: ChoicesPane) -> None:
    names = [choice.name for choice in pane.groups["Mattress"].choices]

    assert names[names.index("mattress_width") + 1] == "mattress_width_measured"


def test_fields_are_made_when_their_group_is_opened(qtbot: QtBot, pane: ChoicesPane) -> None:
    assert "beam" not in pane.fields()

    pane.groups["Centre beam"].heading.click()

    qtbot.waitUntil(lambda: "beam" in shown(pane))


def test_a_search_shows_what_holds_every_word(qtbot: QtBot, pane: ChoicesPane) -> None:
    qtbot.keyClicks(pane.find_line, "slat gap")

    assert "slat_gap_most" in shown(pane)
    assert all("slat" in name or "gap" in name or "spindle" in name for name in shown(pane))


def test_an_emptied_search_brings_the_groups_back_as_they_were(
    qtbot: QtBot, pane: ChoicesPane
) -> None:
    before = shown(pane)

    qtbot.keyClicks(pane.find_line, "slat")
    assert shown(pane) != before
    pane.find_line.clear()

    assert shown(pane) == before


def test_a_search_without_a_find_says_so(qtbot: QtBot, pane: ChoicesPane) -> None:
    qtbot.keyClicks(pane.find_line, "zeppelin")

    assert shown(pane) == set()
    assert pane._none_found.isVisible()


def test_only_what_differs_from_its_default_can_be_shown(qtbot: QtBot, pane: ChoicesPane) -> None:
    pane.show_values(values(side_fit=20.0, beam="none"), "inch")

    pane.changed_only.click()

    assert shown(pane) == {"side_fit", "beam"}
    assert "1 changed" in pane.groups["Mattress"].heading.text()


def test_the_unit_is_switched_in_every_field_at_once(pane: ChoicesPane) -> None:
    pane.show_values(values(shown_unit="mm"), "mm")

    field = pane.field("mattress_width")
    assert isinstance(field, LengthField)
    assert field.line.text() == "1524 mm"


def test_a_sentence_stands_beside_its_field_even_in_a_closed_group(pane: ChoicesPane) -> None:
    pane.say("beam_stock", "No.")

    assert pane.field("beam_stock").isVisible()
    assert pane.field("beam_stock").sentence == "No."
    pane.calm("beam_stock")
    assert pane.field("beam_stock").sentence == ""


def test_a_choice_named_elsewhere_gets_the_keyboard(qtbot: QtBot, pane: ChoicesPane) -> None:
    qtbot.keyClicks(pane.find_line, "zeppelin")
    with qtbot.waitActive(pane):
        pane.activateWindow()

    pane.go_to("beam_height")

    qtbot.waitUntil(lambda: pane.field("beam_height").input().hasFocus())


def test_a_choice_named_elsewhere_comes_into_view(qtbot: QtBot, pane: ChoicesPane) -> None:
    """Its group is made only now, and lies far below what is on view."""
    pane.resize(320, 500)

    pane.go_to("top_rail_width")

    field = pane.field("top_rail_width")
    qtbot.waitUntil(lambda: field.visibleRegion().boundingRect() == field.rect())


def test_rolling_over_a_field_changes_nothing(qtbot: QtBot, pane: ChoicesPane) -> None:
    field = pane.field("mattress_pieces")
    pane.find_line.setFocus()
    none, centre = Qt.KeyboardModifier.NoModifier, QPointF(field.input().rect().center())
    turn = QWheelEvent(
        centre, centre, QPoint(), QPoint(0, 120), Qt.MouseButton.NoButton, none,
        Qt.ScrollPhase.NoScrollPhase, False,
    )  # fmt: skip

    with qtbot.assertNotEmitted(pane.edited):
        QApplication.sendEvent(field.input(), turn)


def test_the_help_line_tells_range_and_reason(pane: ChoicesPane) -> None:
    pane.field("side_fit").looked_at.emit("side_fit")

    assert "swallows a hand" in pane._help.text()
