"""A bed solved from another: only what a change touches is worked out again."""

from __future__ import annotations

import numpy as np
import pytest

from model.bed import Bed, Design, solve
from model.book import check_list, open_book
from model.brief import after_the_bed
from model.stock.rows import SheetSize, StockRows


@pytest.fixture(scope="module")
def bed() -> Bed:
    return solve(Design())


@pytest.mark.parametrize("name", sorted(after_the_bed()))
def test_no_rule_and_no_check_reads_how_the_bed_is_sawn_bought_and_finished(name: str) -> None:
    assert open_book().drives[name] == frozenset()
    assert [step.name for step in check_list().steps if name in step.needs] == []


def test_another_kerf_leaves_the_bed_as_it_is(bed: Bed) -> None:
    listed = bed.marks

    thin = solve(Design(choices={"kerf": 2.0}), bed)

    assert thin["kerf"] == 2.0
    assert thin.moved == {"kerf"}
    assert thin.marks is listed
    assert thin.findings == solve(Design(choices={"kerf": 2.0})).findings


def test_stock_typed_in_leaves_the_bed_as_it_is(bed: Bed) -> None:
    row = SheetSize(material="birch_ply_12", length=2500.0, width=1250.0)
    listed = bed.marks

    stocked = solve(Design(stock=StockRows(sheets=(row,))), bed)

    assert stocked.design.stock.sheets == (row,)
    assert stocked.marks is listed


def test_another_rail_is_another_bed(bed: Bed) -> None:
    higher = solve(Design(choices={"rail_height": 420.0, "kerf": 2.0}), bed)

    afresh = solve(Design(choices={"rail_height": 420.0, "kerf": 2.0}))

    assert higher.marks != bed.marks
    assert [mark.length for mark in higher.marks] == [mark.length for mark in afresh.marks]
    assert np.array_equal(higher.pieces.matrices, afresh.pieces.matrices)
