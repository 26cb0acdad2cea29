"""The plan set follows the bed: the page on view first, then the list; picks go both ways."""

from __future__ import annotations

from collections.abc import Callable, Iterator

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QWidget
from pytestqt.qtbot import QtBot

from app.panes import plan_desk
from app.panes.plan_desk import HELD, PlanDesk
from app.panes.plan_pane import PlanPane
from app.panes.plan_turn import Turn
from app.session import Session
from model.bed import Design
from model.planset.page import LETTER

# Four legs and a deck: little to plan, so that the tests are quick.
PLAIN = Design(choices={"left.drawers": 0, "right.drawers": 0})
LONG = 30_000  # ms


@pytest.fixture
def session(qtbot: QtBot) -> Iterator[Session]:
    made = Session(PLAIN)
    yield made
    made.worker.wait()


@pytest.fixture
def desk(qtbot: QtBot, session: Session, shown: Callable[[QWidget], QWidget]) -> PlanDesk:
    pane = PlanPane()
    pane.resize(900, 600)
    made = PlanDesk(session, pane)
    with qtbot.waitSignal(made.known, timeout=LONG):
        shown(pane)
    qtbot.waitUntil(lambda: pane.page.page is not None, timeout=LONG)
    return made


def words(desk: PlanDesk) -> set[str]:
    page = desk.pane.page.page
    return {text.words for text in page.drawing.texts()} if page is not None else set()


def go_to(qtbot: QtBot, desk: PlanDesk, key: str) -> None:
    with qtbot.waitSignal(desk.shown, timeout=LONG):
        desk.pane.go_to(key)
    page = desk.pane.page.page
    assert page is not None and page.key == key


def test_the_cover_comes_first_and_then_all_pages_are_listed(desk: PlanDesk) -> None:
    page, rows = desk.pane.page.page, desk.pane.list.pages
    assert page is not None and page.key == "cover"
    assert (page.drawing.width, page.drawing.height) == (LETTER.width, LETTER.height)

    keys = [row.key for row in rows]
    assert desk.listed is not None
    assert keys == [sheet.key for sheet in desk.listed.planset.sheets]
    assert {f"part/{mark.mark}" for mark in desk.session.bed.marks} & set(keys)
    assert desk.pane.list.chosen == set(range(len(rows)))
    assert desk.pane.tools.place.text() == f"1 / {len(rows)}"


def test_a_row_of_the_list_brings_its_page(qtbot: QtBot, desk: PlanDesk) -> None:
    place = next(k for k, row in enumerate(desk.pane.list.pages) if row.key == "ends")

    with qtbot.waitSignal(desk.shown, timeout=LONG):
        desk.pane.list.view.setCurrentIndex(desk.pane.list.tree.index_of(place))

    assert desk.pane.page.page is not None and desk.pane.page.page.key == "ends"
    assert f"{place + 1} / {len(desk.pane.list.pages)}" in words(desk)


def test_page_down_goes_on_and_a_link_goes_where_it_leads(qtbot: QtBot, desk: PlanDesk) -> None:
    go_to(qtbot, desk, "parts")
    page = desk.pane.page.page
    assert page is not None
    link = page.links[0]
    middle = ((link.box.x0 + link.box.x1) / 2, (link.box.y0 + link.box.y1) / 2)

    with qtbot.waitSignal(desk.shown, timeout=LONG):
        qtbot.mouseClick(
            desk.pane.page.viewport(),
            Qt.MouseButton.LeftButton,
            pos=desk.pane.page.on_screen(middle).toPoint(),
        )
    assert desk.pane.key == link.to.removesuffix("/")
    was = desk.pane.place

    with qtbot.waitSignal(desk.shown, timeout=LONG):
        qtbot.keyClick(desk.pane.page, Qt.Key.Key_PageDown)
    assert desk.pane.place == was + 1


def test_a_change_is_on_the_page_before_the_list_is_known(
    qtbot: QtBot, desk: PlanDesk, monkeypatch: pytest.MonkeyPatch
) -> None:
    go_to(qtbot, desk, "ends")
    before = desk.pane.page.page

    with qtbot.waitSignal(desk.shown, timeout=LONG):
        desk.session.choose("mattress_width", 1400.0)
    early = desk.pane.page.page

    assert early != before
    assert desk.page_bed is desk.session.bed
    qtbot.waitUntil(lambda: desk.is_known, timeout=LONG)
    assert desk.pane.page.page is not None and desk.pane.page.page.key == "ends"


def test_while_a_slider_is_dragged_the_page_follows_and_the_list_waits(
    qtbot: QtBot, desk: PlanDesk
) -> None:
    go_to(qtbot, desk, "ends")

    with qtbot.waitSignal(desk.shown, timeout=LONG):
        desk.session.drag("mattress_width", 1410.0)
    qtbot.waitUntil(lambda: desk.pane.foot.said.text() == HELD, timeout=LONG)
    assert not desk.is_known

    with qtbot.waitSignal(desk.known, timeout=LONG):
        desk.session.settle()
    assert desk.is_known


def test_a_page_that_waits_for_plans_stays_until_they_are_there(
    qtbot: QtBot, desk: PlanDesk
) -> None:
    go_to(qtbot, desk, "boards")
    before = desk.pane.page.page

    with qtbot.waitSignal(desk.known, timeout=LONG):
        desk.session.choose("mattress_width", 1420.0)
        assert desk.pane.page.page is before
    qtbot.waitUntil(lambda: desk.page_bed is desk.session.bed, timeout=LONG)

    assert desk.pane.page.page != before


def test_a_page_that_is_gone_gives_way_to_the_one_in_its_place(
    qtbot: QtBot, desk: PlanDesk
) -> None:
    last = desk.pane.list.pages[-1].key
    go_to(qtbot, desk, last)
    pages = desk.pane.list.pages

    desk.pane.show_pages(pages[:-1])

    assert desk.pane.key == pages[-2].key


def test_nothing_is_drawn_while_nobody_looks(qtbot: QtBot, desk: PlanDesk) -> None:
    desk.pane.hide()

    with qtbot.waitSignal(desk.session.judged, timeout=LONG):
        desk.session.choose("mattress_width", 1430.0)
    assert not desk.is_known and not desk.session.worker.is_busy()

    with qtbot.waitSignal(desk.known, timeout=LONG):
        desk.pane.show()


def test_a_piece_pressed_on_a_drawing_is_told_and_lit(qtbot: QtBot, desk: PlanDesk) -> None:
    go_to(qtbot, desk, "ends")
    assert desk.listed is not None and desk.pane.page._places is not None
    about, points = desk.pane.page._places._strokes[0]
    (x0, y0), (x1, y1) = points[:2]
    where = desk.pane.page.on_screen(((x0 + x1) / 2, (y0 + y1) / 2)).toPoint()

    with qtbot.waitSignal(desk.pieces_picked) as picked:
        qtbot.mouseClick(desk.pane.page.viewport(), Qt.MouseButton.LeftButton, pos=where)

    (pieces,) = picked.args
    assert len(pieces) == 1
    label = about.removeprefix("piece/")
    mark = next(m for m in desk.session.bed.marks if m.mark == label.rpartition("-")[0])
    assert pieces[0] in mark.pieces
    assert about in desk.pane.page.lit


def test_a_piece_picked_elsewhere_is_lit_wherever_it_is_drawn(qtbot: QtBot, desk: PlanDesk) -> None:
    mark = next(m for m in desk.session.bed.marks if m.quantity > 1)

    desk.pick(mark.pieces[1])
    assert f"piece/{mark.mark}-2" in desk.pane.page.lit
    desk.pick_all(mark.pieces)
    assert f"piece/{mark.mark}-1" in desk.pane.page.lit
    desk.pick(-1)
    assert not desk.pane.page.lit


def test_a_mistake_of_our_own_is_said_and_the_last_page_stays(
    qtbot: QtBot,
    desk: PlanDesk,
    monkeypatch: pytest.MonkeyPatch,
    caplog: pytest.LogCaptureFixture,
) -> None:
    before = desk.pane.page.page

    def breaks(_turn: Turn) -> None:
        raise RuntimeError("no such page")

    monkeypatch.setattr(plan_desk, "listed", breaks)
    desk.session.rename("Another")
    qtbot.waitUntil(lambda: desk.pane.foot.said.text() == plan_desk.BROKE_OFF, timeout=LONG)

    assert desk.pane.page.page is not None and before is not None
    assert "no such page" in caplog.text


def test_everything_can_be_reached_by_keys_and_has_a_name(desk: PlanDesk) -> None:
    pane = desk.pane
    for widget in (pane.page, pane.list.view, pane.foot.bar, *buttons(pane)):
        assert widget.accessibleName() or getattr(widget, "text", str)()
    for button in buttons(pane):
        assert button.focusPolicy() & Qt.FocusPolicy.TabFocus


def buttons(pane: PlanPane) -> list[QWidget]:
    from PySide6.QtWidgets import QAbstractButton, QScrollBar

    found = pane.findChildren(QAbstractButton)
    return [each for each in found if not isinstance(each.parent(), QScrollBar)]
