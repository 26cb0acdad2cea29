"""Loads, pieces and the chart go together; what is picked in one is shown in the others."""

from collections.abc import Callable
from dataclasses import replace

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QWidget
from pytestqt.qtbot import QtBot

from app.panes.strength_pane import LOADS, PIECES, StrengthPane
from app.panes.strength_words import CAUTION
from app.tables.view import TableView
from model.bed import Bed, Design, solve
from model.structure.record import Carried
from tests.app.sample_carried import sample_carried


@pytest.fixture(scope="module")
def bed() -> Bed:
    return solve(Design())


@pytest.fixture(scope="module")
def carried(bed: Bed) -> Carried:
    return sample_carried(bed)


@pytest.fixture
def pane(bed: Bed, carried: Carried, shown: Callable[[QWidget], QWidget]) -> StrengthPane:
    made = StrengthPane()
    made.resize(680, 320)
    made.show_carried(bed, carried, "mm")
    shown(made)
    return made


def column(table: TableView, place: int) -> list[str]:
    rows = table.sorted
    return [rows.index(row, place).data() for row in range(rows.rowCount())]


def click(qtbot: QtBot, table: TableView, row: int) -> None:
    place = table.visualRect(table.sorted.index(row, 1)).center()
    qtbot.mouseClick(table.viewport(), Qt.MouseButton.LeftButton, pos=place)


def test_loads_are_listed_worst_first_below_all_together(pane: StrengthPane) -> None:
    titles = ["The worst of all loads", "One kneeling on the worst slat", "Two sleepers lying"]
    assert column(pane.loads, 1) == titles
    assert column(pane.loads, 3) == ["", "published", "assumed"]


def test_pieces_are_listed_hardest_first(pane: StrengthPane, carried: Carried) -> None:
    uses = [int(text.rstrip("%")) for text in column(pane.effects, 0)]

    assert uses == sorted(uses, reverse=True)
    assert len(uses) == sum(len(each) for each in carried.effects.values())


def test_a_load_that_is_picked_is_told_and_explained(qtbot: QtBot, pane: StrengthPane) -> None:
    with qtbot.waitSignal(pane.load_chosen) as chosen:
        click(qtbot, pane.loads, 1)

    assert chosen.args == ["kneeling"]
    assert "Source of the load: A standard, clause 1." in pane.told.text()


def test_an_assumed_load_leads_to_the_choices_that_set_it(qtbot: QtBot, pane: StrengthPane) -> None:
    click(qtbot, pane.loads, 2)

    assert "Assumed: no publication gives this load." in pane.told.text()
    assert "Left drawers" in pane.told.text() and "Mattress width" in pane.told.text()
    with qtbot.waitSignal(pane.choice_shown) as shown:
        pane.told.linkActivated.emit("choice:mattress_width")
    assert shown.args == ["mattress_width"]


def test_the_chart_shows_the_worst_slat_and_the_worst_rail(
    qtbot: QtBot, pane: StrengthPane
) -> None:
    click(qtbot, pane.loads, 1)

    words = [line.words for line in pane.chart.lines]
    assert words[0].startswith("slat ") and "rail of the" in words[1]
    assert all(line.limit < 100 for line in pane.chart.lines)


def test_of_all_loads_the_chart_names_the_one_that_it_is_of(pane: StrengthPane) -> None:
    assert all("(One kneeling" in line.words for line in pane.chart.lines)


def test_a_load_that_asks_for_no_sag_has_no_limit_in_the_chart(
    qtbot: QtBot, pane: StrengthPane
) -> None:
    click(qtbot, pane.loads, 2)

    assert [line.limit for line in pane.chart.lines] == [float("inf")] * 2


def test_a_piece_that_is_picked_is_told_and_drawn(
    qtbot: QtBot, pane: StrengthPane, carried: Carried
) -> None:
    pane.show_table(PIECES)

    with qtbot.waitSignal(pane.picked) as picked:
        click(qtbot, pane.effects, 2)

    (piece,) = picked.args[0]
    assert piece == pane.effects.record.effect.piece
    (line,) = pane.chart.lines
    assert (line.sag == carried.curve(piece, 1).sag).all()
    assert "Source of the limit: A handbook" in pane.told.text()


def test_a_piece_picked_on_the_bed_picks_its_hardest_row(
    qtbot: QtBot, pane: StrengthPane, carried: Carried
) -> None:
    piece = int(carried.pieces[4])

    with qtbot.assertNotEmitted(pane.picked):
        pane.choose_piece(piece)

    assert pane.table is pane.effects
    assert pane.effects.record.effect is carried.effects[piece][0]
    (line,) = pane.chart.lines
    assert (line.at == carried.curve(piece, 1).at).all() and line.words.startswith("slat ")


def test_a_filter_gives_way_to_a_piece_picked_on_the_bed(
    pane: StrengthPane, carried: Carried
) -> None:
    pane.filter_line.setText("no such piece")
    assert pane.effects.sorted.rowCount() == 0

    pane.choose_piece(int(carried.pieces[4]))

    assert pane.effects.record is not None


def test_a_piece_that_carries_nothing_lets_go_of_the_last(
    pane: StrengthPane, carried: Carried
) -> None:
    pane.choose_piece(int(carried.pieces[4]))

    pane.choose_piece(-1)

    assert pane.effects.record is None
    assert len(pane.chart.lines) == 2


def test_the_filter_keeps_rows_with_these_words(pane: StrengthPane) -> None:
    pane.filter_line.setText("rail sag")

    said = column(pane.effects, 1)
    assert said and all("rail" in words for words in said)


def test_another_bed_keeps_what_was_picked(
    qtbot: QtBot, pane: StrengthPane, bed: Bed, carried: Carried
) -> None:
    pane.show_table(PIECES)
    click(qtbot, pane.effects, 2)
    before = pane.effects.record.effect

    with qtbot.assertNotEmitted(pane.picked):
        pane.show_carried(bed, sample_carried(bed, 0.8), "inch")

    after = pane.effects.record.effect
    assert (after.piece, after.kind) == (before.piece, before.kind)
    assert pane.chart.unit == "inch"


def test_a_load_that_the_next_bed_lacks_falls_back_to_all(
    qtbot: QtBot, pane: StrengthPane, bed: Bed, carried: Carried
) -> None:
    click(qtbot, pane.loads, 1)
    lying = (carried.cases[0], replace(carried.cases[0], title="One sleeper lying"))

    pane.show_carried(bed, replace(carried, cases=lying), "mm")

    assert len(pane.chart.lines) == 2


def test_what_cannot_be_reckoned_is_said_in_place_of_it(pane: StrengthPane) -> None:
    pane.show_trouble("The centre beam stands on nothing.")

    assert pane.told.text() == "The centre beam stands on nothing."
    assert pane.loads.sorted.rowCount() == pane.effects.sorted.rowCount() == 0
    assert pane.chart.lines == ()
    pane.show_table(PIECES)
    pane.show_table(LOADS)
    assert pane.told.text() == "The centre beam stands on nothing."


def test_it_says_that_it_is_no_certificate(pane: StrengthPane) -> None:
    assert "not an engineer's certificate" in CAUTION
    assert pane.caution.text() == CAUTION and pane.caution.isVisible()


def test_everything_can_be_reached_by_tab(qtbot: QtBot, pane: StrengthPane) -> None:
    wanted = {pane.loads, pane.chart, pane.filter_line, pane.bed_button, *pane.lists.buttons}
    pane.lists.buttons[0].setFocus()
    reached = set()
    for _ in range(20):
        reached.add(pane.focusWidget())
        qtbot.keyClick(pane.focusWidget(), Qt.Key.Key_Tab)

    assert wanted - reached == {pane.lists.buttons[1]}  # arrows go from one switch to the next


def test_every_control_has_a_name(pane: StrengthPane) -> None:
    for widget in (pane.loads, pane.effects, pane.chart, pane.filter_line, pane.told):
        assert widget.accessibleName()


def test_the_button_tells_and_follows(qtbot: QtBot, pane: StrengthPane) -> None:
    with qtbot.waitSignal(pane.shown_on_bed) as shown:
        qtbot.mouseClick(pane.bed_button, Qt.MouseButton.LeftButton)
    assert shown.args == [True]

    with qtbot.assertNotEmitted(pane.shown_on_bed):
        pane.press_bed_button(False)
    assert not pane.bed_button.isChecked()
