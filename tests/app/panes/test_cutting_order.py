"""Cuts one by one: by button, slider and tick."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QWidget
from pytestqt.qtbot import QtBot

from app.panes.cutting_order import CuttingOrder
from model.drawings.cut_steps import SawnPlan
from tests.app.panes.sample_plans import plans

LEFT_BUTTON = Qt.MouseButton.LeftButton


@pytest.fixture
def plan() -> SawnPlan:
    return plans()[0]


@pytest.fixture
def order(shown: Callable[[QWidget], QWidget], plan: SawnPlan) -> CuttingOrder:
    made = CuttingOrder()
    made.resize(600, 100)
    made.show_plan(plan, frozenset())
    shown(made)
    return made


def test_the_setting_of_the_first_cut_is_said_first(order: CuttingOrder, plan: SawnPlan) -> None:
    assert order.place == 0
    assert order.setting.text().endswith("– sheet 1")
    assert order.count.text() == f"cut 1 of {len(plan.steps)}, 0 made"
    assert not order.back_button.isEnabled() and order.next_button.isEnabled()


def test_a_rip_names_its_fence(order: CuttingOrder, plan: SawnPlan) -> None:
    place = next(
        k for k, s in enumerate(plan.steps) if s.region.cut == "rip" and not s.region.is_trim
    )

    order.go_to(place)

    assert order.setting.text().startswith("Rip: fence at 300 mm – sheet ")


def test_next_and_back_go_through_the_cuts(
    order: CuttingOrder, plan: SawnPlan, qtbot: QtBot
) -> None:
    with qtbot.waitSignal(order.moved) as told:
        qtbot.mouseClick(order.next_button, LEFT_BUTTON)
    assert told.args == [1] and order.slider.value() == 1

    qtbot.mouseClick(order.back_button, LEFT_BUTTON)
    assert order.place == 0

    order.slider.setValue(order.slider.maximum())
    assert order.place == len(plan.steps) - 1
    assert not order.next_button.isEnabled()


def test_a_tick_tells_the_key_and_goes_on(
    order: CuttingOrder, plan: SawnPlan, qtbot: QtBot
) -> None:
    with qtbot.waitSignal(order.ticked) as told:
        qtbot.mouseClick(order.box, LEFT_BUTTON, pos=order.box.rect().center() * 0.2)

    assert told.args == [plan.steps[0].key, True]
    assert order.place == 1 and not order.box.isChecked()


def test_a_cut_that_is_made_is_ticked_and_can_be_taken_back(
    order: CuttingOrder, plan: SawnPlan, qtbot: QtBot
) -> None:
    done = frozenset({plan.steps[0].key})
    order.show_plan(plan, done)
    order.go_to(0)
    assert order.box.isChecked()
    assert order.count.text() == f"cut 1 of {len(plan.steps)}, 1 made"

    with qtbot.waitSignal(order.ticked) as told:
        order.tick()

    assert told.args == [plan.steps[0].key, False]
    assert order.place == 0


def test_another_plan_starts_at_its_first_cut_that_is_not_made(order: CuttingOrder) -> None:
    other = plans()[1]
    done = frozenset(step.key for step in other.steps[:5])

    order.show_plan(other, done)

    assert order.place == 5


def test_the_same_plan_stays_where_it_is(order: CuttingOrder, plan: SawnPlan) -> None:
    order.go_to(3)

    order.show_plan(plan, frozenset({plan.steps[0].key}))

    assert order.place == 3


def test_a_cut_is_found_by_its_number(order: CuttingOrder, plan: SawnPlan) -> None:
    order.go_to_cut(plan.steps[4].number)

    assert order.place == 4
