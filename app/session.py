"""The open bed: choices go in, what moved comes out, and nothing that was made is lost on the way.

A choice that cannot be built stays a wish: the last good bed remains, the wish is tried again
together with each later choice, and it comes into force as soon as it can.
"""

from __future__ import annotations

import logging
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING, Any, NamedTuple

from PySide6.QtCore import QElapsedTimer, QObject, QTimer, Signal

from app.worker import Worker
from model.errors import BedError, CannotBuild

if TYPE_CHECKING:
    from model.bed import Bed, Design
    from model.materials import OwnRows
    from model.mend import Mended

log = logging.getLogger(__name__)
PAUSE, LONGEST_PAUSE = 3, 250  # ms
JUDGED_EVERY = 200  # ms: under the maker's hand the picture comes first
OWN_MISTAKE = "This is a mistake of Bedwright's own, not of the design; the last good bed stays."


class Ways(NamedTuple):
    """How a bed is solved, and how a refused one is mended."""

    solve: Callable[..., Bed]
    works: Callable[..., Mended]


def built_in_ways() -> Ways:
    """The model's own, imported when the first bed is solved."""
    from model.bed import solve
    from model.mend import works

    return Ways(solve, works)


def judgement(bed: Bed) -> tuple[Any, ...]:
    """What takes longer than a frame to work out of a bed; it stays with the bed."""
    return bed.findings, bed.marks, bed.hardware


@dataclass(frozen=True, kw_only=True)
class Refusal:
    """A wish that does not build: which choice, the value wished for, and why not."""

    field: str
    value: Any
    error: BedError
    mended: Any = None

    @property
    def at_fault(self) -> str:
        """The choice or dimension that the sentence is about."""
        return self.error.field


class Session(QObject):
    """Holds the open bed, the undo list and the wishes; views listen to which names moved."""

    changed = Signal(object)  # frozenset of the names that moved
    refused = Signal(str, str)  # field, sentence
    granted = Signal(str)  # field: its wish is in force, or given up
    mended = Signal(str, object)  # field, Mended
    judged = Signal()  # findings and parts list of the bed on view are ready
    history_moved = Signal()  # undo, redo, name, file or unsaved state

    def __init__(
        self, design: Design | None = None, ways: Ways | None = None, parent: QObject | None = None
    ) -> None:
        """With a design the bed is solved at once; without one, at `start`."""
        super().__init__(parent)
        self.worker = Worker(self)
        self.refusals: dict[str, Refusal] = {}
        self.path: Path | None = None
        self.has_bed = False
        self._ways = ways
        self._asked: dict[str, Any] = {}
        self._drag = ""  # the field under the maker's hand
        self._drag_noted = False  # its undo step is in the list already
        self._undo: list[Design] = []
        self._redo: list[Design] = []
        self._saved: Design | None = None
        self._is_judged = False
        self.waits_for = ""  # a lane of the worker whose answer a dragged slider waits for a little
        self.judged_after = ""  # a lane that is looked at, and has its answer before judging begins
        self._since_bed = QElapsedTimer()
        self._soon = QTimer(self, singleShot=True, interval=0)
        self._soon.timeout.connect(self._take_when_ready)
        self._judge_soon = QTimer(self, singleShot=True, interval=JUDGED_EVERY)
        self._judge_soon.timeout.connect(self._judge)
        if design is not None:
            self.open(design)

    def start(self) -> None:
        """Show a new bed, if none is open yet."""
        from model.bed import Design

        if not self.has_bed:
            self.open(Design())

    @cached_property
    def ways(self) -> Ways:
        """How beds are solved and mended."""
        return self._ways or built_in_ways()

    # ------------------------------------------------------------ what is open

    @property
    def design(self) -> Design:
        """The design of the last good bed."""
        return self.bed.design

    @property
    def unit(self) -> str:
        """The unit that lengths are shown in."""
        return str(self.design.value("shown_unit"))

    @property
    def is_unsaved(self) -> bool:
        """Whether the design differs from its file."""
        return self.has_bed and self.design != self._saved

    @property
    def is_judged(self) -> bool:
        """Whether findings and parts list of the bed on view may be read without waiting."""
        return self._is_judged

    @property
    def is_dragging(self) -> bool:
        """Whether a slider is under the maker's hand."""
        return bool(self._drag)

    @property
    def can_undo(self) -> bool:
        return bool(self._undo)

    @property
    def can_redo(self) -> bool:
        return bool(self._redo)

    def open(self, design: Design, path: Path | None = None) -> None:
        """Show another design; refused as CannotBuild, and then the open bed stays."""
        self._show(self.ways.solve(design))
        self._undo.clear()
        self._redo.clear()
        self.mark_saved(path)

    def mark_saved(self, path: Path | None) -> None:
        """The design on view is the one in this file."""
        self.path, self._saved = path, self.design
        self.history_moved.emit()

    def mark_unsaved(self) -> None:
        """The design on view is in no file, whatever it was opened from."""
        self._saved = None
        self.history_moved.emit()

    def rename(self, name: str) -> None:
        """Give the design another name: a step that can be undone."""
        self._replace(replace(self.design, name=name))

    def take_own(self, own: OwnRows) -> None:
        """Keep these materials of the maker's own in the design: a step that can be undone.

        Refused as BedError: one that is gone and still chosen, one with which the bed cannot be
        built.
        """
        self.take(lambda design: design.with_own(own))

    def take(self, change: Callable[[Design], Design]) -> None:
        """Change what travels with the design (materials, stock, prices, ticks): a step that can be
        undone. Refused as BedError: what `change` refuses, or with which no bed can be built.
        """
        self.settle()
        self._replace(change(self.design))

    # ------------------------------------------------------------ choosing

    def choose(self, name: str, value: Any) -> None:
        """Ask for a value; it is taken when the window is idle, the newest one only."""
        self._asked[name] = value
        self._soon.start(0)

    def drag(self, name: str, value: Any) -> None:
        """Ask for a value under the maker's hand: all until `settle` is one step to undo."""
        if self._drag != name:
            self.settle()
            self._drag, self._drag_noted = name, False
        self.choose(name, value)

    def settle(self, _name: str = "") -> None:
        """The hand is off the slider."""
        self.take_now()
        was_dragging, self._drag = self._drag, ""
        if was_dragging in self.refusals:
            self.refused.emit(was_dragging, self.refusals[was_dragging].error.sentence)
            self._mend(self.refusals[was_dragging])
        if was_dragging:
            self.history_moved.emit()
            if self._judge_soon.isActive():
                self._judge()

    def take_now(self) -> None:
        """Take what was asked for without waiting."""
        if self._soon.isActive():
            self._soon.stop()
            self._take()

    def choose_all(self, changes: Mapping[str, Any]) -> None:
        """Take several choices as one step: an offered set that builds."""
        self._asked.update(changes)
        self._soon.start(0)

    def give_up(self, name: str) -> None:
        """Take a wish back: the field returns to what is in force."""
        self._asked.pop(name, None)
        if self.refusals.pop(name, None) is not None:
            self.granted.emit(name)

    def _take_when_ready(self) -> None:
        if self._pauses():
            self._soon.start(PAUSE)
        else:
            self._take()

    def _take(self) -> None:
        if not self.has_bed:
            self._soon.start(0)  # typed before the first bed: it waits for that
            return
        asked, self._asked = self._asked, {}
        wishes = {name: each.value for name, each in self.refusals.items() if name not in asked}
        still = self._try({**wishes, **asked}) if wishes else None
        if wishes and still is None:
            return
        trouble = self._try(asked)
        if trouble is not None:
            self._refuse(asked, trouble)
        elif still is not None:
            self._refuse(wishes, still)

    def _pauses(self) -> bool:
        """Whether a dragged slider lets what is looked at catch up with the last bed.

        Else no answer would ever be for the bed that is open, until the hand comes to rest.
        """
        if not self.is_dragging or not self.waits_for or self._since_bed.elapsed() > LONGEST_PAUSE:
            return False
        return self.worker.is_busy(self.waits_for)

    def _try(self, changes: Mapping[str, Any]) -> BedError | None:
        try:
            bed = self.ways.solve(self.design.with_choices(changes), last=self.bed)
        except BedError as trouble:
            return trouble
        except Exception:
            log.exception("The bed could not be solved")
            return CannotBuild(next(iter(changes)), OWN_MISTAKE)
        self._accept(bed, tuple(changes))
        return None

    def _accept(self, bed: Bed, names: tuple[str, ...]) -> None:
        if bed.design != self.design:
            if not (self._drag in names and self._drag_noted):
                self._undo.append(self.design)
            self._drag_noted = self._drag in names
            self._redo.clear()
            self._show(bed, names)
        else:
            self._grant(names)

    def _refuse(self, asked: Mapping[str, Any], trouble: BedError) -> None:
        for name, value in asked.items():
            self.refusals[name] = Refusal(field=name, value=value, error=trouble)
            self.refused.emit(name, trouble.sentence)
            if name != self._drag:
                self._mend(self.refusals[name])

    def _grant(self, names: tuple[str, ...]) -> None:
        for name in names:
            if self.refusals.pop(name, None) is not None:
                self.granted.emit(name)

    # ------------------------------------------------------------ undo

    def undo(self) -> None:
        """Back to the design before the last step."""
        self._swap(self._undo, self._redo)

    def redo(self) -> None:
        """Forward again."""
        self._swap(self._redo, self._undo)

    def _swap(self, source: list[Design], other: list[Design]) -> None:
        self.settle()
        if source:
            other.append(self.design)
            self._show(self.ways.solve(source.pop(), last=self.bed))

    def _replace(self, design: Design) -> None:
        if design != self.design:
            self._undo.append(self.design)
            self._redo.clear()
            self._show(self.ways.solve(design, last=self.bed), ())

    def _show(self, bed: Bed, granted: tuple[str, ...] | None = None) -> None:
        """Put a bed on view; `granted` names the wishes that it fulfils, None drops them all."""
        self.bed: Bed = bed
        self._since_bed.start()
        self.has_bed, self._is_judged = True, False
        self._grant(tuple(self.refusals) if granted is None else granted)
        self.changed.emit(bed.moved)
        self.history_moved.emit()
        if not self.is_dragging:
            self._judge()
        elif not self._judge_soon.isActive():
            self._judge_soon.start()

    # ------------------------------------------------------------ slow answers

    def _judge(self) -> None:
        self._judge_soon.stop()
        if self._is_looked_at():
            self._judge_soon.start(PAUSE)
            return
        bed = self.bed
        self.worker.ask("judge", lambda: judgement(bed), lambda _: self._judged(bed))

    def _is_looked_at(self) -> bool:
        """Whether what the maker looks at is not there yet: two threads would halve each other."""
        if not self.judged_after or self._since_bed.elapsed() > LONGEST_PAUSE:
            return False
        return self.worker.is_busy(self.judged_after)

    def _judged(self, bed: Bed) -> None:
        if bed is self.bed:
            self._is_judged = True
            self.judged.emit()

    def _mend(self, refusal: Refusal) -> None:
        if not isinstance(refusal.error, CannotBuild) or refusal.error.sentence == OWN_MISTAKE:
            return
        bed, error = self.bed, refusal.error
        wished = self.design.with_choices({refusal.field: refusal.value})

        def is_stale() -> bool:
            return self.refusals.get(refusal.field) is not refusal

        self.worker.ask(
            "mend",
            lambda: self.ways.works(wished, error, bed.dimensions.book, bed, is_stale),
            lambda mended: self._mended(refusal, mended),
            lambda trouble: None if is_stale() else self.worker.unexpected(trouble),
        )

    def _mended(self, refusal: Refusal, mended: Mended) -> None:
        if self.refusals.get(refusal.field) is refusal:  # else the maker has moved on
            self.refusals[refusal.field] = replace(refusal, mended=mended)
            self.mended.emit(refusal.field, mended)
