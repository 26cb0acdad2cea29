"""The tree of pages: chapters, numbers, and ticks that stay when the pages change."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from pytestqt.modeltest import ModelTester
from pytestqt.qtbot import QtBot

from app.tables.pages import PLACE, PageRow, PageTree

CHECK = Qt.ItemDataRole.CheckStateRole
ON, OFF, SOME = Qt.CheckState.Checked, Qt.CheckState.Unchecked, Qt.CheckState.PartiallyChecked
PAGES = (
    PageRow("cover", "Cover"),
    PageRow("parts", "Parts list", "", "All parts"),
    PageRow("parts/2", "Parts list, continued", "parts"),
    PageRow("parts/3", "Parts list, continued", "parts"),
    PageRow("plan", "Plan"),
)


@pytest.fixture
def tree(qtbot: QtBot) -> PageTree:
    made = PageTree()
    made.show_pages(PAGES)
    return made


def test_it_is_a_sound_model(tree: PageTree, qtmodeltester: ModelTester) -> None:
    qtmodeltester.check(tree, force_py=True)


def test_chapters_of_several_pages_hold_them_and_numbers_are_those_of_the_set(
    tree: PageTree,
) -> None:
    assert [tree.index(row, 1).data() for row in range(tree.rowCount())] == ["1", "2", "5"]
    parts = tree.index(1, 0)
    assert parts.data() == "All parts"
    assert tree.index(0, 0, parts).data() == "Parts list"
    assert [tree.index(row, 1, parts).data() for row in range(tree.rowCount(parts))] == list("234")
    assert tree.rowCount(tree.index(0, 0)) == 0
    assert [tree.index_of(place).data(PLACE) for place in range(5)] == [0, 1, 2, 3, 4]
    assert tree.index_of(2).parent() == parts


def test_a_page_without_a_tick_is_left_out_and_its_chapter_is_half_ticked(
    tree: PageTree, qtbot: QtBot
) -> None:
    assert tree.chosen == {0, 1, 2, 3, 4}

    with qtbot.waitSignal(tree.ticked):
        tree.setData(tree.index_of(2), OFF.value, CHECK)

    assert tree.chosen == {0, 1, 3, 4}
    assert Qt.CheckState(tree.index(1, 0).data(CHECK)) == SOME


def test_the_tick_of_a_chapter_is_that_of_all_its_pages(tree: PageTree) -> None:
    tree.setData(tree.index(1, 0), OFF.value, CHECK)
    assert tree.chosen == {0, 4}

    tree.setData(tree.index(1, 0), ON.value, CHECK)
    assert tree.chosen == {0, 1, 2, 3, 4}


def test_ticks_stay_with_their_pages_and_a_new_page_is_ticked(tree: PageTree) -> None:
    tree.tick([0, 4], False)

    tree.show_pages((PAGES[0], PageRow("tools", "Tools"), *PAGES[1:]))

    assert tree.chosen == {1, 2, 3, 4}
