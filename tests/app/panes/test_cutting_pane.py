"""Plans, drawings and cut order on three pages, all of one picked plan."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QWidget
from pytestqt.qtbot import QtBot

from app.panes.cutting_lights import FREE, NEXT, PICKED_PALE, Moment, lights
from app.panes.cutting_pane import FIRST, CuttingPane
from app.panes.cutting_tools import DRAWINGS, ORDER, PLANS
from app.style import SPRUCE_PALE
from tests.app.panes.sample_plans import NAMES, PLY, THIN, plans

LEFT_BUTTON = Qt.MouseButton.LeftButton


@pytest.fixture
def pane(shown: Callable[[QWidget], QWidget]) -> CuttingPane:
    made = CuttingPane()
    made.resize(760, 480)
    made.show_plans(plans(), NAMES, frozenset(), "mm")
    shown(made)
    return made


def press(pane: CuttingPane, page: int, qtbot: QtBot) -> None:
    qtbot.mouseClick(pane.tools.page_button(page), LEFT_BUTTON)


# ---------------------------------------------------------------- pages


def test_the_list_comes_first_and_the_bound_is_said_below_it(pane: CuttingPane) -> None:
    assert pane.table.isVisible() and not pane.view.isVisible()
    assert "3 sheets; no plan can need fewer." in pane.told.text()


def test_a_wide_pane_shows_drawings_beside_the_list(pane: CuttingPane, qtbot: QtBot) -> None:
    pane.resize(1200, 480)

    qtbot.waitUntil(pane.view.isVisible)
    assert pane.table.isVisible() and pane.view.sheets.boards


def test_each_page_shows_its_own(pane: CuttingPane, qtbot: QtBot) -> None:
    press(pane, DRAWINGS, qtbot)
    assert pane.view.isVisible() and not pane.table.isVisible() and not pane.order.isVisible()
    assert pane.foot.short.text() == "3 sheets; no plan can need fewer."

    press(pane, ORDER, qtbot)
    assert pane.view.isVisible() and pane.settings.isVisible() and pane.order.isVisible()

    press(pane, PLANS, qtbot)
    assert pane.table.isVisible() and not pane.order.isVisible()


def test_before_there_are_plans_it_says_that_they_come(
    shown: Callable[[QWidget], QWidget],
) -> None:
    pane = shown(CuttingPane())

    assert pane.told.text() == FIRST
    for page in (DRAWINGS, ORDER, PLANS):
        pane.show_page(page)


# ---------------------------------------------------------------- picking a plan


def test_a_row_and_the_chooser_pick_the_same_plan(pane: CuttingPane, qtbot: QtBot) -> None:
    pane.table.choose(lambda row: row.key == THIN)
    assert pane.plan is pane.plans[1] and pane.tools.chooser.currentData() == THIN
    assert "2 sheets; no plan can need fewer than 1." in pane.told.text()

    pane.tools.chooser.setCurrentIndex(0)

    assert pane.table.record is pane.plans[0]
    assert len(pane.view.sheets.boards) == 3


def test_a_double_click_shows_the_drawings(pane: CuttingPane, qtbot: QtBot) -> None:
    index = pane.table.sorted.index(0, 1)
    place = pane.table.visualRect(index).center()

    qtbot.mouseClick(pane.table.viewport(), LEFT_BUTTON, pos=place)
    qtbot.mouseDClick(pane.table.viewport(), LEFT_BUTTON, pos=place)

    assert pane.page == DRAWINGS


def test_better_plans_leave_what_is_picked_where_it_is(pane: CuttingPane) -> None:
    pane.choose_plan(THIN)
    pane.show_page(ORDER)
    pane.order.go_to(7)

    pane.show_plans((plans()[0], pane.plans[1]), NAMES, frozenset(), "mm")

    assert pane.plan is pane.plans[1] and pane.order.place == 7


def test_the_buttons_beside_the_chooser_go_from_board_to_board(
    pane: CuttingPane, qtbot: QtBot
) -> None:
    press(pane, DRAWINGS, qtbot)
    qtbot.waitUntil(lambda: pane.view.viewport().width() > 400)
    assert not pane.tools.before_button.isEnabled()

    qtbot.mouseClick(pane.tools.after_button, LEFT_BUTTON)
    assert pane.view.board == 1
    qtbot.mouseClick(pane.tools.after_button, LEFT_BUTTON)
    assert pane.view.board == 2 and not pane.tools.after_button.isEnabled()
    qtbot.mouseClick(pane.tools.before_button, LEFT_BUTTON)

    assert pane.view.board == 1


def test_more_room_is_asked_for_and_given_back(pane: CuttingPane, qtbot: QtBot) -> None:
    with qtbot.waitSignal(pane.room_asked) as told:
        qtbot.mouseClick(pane.tools.room_button, LEFT_BUTTON)
    assert told.args == [True]
    with qtbot.waitSignal(pane.room_asked) as told:
        qtbot.mouseClick(pane.tools.room_button, LEFT_BUTTON)
    assert told.args == [False]


# ---------------------------------------------------------------- pieces


def test_a_piece_that_is_pressed_is_lit_and_told(pane: CuttingPane, qtbot: QtBot) -> None:
    press(pane, DRAWINGS, qtbot)
    place = pane.view.sheets.rect_of("piece/B1-2").center().toPoint()

    with qtbot.waitSignal(pane.picked) as told:
        qtbot.mouseClick(pane.view.sheets, LEFT_BUTTON, pos=place)

    assert told.args == ["B1-2"]
    assert pane.view.sheets.lights["piece/B1-2"].ground == PICKED_PALE


def test_pieces_picked_elsewhere_bring_up_their_plan(pane: CuttingPane, qtbot: QtBot) -> None:
    press(pane, DRAWINGS, qtbot)
    assert pane.plan.key == PLY

    pane.pick(("U7-4",))

    assert pane.plan.key == THIN
    assert pane.view.sheets.lights["piece/U7-4"].ground == PICKED_PALE


def test_a_piece_on_the_plan_in_sight_changes_no_plan(pane: CuttingPane) -> None:
    pane.choose_plan(THIN)

    pane.pick(("B1-1",))  # lies on sheets of both

    assert pane.plan.key == THIN


def test_what_is_cut_from_nothing_here_is_not_lit(pane: CuttingPane) -> None:
    pane.pick(("Z1-1",))
    pane.pick(())

    assert pane.plan.key == PLY


# ---------------------------------------------------------------- the order


def test_a_setting_shows_its_first_cut_that_is_not_made(pane: CuttingPane) -> None:
    plan = pane.plan
    pane.show_page(ORDER)
    second = [k for k, step in enumerate(plan.steps) if step.batch == 1]
    done = frozenset(plan.steps[k].key for k in second[:1])
    pane.show_plans(pane.plans, NAMES, done, "mm")

    pane.settings.choose(lambda row: row.place == 1)

    assert pane.order.place == second[1]


def test_a_number_on_a_drawing_opens_the_order_at_its_cut(pane: CuttingPane, qtbot: QtBot) -> None:
    press(pane, DRAWINGS, qtbot)
    step = next(s for s in pane.plan.steps if s.layout == 1 and s.number > 1)
    place = pane.view.sheets.rect_of(f"cut/{step.number}").center().toPoint()

    qtbot.mouseClick(pane.view.sheets, LEFT_BUTTON, pos=place)

    assert pane.page == ORDER
    assert pane.plan.steps[pane.order.place] is step


def test_each_step_brings_its_board_and_its_setting(pane: CuttingPane, qtbot: QtBot) -> None:
    press(pane, ORDER, qtbot)
    pane.view.setFocus()
    place = next(k for k, step in enumerate(pane.plan.steps) if step.layout == 2)

    for _ in range(place):
        qtbot.keyClick(pane.view, Qt.Key.Key_Right)

    assert pane.order.place == place
    assert pane.view.board == 1
    assert pane.settings.record.place == pane.plan.steps[place].batch


def test_the_keys_work_as_soon_as_the_order_is_shown(pane: CuttingPane, qtbot: QtBot) -> None:
    press(pane, ORDER, qtbot)
    assert pane.view.hasFocus()

    qtbot.mouseClick(pane.order.next_button, LEFT_BUTTON)

    assert pane.view.hasFocus() and pane.order.place == 1


def test_space_ticks_the_cut_that_is_shown(pane: CuttingPane, qtbot: QtBot) -> None:
    press(pane, ORDER, qtbot)

    with qtbot.waitSignal(pane.ticked) as told:
        qtbot.keyClick(pane.view, Qt.Key.Key_Space)

    assert told.args == [pane.plan.steps[0].key, True]


def test_outside_the_order_no_key_ticks_anything(pane: CuttingPane, qtbot: QtBot) -> None:
    press(pane, DRAWINGS, qtbot)
    pane.view.setFocus()

    with qtbot.assertNotEmitted(pane.ticked):
        qtbot.keyClick(pane.view, Qt.Key.Key_Space)
    assert not any(about.startswith("blank/") for about in pane.view.sheets.lights)


# ---------------------------------------------------------------- lights


def test_only_the_next_cut_and_its_blank_are_in_colour() -> None:
    plan = plans()[0]

    found = lights(plan, Moment(step=4))

    step = plan.steps[4]
    assert found[f"cut/{step.number}"] == NEXT
    assert [a for a, light in found.items() if light.ground == SPRUCE_PALE] == [
        f"blank/{step.number}"
    ]


def test_pieces_that_are_off_the_saw_are_shaded() -> None:
    plan = plans()[0]

    at_first, at_last = (lights(plan, Moment(step=k)) for k in (0, len(plan.steps) - 1))

    assert not any(about.startswith("piece/") for about in at_first)
    freed = [a for a, light in at_last.items() if a.startswith("piece/") and light.ground == FREE]
    last = plan.steps[-1].frees
    every = {f"piece/{p.name}" for layout in plan.layouts for p in layout.placed}
    assert every - set(freed) == {f"piece/{name}" for name in last}


def test_a_ticked_cut_is_told_from_one_that_is_only_passed() -> None:
    plan = plans()[0]

    found = lights(plan, Moment(step=3, ticked=(plan.steps[0].key,)))

    ticked, passed = (found[f"cut/{plan.steps[k].number}"] for k in (0, 1))
    assert ticked.ground == SPRUCE_PALE and passed.ground == FREE


# ---------------------------------------------------------------- progress and offers


def test_progress_has_a_button_that_stops_it_or_goes_on(pane: CuttingPane, qtbot: QtBot) -> None:
    pane.say_progress("Looking …", "Stop")
    assert pane.foot.progress.isVisible()
    with qtbot.waitSignal(pane.foot.stop_asked):
        qtbot.mouseClick(pane.foot.stop_button, LEFT_BUTTON)

    pane.say_progress("Stopped.", "Go on")
    with qtbot.waitSignal(pane.foot.go_on_asked):
        qtbot.mouseClick(pane.foot.stop_button, LEFT_BUTTON)

    pane.say_progress("")
    assert not pane.foot.progress.isVisible() and not pane.foot.stop_button.isVisible()


def test_an_offer_is_a_line_and_a_press_for_its_own_plan(pane: CuttingPane, qtbot: QtBot) -> None:
    pane.offer({PLY: ("A better plan is found.", "Take the better plan"), THIN: ("", "")})
    assert "A better plan is found." in pane.told.text()

    with qtbot.waitSignal(pane.offer_taken) as told:
        qtbot.mouseClick(pane.foot.offer_button, LEFT_BUTTON)
    assert told.args == [PLY]

    pane.choose_plan(THIN)
    assert not pane.foot.offer_button.isVisible()


def test_trouble_is_said_and_nothing_is_drawn(pane: CuttingPane) -> None:
    pane.show_trouble("The cuts could not be planned.")

    assert pane.told.text() == "The cuts could not be planned."
    assert pane.view.sheets.boards == ()
    assert pane.settings.sorted.rowCount() == 0


def test_plans_that_come_after_trouble_are_drawn(pane: CuttingPane) -> None:
    before = pane.plans
    pane.show_trouble("The cuts could not be planned.")

    pane.show_plans(before, NAMES, frozenset(), "mm")

    assert len(pane.view.sheets.boards) == 3
