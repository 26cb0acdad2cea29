"""Rows of plans and of settings."""

from __future__ import annotations

from dataclasses import replace

import pytest
from pytestqt.modeltest import ModelTester

from app.tables.cutting import (
    PLAN_COLUMNS,
    SETTING_COLUMNS,
    SettingRow,
    material_words,
    setting_words,
    thick_text,
)
from app.tables.rows import Rows
from model.cutting.record import Stock
from tests.app.panes.sample_plans import plans

pytestmark = pytest.mark.usefixtures("qapp")  # signs are painted


def cells(rows: Rows, row: int) -> list[str]:
    return [rows.index(row, column).data() for column in range(rows.columnCount())]


def test_a_plan_tells_what_it_takes_and_how_near_it_is(qtmodeltester: ModelTester) -> None:
    rows = Rows(PLAN_COLUMNS)
    rows.show_records(plans(), "mm")
    qtmodeltester.check(rows)

    assert cells(rows, 0)[:4] == ["Birch plywood, 18 mm", "18", "3 sheets", "fewest"]
    assert cells(rows, 1)[2:4] == ["2 sheets", "at least 1"]
    # 680 000 mm2 of pieces on a sheet of 2440 x 1220.
    assert cells(rows, 0)[4] == f"{680_000 / (2440 * 1220):.0%}"


def test_stock_used_at_its_width_is_told_by_it() -> None:
    cut = plans()[0].cut
    task = replace(cut.plan.task, kind="lengths", stock=(Stock(key="A", length=3e3, width=90.0),))
    plan = replace(plans()[0], cut=replace(cut, plan=replace(cut.plan, task=task)))

    assert thick_text(plan, "mm") == "18 × 90"
    assert material_words(plan, "mm") == "Birch plywood, 18 mm, 18 × 90 mm"


def test_a_setting_tells_how_many_of_its_cuts_are_made(qtmodeltester: ModelTester) -> None:
    plan = plans()[0]
    rows = Rows(SETTING_COLUMNS)
    rows.show_records(
        [SettingRow(0, plan.batches[0], "1, 2, 3", 0), SettingRow(1, plan.batches[1], "1", 2)], "mm"
    )
    qtmodeltester.check(rows)

    assert cells(rows, 0)[1:] == ["3", "1, 2, 3"]
    assert cells(rows, 1)[1:] == ["2 of 3", "1"]


def test_the_setting_of_a_trim_says_it_all() -> None:
    batch = plans()[0].batches[0]

    assert batch.operation.startswith("Trim")
    assert setting_words(batch) == batch.setting
    rip = next(each for each in plans()[0].batches if each.operation.startswith("Rip"))
    assert setting_words(rip) == "Rip: fence at 300 mm"


@pytest.mark.parametrize("column", range(len(PLAN_COLUMNS)))
def test_every_column_can_be_sorted(column: int) -> None:
    sorted(plans(), key=PLAN_COLUMNS[column].sort)
