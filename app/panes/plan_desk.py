"""Lays out the plan set of the open bed beside the window, while it is looked at.

The page on view comes first, within a frame or two where it needs no cutting plans; the list of all
pages follows, once no slider is dragged. The last good page stays until the next one is there.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Qt, QTimer, Signal

from app.panes.plan_pane import PlanPane
from app.panes.plan_turn import COVER, Listed, Turn, early_page, listed, page_meanwhile
from app.session import Session

if TYPE_CHECKING:
    from model.planset.page import Page

PAGE_LANE, LIST_LANE = "page of the plan set", "list of the plan set"
PATIENCE = 400  # ms until the pane says what it waits for
LATE = "Planning the cuts, which the list of pages goes by …"
HELD = "The list of pages follows when the slider is let go."
BROKE_OFF = "The plan set could not be laid out: a mistake of Bedwright's own."


class _Post(QObject):
    """Carries pages from the worker's thread to the window's, even while newer work waits."""

    drawn = Signal(object, str, object)  # Turn, the key asked for, Page


class PlanDesk(QObject):
    """Keeps list, page and pick on the open bed."""

    shown = Signal()  # another page, or the same one drawn anew
    known = Signal()  # the list is that of the open bed
    pieces_picked = Signal(object)  # pieces of the bed, as a tuple

    def __init__(self, session: Session, pane: PlanPane) -> None:
        super().__init__(session)
        self.session, self.pane = session, pane
        self.listed: Listed | None = None  # the last list, of the open bed or of one before
        self.page_bed: object = None  # the bed whose page is on view
        self._turn: Turn | None = None
        self._is_listing = False
        self._picked: tuple[int, ...] = ()
        self._then: Callable[[Listed], None] | None = None
        self._post = _Post(self)
        self._post.drawn.connect(self._take_page, Qt.ConnectionType.QueuedConnection)
        self._late = QTimer(self, singleShot=True, interval=PATIENCE)
        self._late.timeout.connect(lambda: pane.foot.say(LATE))
        session.changed.connect(lambda _: self.follow())
        session.history_moved.connect(self.follow)  # the hand is off the slider
        session.judged_after = PAGE_LANE
        session.worker.leaving.connect(self.stop)
        pane.seen.connect(self.follow)
        pane.page_asked.connect(self._ask_page)
        pane.picked.connect(self._pick_on_page)
        pane.page.told = self._told

    # ------------------------------------------------------------ following the bed

    @property
    def is_known(self) -> bool:
        """Whether the list is that of the open bed."""
        return self.listed is not None and self.listed.turn.bed is self.session.bed

    def follow(self) -> None:
        """Lay out the open bed, if anybody looks."""
        session = self.session
        if not session.has_bed or not self.pane.isVisible():
            return
        if self._turn is None or self._turn.bed is not session.bed:
            self.stop()
            self._turn, self._is_listing = Turn(session.bed), False
            self._ask_early(self._turn)
        elif not self._is_listing and not self.session.worker.is_busy(PAGE_LANE):
            self._ask_list(self._turn)

    def stop(self) -> None:
        """Nobody wants to know the list any more."""
        self._late.stop()
        if self._turn is not None:
            self._turn.breath.stop()

    def when_known(self, then: Callable[[Listed], None]) -> None:
        """Do something with the list of the open bed: now, or as soon as it is there."""
        if self.listed is not None and self.is_known:
            then(self.listed)
        else:
            self._then = then
            self.pane.foot.say(LATE)
            self.follow()

    def _ask_early(self, turn: Turn) -> None:
        key, last = self.pane.key or COVER, self.listed

        def work() -> None:
            self._send(turn, key, early_page(turn, key, last))

        self.session.worker.ask(
            PAGE_LANE, work, lambda _: self._ask_list(turn), lambda why: self._broke_off(turn, why)
        )

    def _ask_list(self, turn: Turn) -> None:
        if turn is not self._turn or self._is_listing:
            return
        if self.session.is_dragging:
            self.pane.foot.say(HELD)
            return
        self._is_listing = True
        self._late.start()
        self.session.worker.ask(
            LIST_LANE, lambda: listed(turn), self._take_list, lambda why: self._broke_off(turn, why)
        )

    def _take_list(self, found: Listed | None) -> None:
        if found is None or found.turn is not self._turn:
            return
        self._late.stop()
        self.listed = found
        self.pane.foot.say("")
        self.pane.show_pages(found.rows)
        self._ask_page(self.pane.key)
        self.known.emit()
        then, self._then = self._then, None
        if then is not None:
            then(found)

    # ------------------------------------------------------------ pages

    def _ask_page(self, key: str) -> None:
        last, turn = self.listed, self._turn
        if last is None or turn is None:
            return

        def work() -> None:
            if last.turn is turn:
                self._send(turn, key, turn.planset.page(last.place(key)))
            else:
                self._send(turn, key, page_meanwhile(turn, key, last))

        self.session.worker.ask(
            PAGE_LANE, work, lambda _: self._ask_list(turn), lambda why: self._broke_off(turn, why)
        )

    def _send(self, turn: Turn, key: str, page: Page | None) -> None:
        if page is not None:
            self._post.drawn.emit(turn, key, page)

    def _take_page(self, turn: Turn, key: str, page: Page) -> None:
        """A page that another change has overtaken is still newer than the one on view."""
        if key != (self.pane.key or COVER):
            return
        self.page_bed = turn.bed
        if page != self.pane.page.page:
            self.pane.show_page(page)
        self._light()
        self.shown.emit()

    def _broke_off(self, turn: Turn, trouble: Exception) -> None:
        self.session.worker.unexpected(trouble)
        if turn is self._turn:
            self._late.stop()
            self._then = None
            self.pane.foot.say(BROKE_OFF, is_trouble=True)

    # ------------------------------------------------------------ picking

    def pick(self, piece: int) -> None:
        """A piece of the bed is picked elsewhere; -1 for none."""
        self.pick_all((piece,) if piece >= 0 else ())

    def pick_all(self, pieces: tuple[int, ...]) -> None:
        """All pieces of a row of the parts list are picked."""
        self._picked = tuple(pieces)
        self._light()

    def _light(self) -> None:
        """Only what is of the open bed: in another one numbers stand for other pieces."""
        is_open = self.listed is not None and self.is_known
        self.pane.light(self.listed.abouts(self._picked) if is_open and self.listed else ())

    def _pick_on_page(self, about: str) -> None:
        if self.listed is not None and self.is_known:
            self._picked = self.listed.pieces(about) if about else ()
            self.pane.page.light(self.listed.abouts(self._picked))
            self.pieces_picked.emit(self._picked)

    def _told(self, about: str) -> str:
        """What the note of a piece on the page says."""
        name = about.partition("/")[2]
        mark = name.rpartition("-")[0].partition("/")[0]
        marks = self.session.bed.marks if self.session.has_bed else ()
        part = next((each.name for each in marks if each.mark == mark), "")
        return f"{name} {part}".strip()
