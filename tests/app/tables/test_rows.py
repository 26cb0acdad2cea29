"""Tables over records: correct to Qt, steady under a drag, sorted by size and not by text."""

from types import SimpleNamespace
from typing import Any

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication
from pytestqt.modeltest import ModelTester

from app.tables.checks import CHECK_COLUMNS
from app.tables.parts import PART_COLUMNS
from app.tables.rows import ABOUT, ROW, Rows
from app.tables.sorted_rows import SortedRows
from model.checks.record import Finding, Verdict
from model.rules import Dim


def mark(code: str, length: float, **more: Any) -> SimpleNamespace:
    told = {"name": "rail", "assembly": "left side", "quantity": 2, "material_name": "Poplar"}
    sizes = {"width": Dim(101.6, "top_rail_width"), "thickness": Dim(22.225, "frame_thickness")}
    return SimpleNamespace(
        mark=code, length=Dim(length, "rail_length"), **{**told, **sizes, **more}
    )


MARKS = (mark("A10", 2057.4), mark("A2", 965.2, name="post"), mark("B1", 1000.0, quantity=12))


@pytest.fixture
def parts() -> SortedRows:
    rows = Rows(PART_COLUMNS)
    rows.show_records(MARKS, "inch")
    sorted_rows = SortedRows(rows)
    rows.setParent(sorted_rows)
    return sorted_rows


def column(model: SortedRows, place: int) -> list[str]:
    return [model.index(row, place).data() for row in range(model.rowCount())]


def test_the_tables_keep_every_promise_of_an_item_model(
    qtmodeltester: ModelTester, parts: SortedRows
) -> None:
    qtmodeltester.check(parts.rows)
    qtmodeltester.check(parts)


def test_marks_are_sorted_by_their_number(parts: SortedRows) -> None:
    parts.sort(0)

    assert column(parts, 0) == ["A2", "A10", "B1"]


def test_sizes_are_sorted_by_size_not_by_text(parts: SortedRows) -> None:
    parts.sort(4)

    assert column(parts, 4) == ["38", "~39 3/8", "81"]


def test_every_word_of_the_filter_must_stand_in_the_row(parts: SortedRows) -> None:
    parts.keep("left rail")
    assert column(parts, 0) == ["A10", "B1"]

    parts.keep("post rail")
    assert column(parts, 0) == []


def test_a_size_knows_the_dimension_to_ask_about(parts: SortedRows) -> None:
    assert parts.index(0, 4).data(ABOUT) == "rail_length"
    assert parts.index(0, 0).data(ABOUT) == ""
    assert parts.index(1, 0).data(ROW) is MARKS[1]


def test_the_text_has_a_heading_and_tabs(parts: SortedRows) -> None:
    parts.keep("post")

    heading, row = parts.as_text().splitlines()

    assert heading.split("\t")[:5] == ["Mark", "Part", "Assembly", "Pieces", "Length, in"]
    assert row.split("\t")[:5] == ["A2", "post", "left side", "2", "38"]


def test_new_sizes_leave_the_selection_where_it_is(parts: SortedRows) -> None:
    resets: list[int] = []
    parts.rows.modelReset.connect(lambda: resets.append(1))

    parts.rows.show_records([mark("A10", 1.0), *MARKS[1:]], "mm")

    assert resets == []
    assert parts.index(0, 4).data() == "1"
    assert parts.headerData(4, Qt.Orientation.Horizontal) == "Length, mm"


def test_checks_are_listed_worst_first(qapp: QApplication, qtmodeltester: ModelTester) -> None:
    def found(verdict: Verdict, margin: float) -> Finding:
        return Finding(
            title=f"{verdict} {margin:g}", value=1, limit=10, margin=margin, verdict=verdict
        )

    rows = Rows(CHECK_COLUMNS)
    rows.show_records(
        [
            found(Verdict.HOLDS, 5),
            found(Verdict.TIGHT, 1),
            found(Verdict.FAILS, -1),
            found(Verdict.FAILS, -4),
        ],
        "mm",
    )
    checks = SortedRows(rows)

    checks.sort(0)

    assert column(checks, 1) == ["fails -4", "fails -1", "tight 1", "holds 5"]
    qtmodeltester.check(checks)
