"""Loads and effects as tables: hardest first, by share and not by text, units as shown."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication
from pytestqt.modeltest import ModelTester

from app.tables.effects import EFFECT_COLUMNS, EffectRow
from app.tables.loads import LOAD_COLUMNS, LoadRow
from app.tables.rows import Rows
from app.tables.sorted_rows import SortedRows
from model.structure.record import Effect, EffectKind


def load(key: str, use: float, source: str = "", **more: str) -> LoadRow:
    return LoadRow(key, f"Load {key}", use, 3, "slat 2 of the deck", "bending", "Why.", source)


def effect(kind: EffectKind, value: float, limit: float, unit: str, words: str) -> EffectRow:
    made = Effect(
        piece=3, kind=kind, value=value, limit=limit, unit=unit, case=0, at=10.0, source="A table"
    )
    return EffectRow(made, words, "Two sleepers lying")


LOADS = (load("a", 0.09), load("b", 1.02, "A standard"), load("", 1.02), load("c", 0.5))
EFFECTS = (
    effect("bending", 4.0, 10.0, "MPa", "slat 10 of the deck"),
    effect("sag", 6.35, 3.175, "mm", "slat 9 of the deck"),
    effect("joint", 950.0, 1000.0, "N", "post of the footboard"),
)


@pytest.fixture
def loads(qapp: QApplication) -> SortedRows:
    return table(Rows(LOAD_COLUMNS), LOADS)


@pytest.fixture
def effects(qapp: QApplication) -> SortedRows:
    return table(Rows(EFFECT_COLUMNS), EFFECTS)


def table(rows: Rows, records: tuple[object, ...]) -> SortedRows:
    rows.show_records(records, "inch")
    made = SortedRows(rows)
    rows.setParent(made)
    return made


def column(model: SortedRows, place: int) -> list[str]:
    return [model.index(row, place).data() for row in range(model.rowCount())]


def test_both_tables_keep_every_promise_of_an_item_model(
    qtmodeltester: ModelTester, loads: SortedRows, effects: SortedRows
) -> None:
    for model in (loads, effects):
        qtmodeltester.check(model.rows)
        qtmodeltester.check(model)


def test_all_loads_together_come_first_then_the_hardest(loads: SortedRows) -> None:
    loads.sort(0)

    assert column(loads, 0) == ["102%", "102%", "50%", "9%"]
    assert column(loads, 1)[0] == "Load "


def test_a_load_says_whether_it_is_published(loads: SortedRows) -> None:
    loads.sort(0)

    assert column(loads, 3) == ["", "published", "assumed", "assumed"]
    assert loads.index(1, 3).data(Qt.ItemDataRole.ToolTipRole) == "A standard"


def test_effects_come_hardest_first(effects: SortedRows) -> None:
    effects.sort(0)

    assert column(effects, 0) == ["200%", "95%", "40%"]


def test_pieces_are_sorted_by_their_number(effects: SortedRows) -> None:
    effects.sort(1)

    assert column(effects, 1)[1:] == ["slat 9 of the deck", "slat 10 of the deck"]


def test_sag_is_shown_in_the_makers_unit_and_forces_as_they_are(effects: SortedRows) -> None:
    effects.sort(0)

    assert column(effects, 3) == ['1/4"', "950 N", "4 MPa"]
    assert column(effects, 4) == ['1/8"', "1000 N", "10 MPa"]


def test_what_fails_has_another_sign_than_what_holds(effects: SortedRows) -> None:
    effects.sort(0)
    icons = [effects.index(row, 0).data(Qt.ItemDataRole.DecorationRole) for row in range(3)]

    first, second, third = (icon.pixmap(32, 32).toImage() for icon in icons)
    assert first != second
    assert second == third
