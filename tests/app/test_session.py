"""The open bed: a refused wish keeps the last bed, a drag is one step back, late answers go.

The ways to solve are stand-ins here: a refusal and a slow answer come when the test wants them.
"""

from __future__ import annotations

import threading
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field, replace
from typing import Any

import pytest
from pytestqt.qtbot import QtBot

from app.session import LONGEST_PAUSE, OWN_MISTAKE, Session, Ways
from model.errors import BadInput, CannotBuild


@dataclass(frozen=True)
class PlainDesign:
    name: str = "A bed"
    choices: dict[str, Any] = field(default_factory=dict)

    def with_choices(self, changes: dict[str, Any]) -> PlainDesign:
        return replace(self, choices={**self.choices, **changes})

    def value(self, name: str) -> Any:
        return self.choices.get(name, {"shown_unit": "inch", "height": 400, "depth": 500}[name])


class PlainDimensions:
    book = None


@dataclass(frozen=True)
class PlainBed:
    design: PlainDesign
    moved: frozenset[str] = frozenset()
    dimensions: PlainDimensions = PlainDimensions()
    findings: tuple[Any, ...] = ()
    marks: tuple[Any, ...] = ()
    hardware: tuple[Any, ...] = ()


def solve(design: PlainDesign, last: PlainBed | None = None) -> PlainBed:
    """Deep drawers need a high rail; a depth of 13 is a mistake of ours."""
    if design.value("depth") == 13:
        raise ZeroDivisionError
    if design.value("depth") > 1.5 * design.value("height"):
        raise CannotBuild("depth", "The drawers are too deep.")
    before = last.design.choices if last else {}
    moved = {n for n, v in design.choices.items() if before.get(n) != v}
    return PlainBed(design, frozenset(moved))


@dataclass
class Mender:
    """Answers when it is let go."""

    gate: threading.Event = field(default_factory=threading.Event)
    asked: list[PlainDesign] = field(default_factory=list)

    def __call__(self, design: PlainDesign, *_: Any) -> str:
        self.asked.append(design)
        assert self.gate.wait(5)
        return f"mended for {design.choices}"


@pytest.fixture
def mender() -> Mender:
    return Mender()


@pytest.fixture
def session(qtbot: QtBot, mender: Mender) -> Iterator[Session]:
    made = Session(PlainDesign(), Ways(solve, mender))
    yield made
    mender.gate.set()
    made.worker.wait()


def chosen(session: Session, **values: Any) -> None:
    for name, value in values.items():
        session.choose(name, value)
    session.take_now()


def test_a_choice_moves_the_bed_and_names_what_moved(qtbot: QtBot, session: Session) -> None:
    with qtbot.waitSignal(session.changed) as moved:
        session.choose("height", 500)

    assert moved.args == [frozenset({"height"})]
    assert session.design.value("height") == 500


def test_under_the_hand_a_bed_is_judged_only_now_and_then(
    qtbot: QtBot, session: Session, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Working out all checks at every step would take the processor from the picture."""
    qtbot.waitUntil(lambda: session.is_judged)
    asked: list[str] = []
    ask = session.worker.ask
    monkeypatch.setattr(
        session.worker, "ask", lambda lane, *rest: (asked.append(lane), ask(lane, *rest))
    )

    for height in (410, 420, 430):
        session.drag("height", height)
        session.take_now()

    assert asked == []
    with qtbot.waitSignal(session.judged):
        session.settle()
    assert asked == ["judge"]


def test_a_hand_at_rest_on_a_slider_sees_the_checks_too(qtbot: QtBot, session: Session) -> None:
    qtbot.waitUntil(lambda: session.is_judged)

    with qtbot.waitSignal(session.judged):
        session.drag("height", 410)
        session.take_now()
        assert not session.is_judged

    assert session.is_dragging


def test_of_many_quick_choices_only_the_newest_is_solved(qtbot: QtBot, session: Session) -> None:
    beds: list[Any] = []
    session.changed.connect(lambda _: beds.append(session.design.value("height")))

    for height in range(401, 420):
        session.drag("height", height)
    qtbot.waitUntil(lambda: bool(beds))

    assert beds == [419]


def test_a_drag_is_one_step_back(session: Session) -> None:
    for height in (410, 420, 430):
        session.drag("height", height)
        session.take_now()
    session.settle("height")
    chosen(session, height=440)

    session.undo()
    assert session.design.value("height") == 430
    session.undo()
    assert session.design.value("height") == 400
    assert not session.can_undo


def test_a_drag_into_what_cannot_be_built_is_told_again_when_the_hand_is_off(
    qtbot: QtBot, session: Session, mender: Mender
) -> None:
    session.drag("depth", 900)
    session.take_now()
    assert session.is_dragging
    assert mender.asked == []  # no search while the hand moves on

    with qtbot.waitSignal(session.refused):
        session.settle("depth")

    assert not session.is_dragging
    qtbot.waitUntil(lambda: len(mender.asked) == 1)


def test_two_drags_are_two_steps(session: Session) -> None:
    for height in (410, 420):
        session.drag("height", height)
        session.settle("height")

    session.undo()

    assert session.design.value("height") == 410


def test_undo_then_redo_is_the_same_design(session: Session) -> None:
    chosen(session, height=500)
    before = session.design

    session.undo()
    session.redo()

    assert session.design == before
    assert not session.can_redo


def test_a_refused_wish_keeps_the_last_bed(qtbot: QtBot, session: Session) -> None:
    bed = session.bed

    with qtbot.waitSignal(session.refused) as refused:
        chosen(session, depth=900)

    assert refused.args == ["depth", "The drawers are too deep."]
    assert session.bed is bed
    assert session.refusals["depth"].value == 900
    assert not session.can_undo


def test_a_wish_comes_into_force_once_another_choice_lets_it(
    qtbot: QtBot, session: Session
) -> None:
    chosen(session, depth=700)

    with qtbot.waitSignal(session.granted) as granted:
        chosen(session, height=500)

    assert granted.args == ["depth"]
    assert (session.design.value("depth"), session.design.value("height")) == (700, 500)
    session.undo()
    assert session.design == PlainDesign()


def test_a_wish_that_still_fails_does_not_hold_up_other_choices(session: Session) -> None:
    chosen(session, depth=2000)

    chosen(session, height=500)

    assert session.design.value("height") == 500
    assert "depth" in session.refusals


def test_a_wish_can_be_taken_back(qtbot: QtBot, session: Session) -> None:
    chosen(session, depth=900)

    with qtbot.waitSignal(session.granted):
        session.give_up("depth")

    assert session.refusals == {}


def test_the_way_out_is_searched_beside_the_window(
    qtbot: QtBot, session: Session, mender: Mender
) -> None:
    chosen(session, depth=900)
    assert "depth" in session.refusals  # the window goes on while the search runs

    with qtbot.waitSignal(session.mended) as mended:
        mender.gate.set()

    assert mended.args == ["depth", "mended for {'depth': 900}"]


def test_a_late_answer_for_an_old_wish_is_dropped(
    qtbot: QtBot, session: Session, mender: Mender
) -> None:
    answers: list[Any] = []
    session.mended.connect(lambda *answer: answers.append(answer))
    chosen(session, depth=900)
    qtbot.waitUntil(lambda: bool(mender.asked))
    chosen(session, depth=901)

    mender.gate.set()
    qtbot.waitUntil(lambda: not session.worker.is_busy("mend"))

    assert answers == [("depth", "mended for {'depth': 901}")]


def test_a_mistake_of_ours_is_logged_and_said(
    session: Session, caplog: pytest.LogCaptureFixture
) -> None:
    bed = session.bed

    chosen(session, depth=13)

    assert session.bed is bed
    assert session.refusals["depth"].error.sentence == OWN_MISTAKE
    assert "ZeroDivisionError" in caplog.text


def test_what_cannot_be_read_is_refused_without_a_search(
    session: Session, mender: Mender, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refuse(*_: Any) -> None:
        raise BadInput("depth", "depth is a number.")

    monkeypatch.setattr(PlainDesign, "with_choices", refuse)
    chosen(session, depth="deep")

    assert session.refusals["depth"].error.sentence == "depth is a number."
    assert mender.asked == []


def test_a_saved_design_is_unsaved_again_after_the_next_choice(session: Session) -> None:
    chosen(session, height=500)
    assert session.is_unsaved
    session.mark_saved(None)
    assert not session.is_unsaved

    session.undo()

    assert session.is_unsaved


def test_opening_a_bed_that_cannot_be_built_keeps_the_open_one(session: Session) -> None:
    chosen(session, height=500)
    bed = session.bed

    with pytest.raises(CannotBuild):
        session.open(PlainDesign(choices={"depth": 5000}))

    assert session.bed is bed
    assert session.can_undo


def test_findings_are_announced_for_the_bed_on_view(qtbot: QtBot, session: Session) -> None:
    wait: Callable[[], bool] = lambda: session.is_judged  # noqa: E731
    qtbot.waitUntil(wait)

    with qtbot.waitSignal(session.judged):
        chosen(session, height=500)
        assert not session.is_judged


# ---------------------------------------------------------------- what is followed


def busy(session: Session, lane: str) -> threading.Event:
    """Work on a lane that goes on until the event is set."""
    gate = threading.Event()
    session.worker.ask(lane, lambda: gate.wait(5), lambda _: None)
    return gate


def test_a_dragged_slider_lets_what_is_followed_catch_up(qtbot: QtBot, session: Session) -> None:
    session.waits_for = "strength"
    session.drag("height", 410)
    session.take_now()
    gate = busy(session, "strength")

    session.drag("height", 420)
    qtbot.wait(20)
    assert session.design.value("height") == 410

    gate.set()
    qtbot.waitUntil(lambda: session.design.value("height") == 420)


def test_a_dragged_slider_waits_no_longer_than_the_eye_does(qtbot: QtBot, session: Session) -> None:
    session.waits_for = "strength"
    session.drag("height", 410)
    session.take_now()
    gate = busy(session, "strength")

    session.drag("height", 420)
    qtbot.waitUntil(lambda: session.design.value("height") == 420, timeout=LONGEST_PAUSE * 20)

    assert session.worker.is_busy("strength")
    gate.set()


def test_a_typed_value_waits_for_nothing(qtbot: QtBot, session: Session) -> None:
    session.waits_for = "strength"
    session.choose("height", 410)
    session.take_now()
    gate = busy(session, "strength")

    with qtbot.waitSignal(session.changed, timeout=1000):
        session.choose("height", 420)

    assert session.worker.is_busy("strength")
    gate.set()


def test_the_last_value_of_a_drag_is_taken_when_the_hand_leaves(
    qtbot: QtBot, session: Session
) -> None:
    session.waits_for = "strength"
    session.drag("height", 410)
    session.take_now()
    gate = busy(session, "strength")
    session.drag("height", 420)

    session.settle()

    assert session.design.value("height") == 420
    gate.set()


def test_what_travels_with_the_design_changes_in_a_step_of_its_own(session: Session) -> None:
    session.take(lambda design: replace(design, name="With a rack"))

    assert session.design.name == "With a rack"
    session.undo()
    assert session.design.name == "A bed"


def test_what_is_taken_as_it_was_is_no_step(session: Session) -> None:
    session.take(lambda design: design)

    assert not session.can_undo
