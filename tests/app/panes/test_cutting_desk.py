"""Plans of the open bed: first ones at once, better ones on the way, kept and ticked as asked."""

from __future__ import annotations

import threading
from collections.abc import Callable, Iterator
from dataclasses import replace
from typing import Any

import pytest
from PySide6.QtWidgets import QWidget
from pytestqt.qtbot import QtBot

from app.panes.cutting_desk import BROKE_OFF, HELD, STOPPED, CuttingDesk
from app.panes.cutting_pane import CuttingPane
from app.panes.cutting_search import Ways, built_in_ways
from app.session import Session
from model.bed import Bed, Design
from model.errors import BadInput
from model.shop import plans as shop_plans
from model.shop import tracking
from model.shop.plans import CutPlan
from tests.model.drawings.sample_layout import cut_plan, small_sheet
from tests.model.shop.offcut_plans import LONG, THICK, THIN, WIDE, guest_room, leaving, plan_of

FIRST = cut_plan(small_sheet(1), small_sheet(2), small_sheet(3))
BETTER = cut_plan(small_sheet(1), small_sheet(2))
BETTER = replace(BETTER, plan=replace(BETTER.plan, task=FIRST.plan.task))
WORSE = cut_plan(*(small_sheet(n) for n in (1, 2, 3, 4)))
WORSE = replace(WORSE, plan=replace(WORSE.plan, task=FIRST.plan.task))


class Shop:
    """Planning as the test wants it: what is found, and when."""

    def __init__(self) -> None:
        self.first: tuple[CutPlan, ...] = (FIRST,)
        self.found: list[CutPlan] = []
        self.gate = threading.Event()
        self.gate.set()
        self.asked: list[Bed] = []
        self.searched = 0
        self.was_stopped = False
        self.kept: list[CutPlan] = []
        self.ticked: list[tuple[str, bool]] = []
        self.refuses = False

    def first_plans(self, bed: Bed) -> tuple[CutPlan, ...]:
        self.asked.append(bed)
        return self.first

    def best(self, task: Any, better: Callable[[CutPlan], None], stop: Callable[[], bool]) -> Any:
        self.searched += 1
        for plan in self.found:
            better(plan)
        while not self.gate.wait(0.001):
            if stop():
                self.was_stopped = True
                break
        return None

    def keep(self, bed: Bed, plan: CutPlan) -> Design:
        if self.refuses:
            raise BadInput("plan", "Cuts of the plan in use are ticked already.")
        self.kept.append(plan)
        progress = replace(bed.design.progress, plans=(plan.plan,))
        self.first = (replace(plan, is_stored=True),)
        return replace(bed.design, progress=progress)

    def tick(self, bed: Bed, plan: CutPlan, key: str, is_made: bool) -> Design:
        self.ticked.append((key, is_made))
        done = bed.design.progress.cuts_done
        done = done | {key} if is_made else done - {key}
        return replace(bed.design, progress=replace(bed.design.progress, cuts_done=done))

    @property
    def ways(self) -> Ways:
        return Ways(
            lambda bed: ("task",), self.first_plans, self.best, self.keep, self.tick,  # type: ignore[arg-type, return-value]
            tracking.outdated, tracking.recut,
        )  # fmt: skip


@pytest.fixture
def shop() -> Shop:
    return Shop()


@pytest.fixture(scope="module")
def design() -> Design:
    return Design()


@pytest.fixture
def desk(shop: Shop, design: Design) -> Iterator[CuttingDesk]:
    session = Session(design)
    pane = CuttingPane()
    pane.resize(760, 480)
    made = CuttingDesk(session, pane, shop.ways)
    yield made
    shop.gate.set()
    session.worker.wait()


@pytest.fixture
def seen(desk: CuttingDesk, shown: Callable[[QWidget], QWidget], qtbot: QtBot) -> CuttingDesk:
    with qtbot.waitSignal(desk.changed, timeout=20_000):
        shown(desk.pane)
    return desk


def sheets(desk: CuttingDesk) -> int:
    return len(desk.pane.plans[0].layouts)


def rest(desk: CuttingDesk, qtbot: QtBot) -> None:
    qtbot.waitUntil(lambda: not desk.session.worker.is_busy(), timeout=20_000)


def look_again(desk: CuttingDesk) -> None:
    """As if nothing had been searched for this bed."""
    desk._search = None
    desk.follow()


# ---------------------------------------------------------------- planning


def test_nothing_is_planned_while_nobody_looks(desk: CuttingDesk, shop: Shop, qtbot: QtBot) -> None:
    with qtbot.waitSignal(desk.session.changed):
        desk.session.choose("side_fit", 20.0)
    rest(desk, qtbot)

    assert shop.asked == []


def test_first_plans_are_shown_before_better_ones_are_found(
    desk: CuttingDesk, shop: Shop, shown: Callable[[QWidget], QWidget], qtbot: QtBot
) -> None:
    shop.gate.clear()
    with qtbot.waitSignal(desk.changed, timeout=20_000):
        shown(desk.pane)

    assert sheets(desk) == 3
    qtbot.waitUntil(lambda: desk.pane.foot.progress.text() == "Looking for better plans … 1 of 1")

    shop.gate.set()
    qtbot.waitUntil(lambda: desk.pane.foot.progress.text() == "", timeout=20_000)


def test_a_better_plan_takes_the_place_and_a_worse_one_does_not(
    desk: CuttingDesk, shop: Shop, shown: Callable[[QWidget], QWidget], qtbot: QtBot
) -> None:
    shop.found = [WORSE, BETTER, WORSE]

    shown(desk.pane)

    qtbot.waitUntil(lambda: bool(desk.pane.plans) and sheets(desk) == 2, timeout=20_000)
    rest(desk, qtbot)
    assert sheets(desk) == 2


def test_a_plan_of_other_pieces_never_takes_the_place(
    desk: CuttingDesk, shop: Shop, shown: Callable[[QWidget], QWidget], qtbot: QtBot
) -> None:
    """Such as one for all pieces, where some are cut already."""
    fewer = replace(BETTER.plan.task, pieces=BETTER.plan.task.pieces[:1])
    shop.found = [replace(BETTER, plan=replace(BETTER.plan, task=fewer))]

    with qtbot.waitSignal(desk.changed, timeout=20_000):
        shown(desk.pane)
    rest(desk, qtbot)

    assert sheets(desk) == 3


def test_the_window_plans_what_is_still_to_be_cut() -> None:
    ways = built_in_ways()

    assert ways.tasks is shop_plans.still_to_cut
    assert ways.fit is tracking.outdated and ways.tick is tracking.ticked


def test_what_was_found_stays_when_the_same_task_is_planned_again(
    seen: CuttingDesk, shop: Shop, qtbot: QtBot
) -> None:
    """A change that moves no piece of this task leaves the better plan in sight."""
    shop.found = [BETTER]
    look_again(seen)
    qtbot.waitUntil(lambda: sheets(seen) == 2, timeout=20_000)
    shop.found = []

    with qtbot.waitSignal(seen.changed, timeout=20_000):
        seen.session.rename("The same bed")

    assert sheets(seen) == 2


def test_plans_of_another_task_are_shown_whatever_they_take(
    seen: CuttingDesk, shop: Shop, qtbot: QtBot
) -> None:
    other = replace(WORSE, plan=replace(WORSE.plan, task=replace(WORSE.plan.task, kerf=2.0)))
    shop.first = (other,)

    with qtbot.waitSignal(seen.changed, timeout=20_000):
        seen.session.choose("side_fit", 20.0)

    assert sheets(seen) == 4


def test_a_search_ends_when_the_bed_changes_and_its_plans_are_dropped(
    seen: CuttingDesk, shop: Shop, qtbot: QtBot
) -> None:
    rest(seen, qtbot)
    shop.gate.clear()
    look_again(seen)
    qtbot.waitUntil(lambda: shop.searched == 2, timeout=20_000)
    old = seen._search

    with qtbot.waitSignal(seen.session.changed):
        seen.session.choose("side_fit", 20.0)
    qtbot.waitUntil(lambda: shop.was_stopped, timeout=20_000)
    seen._take_better(old, replace(seen.pane.plans[0], cut=BETTER))

    assert sheets(seen) == 3


def test_a_search_ends_when_nobody_looks_any_more_and_goes_on_when_somebody_does(
    seen: CuttingDesk, shop: Shop, qtbot: QtBot
) -> None:
    rest(seen, qtbot)
    shop.gate.clear()
    look_again(seen)
    qtbot.waitUntil(lambda: shop.searched == 2, timeout=20_000)

    seen.pane.hide()
    qtbot.waitUntil(lambda: shop.was_stopped, timeout=20_000)
    rest(seen, qtbot)
    seen.pane.show()

    qtbot.waitUntil(lambda: shop.searched == 3, timeout=20_000)


def test_under_the_makers_hand_nothing_is_planned(
    seen: CuttingDesk, shop: Shop, qtbot: QtBot
) -> None:
    rest(seen, qtbot)
    count = len(shop.asked)
    with qtbot.waitSignal(seen.session.changed):
        seen.session.drag("side_fit", 20.0)

    assert len(shop.asked) == count
    assert seen.pane.foot.progress.text() == HELD
    with qtbot.waitSignal(seen.changed, timeout=20_000):
        seen.session.settle()
    assert len(shop.asked) == count + 1


def test_the_maker_stops_it_and_lets_it_go_on(seen: CuttingDesk, shop: Shop, qtbot: QtBot) -> None:
    rest(seen, qtbot)
    shop.gate.clear()
    look_again(seen)
    qtbot.waitUntil(lambda: seen.pane.foot.stop_button.text() == "Stop", timeout=20_000)

    seen.pane.foot.stop_button.click()
    qtbot.waitUntil(lambda: shop.was_stopped, timeout=20_000)
    assert seen.pane.foot.progress.text() == STOPPED
    rest(seen, qtbot)
    shop.found = [BETTER]
    shop.gate.set()
    seen.pane.foot.stop_button.click()

    qtbot.waitUntil(lambda: sheets(seen) == 2, timeout=20_000)


def test_a_search_that_is_stopped_stays_so_for_the_next_bed(
    seen: CuttingDesk, shop: Shop, qtbot: QtBot
) -> None:
    rest(seen, qtbot)
    seen.pause()

    with qtbot.waitSignal(seen.changed, timeout=20_000):
        seen.session.choose("side_fit", 20.0)
    rest(seen, qtbot)

    assert shop.searched == 1
    assert (seen.pane.foot.progress.text(), seen.pane.foot.stop_button.text()) == (STOPPED, "Go on")


def test_lengths_are_told_in_the_other_unit_when_it_is_chosen(
    seen: CuttingDesk, qtbot: QtBot
) -> None:
    other = {"mm": "inch", "inch": "mm"}[seen.session.unit]

    with qtbot.waitSignal(seen.changed, timeout=20_000):
        seen.session.choose("shown_unit", other)

    assert seen.pane.plans[0].unit == other


def test_a_mistake_of_our_own_is_logged_and_said(
    desk: CuttingDesk, shop: Shop, shown: Callable[[QWidget], QWidget], qtbot: QtBot, caplog: Any
) -> None:
    shop.first = ()
    shop.best = lambda *_, **__: 1 / 0  # type: ignore[method-assign, assignment]
    desk._ways = shop.ways

    with qtbot.waitSignal(desk.rested, timeout=20_000):
        shown(desk.pane)

    assert desk.pane.foot.progress.text() == BROKE_OFF
    assert "broke off" in caplog.text


def test_closing_does_not_wait_for_the_end_of_a_search(
    seen: CuttingDesk, shop: Shop, qtbot: QtBot
) -> None:
    rest(seen, qtbot)
    shop.gate.clear()
    look_again(seen)
    qtbot.waitUntil(lambda: shop.searched == 2, timeout=20_000)

    seen.session.worker.wait()

    assert shop.was_stopped


# ---------------------------------------------------------------- keeping and ticking


def test_a_plan_is_kept_by_a_press_and_undone_like_any_step(
    seen: CuttingDesk, shop: Shop, qtbot: QtBot
) -> None:
    assert seen.pane.foot.offer_button.text() == "Keep this plan"

    with qtbot.waitSignal(seen.changed, timeout=20_000):
        seen.pane.foot.offer_button.click()

    assert seen.session.design.progress.plans == (FIRST.plan,)
    qtbot.waitUntil(lambda: not seen.pane.foot.offer_button.isVisible(), timeout=20_000)
    assert "is kept" in seen.pane.told.text()
    seen.session.undo()
    assert seen.session.design.progress.plans == ()


def test_a_better_plan_is_offered_and_never_swapped_in(
    seen: CuttingDesk, shop: Shop, qtbot: QtBot
) -> None:
    rest(seen, qtbot)
    shop.found = [BETTER]
    with qtbot.waitSignal(seen.changed, timeout=20_000):
        seen.pane.foot.offer_button.click()
    offer = "A better plan is found: it takes 1 sheet fewer."
    qtbot.waitUntil(lambda: offer in seen.pane.told.text(), timeout=20_000)
    assert sheets(seen) == 3

    with qtbot.waitSignal(seen.changed, timeout=20_000):
        seen.pane.foot.offer_button.click()

    assert shop.kept[-1].plan == BETTER.plan
    qtbot.waitUntil(lambda: sheets(seen) == 2, timeout=20_000)


def test_a_cut_is_ticked_at_once_and_kept_with_the_design(
    seen: CuttingDesk, shop: Shop, qtbot: QtBot
) -> None:
    rest(seen, qtbot)
    seen.pane.show_page(2)
    key = seen.pane.plan.steps[0].key

    seen.pane.order.tick()

    assert shop.ticked == [(key, True)]
    assert seen.session.design.progress.cuts_done == {key}
    assert seen.pane.order.count.text().endswith("1 made")
    seen.session.undo()
    qtbot.waitUntil(lambda: seen.pane.order.count.text().endswith("0 made"), timeout=20_000)


def test_what_is_refused_is_said_and_nothing_changes(
    seen: CuttingDesk, shop: Shop, qtbot: QtBot
) -> None:
    shop.gate.clear()
    look_again(seen)
    qtbot.waitUntil(lambda: shop.searched == 2, timeout=20_000)
    shop.refuses = True

    seen.pane.foot.offer_button.click()
    seen._tell_reached(seen._search, 1, 1)  # the search goes on, and the sentence stays

    assert seen.pane.foot.progress.text() == "Cuts of the plan in use are ticked already."
    assert not seen.session.can_undo


# ---------------------------------------------------------------- the shop's own ways


def test_what_offcuts_of_another_plan_would_do_for_is_told(
    shop: Shop, shown: Callable[[QWidget], QWidget], qtbot: QtBot
) -> None:
    bed = guest_room()
    shop.first = (plan_of(bed, THIN), leaving(plan_of(bed, THICK), (LONG, WIDE)))
    session, pane = Session(bed.design), CuttingPane()
    desk = CuttingDesk(session, pane, shop.ways)

    with qtbot.waitSignal(desk.changed, timeout=20_000):
        shown(pane)

    assert "R1 and R2 could be planed down from what is left of 6/4" in pane.told.text()
    session.worker.wait()


@pytest.fixture
def real(
    design: Design, shown: Callable[[QWidget], QWidget], qtbot: QtBot
) -> Iterator[CuttingDesk]:
    """A real bed, planned by the shop's own first plans; no search for better ones."""
    session = Session(design)
    pane = CuttingPane()
    pane.resize(760, 480)
    ways = Ways(
        lambda bed: (), shop_plans.first_plans, shop_plans.best_plan, tracking.accepted,
        tracking.ticked, tracking.outdated, tracking.recut,
    )  # fmt: skip
    desk = CuttingDesk(session, pane, ways)
    with qtbot.waitSignal(desk.changed, timeout=30_000):
        shown(pane)
    yield desk
    session.worker.wait()


def test_each_piece_on_a_board_is_one_of_the_bed_and_back(real: CuttingDesk) -> None:
    names = [p.name for plan in real.pane.plans for layout in plan.layouts for p in layout.placed]
    assert len(names) > 40

    for name in names:
        piece = real._names.bed_piece(name)
        assert name in real._names.of_bed_piece(piece)


def test_a_press_on_a_board_picks_the_piece_of_the_bed(real: CuttingDesk, qtbot: QtBot) -> None:
    name = real.pane.plans[0].layouts[0].placed[0].name

    with qtbot.waitSignal(real.pieces_picked) as told:
        real.pane.picked.emit(name)

    (pieces,) = told.args
    assert pieces == (real._names.bed_piece(name),)


def test_a_piece_of_the_bed_is_lit_on_its_board(real: CuttingDesk, qtbot: QtBot) -> None:
    name = real.pane.plans[-1].layouts[0].placed[0].name

    real.pick(real._names.bed_piece(name))

    assert real.pane.plan.holding(name)
    assert f"piece/{name}" in real.pane.view.sheets.lights


def test_a_tick_keeps_the_plan_and_the_cuts_before_it(real: CuttingDesk, qtbot: QtBot) -> None:
    real.pane.choose_plan(max(real.pane.plans, key=lambda p: len(p.steps)).key)
    plan = real.pane.plan
    real.pane.show_page(2)
    real.pane.order.go_to(len(plan.steps) - 1)

    real.pane.order.tick()

    done = real.session.design.progress.cuts_done
    assert plan.steps[-1].key in done and done <= plan.keys
    assert real.session.design.progress.plan_of(plan.key) == plan.cut.plan
    qtbot.waitUntil(lambda: real.pane.plan.cut.is_stored, timeout=30_000)


def test_a_piece_that_is_cut_and_fits_no_more_is_told_and_can_become_another(
    real: CuttingDesk, qtbot: QtBot
) -> None:
    """Slats are cut, then the bed is made narrower: each still holds a shorter one."""
    session, names = real.session, real._names
    slat = next(name for name, piece in names.pieces.items() if piece.part == "slat")
    plan = next(p for p in real.pane.plans if p.holding(f"{slat}-1"))
    step = next(s for s in plan.steps if f"{slat}-1" in s.frees)
    real.pane.choose_plan(plan.key)
    real.tick(step.key, True)
    assert not real.pane.misfits.isVisible()
    parts = len(session.design.progress.parts)
    width = session.design.value("mattress_width")

    with qtbot.waitSignal(real.changed, timeout=30_000):
        session.choose("mattress_width", width - 150.0)
    qtbot.waitUntil(real.pane.misfits.isVisible, timeout=30_000)
    assert "slat" in real.pane.misfits.label.text()
    unfit = len(real.pane.misfits.fit.unfit)
    real.pane.misfits.recut_button.click()

    assert len(session.design.progress.parts) == parts
    fit = tracking.outdated(session.bed)
    assert len(fit.unfit) == unfit - 1
