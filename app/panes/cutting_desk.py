"""Plans the cuts of the open bed beside the window, and keeps pane, list and view on one pick.

A first plan is shown at once and then improved, while the pane is looked at and no slider is
dragged. A plan is only replaced by a better one of the same task; what belongs to another bed is
dropped. A plan that the maker keeps is never replaced: a better one is offered.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Qt, QTimer, Signal

from app.panes.cutting_foot import GO_ON, STOP
from app.panes.cutting_pane import CuttingPane
from app.panes.cutting_search import First, Found, Search, Ways, built_in_ways, look
from app.session import Session
from model.errors import BedError

if TYPE_CHECKING:
    from model.bed import Bed, Design
    from model.drawings.cut_names import CutNames
    from model.drawings.cut_steps import SawnPlan
    from model.shop.tracking_fit import Recut

LANE = "cutting"
PATIENCE = 300  # ms until the pane says that it is being planned
LATE = "Planning the cuts of the changed bed …"
HELD = "The cuts are planned again when the slider is let go."
STOPPED = "The search for better plans is stopped."
BROKE_OFF = "The cuts could not be planned: a mistake of Bedwright's own."


class CuttingDesk(QObject):
    """Asks for plans, tells the pane, and takes what is ticked and kept into the design."""

    changed = Signal()  # other plans are shown
    rested = Signal()  # nothing better is looked for any more
    pieces_picked = Signal(object)  # pieces of the bed, as a tuple

    def __init__(self, session: Session, pane: CuttingPane, ways: Ways | None = None) -> None:
        super().__init__(session)
        self.session, self.pane = session, pane
        self._ways = ways
        self._search: Search | None = None
        self._is_paused = False  # by the maker
        self._trouble = ""  # why the last press was refused
        self._plans: dict[str, SawnPlan] = {}
        self._better: dict[str, SawnPlan] = {}  # for plans that are kept
        self._names: CutNames | None = None
        self._shown_bed: Bed | None = None
        self._found = Found(self)
        queued = Qt.ConnectionType.QueuedConnection
        self._found.first.connect(self._take_first, queued)
        self._found.better.connect(self._take_better, queued)
        self._found.reached.connect(self._tell_reached, queued)
        self._late = QTimer(self, singleShot=True, interval=PATIENCE)
        self._late.timeout.connect(lambda: pane.say_progress(LATE))
        session.changed.connect(lambda _: self.follow())
        session.history_moved.connect(self.follow)  # the hand is off the slider
        pane.seen.connect(self.follow)
        pane.left.connect(self.stop)
        pane.foot.stop_asked.connect(self.pause)
        pane.foot.go_on_asked.connect(self.go_on)
        pane.ticked.connect(self.tick)
        pane.offer_taken.connect(self.keep)
        pane.picked.connect(self._picked)
        pane.misfits.recut_taken.connect(self.recut)
        session.worker.leaving.connect(self.stop)

    @property
    def ways(self) -> Ways:
        """How cuts are planned and kept."""
        if self._ways is None:
            self._ways = built_in_ways()
        return self._ways

    # ------------------------------------------------------------ planning

    def follow(self) -> None:
        """Plan the open bed, if anybody looks."""
        session = self.session
        if not session.has_bed or not self.pane.isVisible():
            return
        if session.is_dragging:
            self.stop()
            self.pane.say_progress(HELD)
            return
        bed, unit = session.bed, session.unit
        if self._search is not None and self._search.answers(bed, unit):
            return
        self.stop()
        self._search = search = Search(bed, unit, goes_on=not self._is_paused)
        self._late.start()
        session.worker.ask(
            LANE, lambda: look(search, self.ways, self._found), lambda _: self._rest(search),
            lambda why: self._broke_off(search, why),
        )  # fmt: skip

    def stop(self) -> None:
        """Leave the search where it is; what it has found stays."""
        self._late.stop()
        if self._search is not None:
            self._search.is_stopped = True

    def pause(self) -> None:
        """Look no further, until the maker asks for it."""
        self._is_paused = True
        self.stop()
        self._say_search()

    def go_on(self) -> None:
        """Look for better plans again."""
        self._is_paused = False
        self.stop()
        self.follow()

    def _take_first(self, search: Search, first: First) -> None:
        if search is not self._search or search.bed is not self.session.bed:
            return
        self._late.stop()
        self._say_search()
        known, self._plans = self._plans, {}
        for plan in first.plans:
            self._plans[plan.key] = self._kept_if_better(known.get(plan.key), plan)
        self._names, self._shown_bed = first.names, search.bed
        self._better = {}
        self.pane.misfits.show_fit(first.fit)
        self._show()

    @staticmethod
    def _kept_if_better(known: SawnPlan | None, new: SawnPlan) -> SawnPlan:
        """What was found before for the same task, if it is no worse."""
        from model.cutting.merit import is_better

        if known is None or known.cut.plan.task != new.cut.plan.task or new.cut.is_stored:
            return new
        if known.cut.is_stored or known.unit != new.unit:
            return new
        return new if is_better(new.cut.plan, known.cut.plan) else known

    def _take_better(self, search: Search, plan: SawnPlan) -> None:
        if search is not self._search or search.bed is not self.session.bed:
            return
        from model.cutting.merit import is_better

        shown = self._plans.get(plan.key)
        # A plan that is kept may be of other stock than there is now, never of other pieces.
        if shown is None or not shown.cuts_the_same(plan):
            return
        best = self._better.get(plan.key, shown)
        if not is_better(plan.cut.plan, best.cut.plan):
            return
        if shown.cut.is_stored:
            self._better[plan.key] = plan
            self._offer()
        else:
            self._plans[plan.key] = plan
            self._show()

    def _rest(self, search: Search) -> None:
        if search is self._search and search.is_over and not self._trouble:
            self.pane.say_progress("")
        self.rested.emit()

    def _say_search(self, trouble: str = "") -> None:
        """Nothing of the search, unless the maker has stopped it; trouble stays until the next."""
        self._trouble = trouble
        if self._is_paused and not trouble:
            self.pane.say_progress(STOPPED, GO_ON)
        else:
            self.pane.say_progress(trouble)

    def _tell_reached(self, search: Search, place: int, count: int) -> None:
        if search is self._search and not search.is_stopped and not self._trouble:
            said = f"Looking for better plans … {place} of {count}"
            self.pane.say_progress(said, STOP)

    def _broke_off(self, search: Search, trouble: Exception) -> None:
        self._late.stop()
        self.session.worker.unexpected(trouble)
        if search is self._search:
            search.is_over = True
            self._say_search(BROKE_OFF)
            if not self._plans:
                self.pane.show_trouble(BROKE_OFF)
        self.rested.emit()

    # ------------------------------------------------------------ showing

    def _show(self) -> None:
        assert self._names is not None
        done = self.session.design.progress.cuts_done
        self.pane.show_plans(self._advised(), self._names, done, self.session.unit)
        self._offer()
        self.changed.emit()

    def _advised(self) -> tuple[SawnPlan, ...]:
        """The plans, told what could be had from what the others leave."""
        from model.shop.planed_down import planed_down

        assert self._names is not None
        plans, pieces = tuple(self._plans.values()), self._names.pieces.values()
        told = planed_down(self.session.design, pieces, [plan.cut for plan in plans])
        return tuple(
            plan if cut is plan.cut else replace(plan, cut=cut)
            for plan, cut in zip(plans, told, strict=True)
        )

    def _offer(self) -> None:
        """A plan can be kept; for one that is kept, a better one can be taken."""
        from model.cutting.merit import gain_words

        offers, done = {}, self.session.design.progress.cuts_done
        for key, plan in self._plans.items():
            if plan.is_begun:
                continue
            if not plan.cut.is_stored:
                offers[key] = ("", "Keep this plan")
            elif key in self._better and not plan.keys & done:
                gain = gain_words(self._better[key].cut.plan, plan.cut.plan)
                offers[key] = (f"A better plan is found: it {gain}.", "Take the better plan")
            else:
                offers[key] = ("This plan is kept with the design.", "")
        self.pane.offer(offers)

    # ------------------------------------------------------------ keeping and ticking

    def keep(self, key: str) -> None:
        """Keep a plan in the design, or the better one that is offered for it."""
        plan = self._better.get(key, self._plans.get(key))
        if plan is not None:
            self._take(lambda: self.ways.keep(self.session.bed, plan.cut))

    def tick(self, key: str, is_made: bool) -> None:
        """A cut is made, or is not after all."""
        plan = next((each for each in self._plans.values() if key in each.keys), None)
        if plan is not None:
            self._take(lambda: self.ways.tick(self.session.bed, plan.cut, key, is_made))

    def recut(self, offer: Recut) -> None:
        """A piece that no longer fits is put down for another part."""
        self._take(lambda: self.ways.recut(self.session.bed, offer))

    def _take(self, change: Callable[[], Design]) -> None:
        try:
            self.session.take(lambda _: change())
        except BedError as trouble:
            self._say_search(trouble.sentence)
            return
        self._shown_bed = self.session.bed  # the same pieces: only ticks and plans have moved
        self._show()

    # ------------------------------------------------------------ picking

    def pick(self, piece: int) -> None:
        """A piece of the bed is picked elsewhere; -1 for none."""
        names = self._names.of_bed_piece(piece) if self._names and piece >= 0 else ()
        self.pane.pick(names)

    def pick_all(self, pieces: Sequence[int]) -> None:
        """All pieces of a row of the parts list are picked."""
        named = self._names
        names = [name for p in pieces for name in named.of_bed_piece(p)] if named else []
        self.pane.pick(tuple(names))

    def _picked(self, name: str) -> None:
        piece = self._names.bed_piece(name) if self._names and name else -1
        is_open = self._shown_bed is self.session.bed
        if is_open:
            self.pieces_picked.emit((piece,) if piece >= 0 else ())
