"""Names that somebody else chose, in letters that the set has and in others."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

import pytest

from model.bed import Bed, Design
from model.drawings.paper import Text
from model.planset.page import A4
from model.planset.setting import Setting
from model.planset.sheet import room_on
from model.planset.unprinted import unprinted_letters, unprinted_names
from model.planset.word_pages import use
from model.publisher import Publisher
from model.stock.rows import Board, StockRows
from tests.model.planset.sets import bed_of

BED = bed_of("loft_single")
NAMES = (
    "W" * 120, "Žofie’s bed, Łódź, İzmir", "מיטת אורחים 140", "سرير الأطفال", "می‌خواهم",
    "床 bed 床",    "🛏️ bed", "a\u00a0b\u00a0" * 30, "Wunder-Wohn-Wald-Werk-" * 5, "e\u0301te\u0301",
)  # fmt: skip


@pytest.mark.parametrize("name", NAMES)
def test_what_cannot_be_printed_is_said_where_the_set_is_explained(name: str) -> None:
    design = replace(BED.design, name=name)
    told = " ".join(use_words(replace(BED, design=design)))
    missing = [letter for letter in "床🛏" if letter in name]

    assert ("The set's letters have no" in told) == bool(missing)
    assert all(f"have no {letter}" in unprinted_names(design) for letter in missing)


def use_words(bed: Bed) -> Iterator[str]:
    """Of the pages of how to use the set."""
    for sheet in use(Setting(bed=bed)):
        content = sheet.draw(room_on(A4))
        yield from (item.words for item in content.items if isinstance(item, Text))


def test_one_letter_and_many_are_told_alike() -> None:
    one, many = unprinted_letters("床 bed 床"), unprinted_letters("一二三四五六七八九十百千万")

    assert one == "The set's letters have no 床: an empty box □ is printed in its place."
    assert "一, 二, 三" in many and "and 1 more: " in many and "in the place of each" in many
    assert unprinted_letters("Žofie’s 27 3/8 ⌀ bed") == ""


def test_all_that_a_maker_names_is_looked_at() -> None:
    board = Board(name="棚 3", material="yellow_poplar", thickness=25.4, length=2000, width=200)
    design = Design(
        name="一", publisher=Publisher(name="二", line="三"), stock=StockRows(boards=(board,))
    )

    assert "一, 二, 三, 棚: " in unprinted_names(design)
    assert unprinted_names(Design()) == ""
