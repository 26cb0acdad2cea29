"""Works out beside the window what the bed carries, and tells the view and the pane.

Only while one of them is looked at, and only of the bed that is open: an answer for another bed
is dropped.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, NamedTuple

from PySide6.QtCore import QObject, QTimer, Signal

from app.panes.look_strip import LookStrip
from app.panes.strength_pane import StrengthPane
from app.panes.strength_strip import StrengthStrip
from app.session import Session
from model.brief.words import in_unit
from model.structure.record import Unjudged
from model.structure.worst import shares, worst_loads

if TYPE_CHECKING:
    from app.view.bed_view import BedView
    from model.bed import Bed
    from model.structure.bent import Body
    from model.structure.record import Carried

LANE = "strength"
PATIENCE = 300  # ms until the pane says that it is being worked out
BROKE_OFF = "What it carries could not be worked out: a mistake of Bedwright's own."


class Answer(NamedTuple):
    """What a bed carries, and its frame ready to be bent; or the sentence that says why not."""

    bed: Bed
    carried: Carried | None = None
    body: Body | None = None
    trouble: str = ""


def strength_of(bed: Bed) -> Answer:
    """Takes longer than a frame: asked for beside the window."""
    from model.solids.mesh import bed_mesh
    from model.structure.bent import body

    strength = bed.strength
    if isinstance(strength, Unjudged):
        return Answer(bed, trouble=strength.sentence)
    shares(strength)  # kept with it
    return Answer(bed, strength, body(bed_mesh(bed.pieces, bed.parts), strength))


class StrengthDesk(QObject):
    """Keeps view, strip and pane on the same bed, the same load and the same pick."""

    changed = Signal()  # view and pane know another bed's strength, or that there is none

    def __init__(
        self, session: Session, view: BedView, pane: StrengthPane, strip: StrengthStrip,
        look: LookStrip,
    ) -> None:  # fmt: skip
        super().__init__(session)
        self.session, self.view, self.pane, self.strip, self.look = session, view, pane, strip, look
        self._known: Answer | None = None
        self._other_colour = "wood"  # what the bed goes back to
        self._late = QTimer(self, singleShot=True, interval=PATIENCE)
        self._late.timeout.connect(pane.show_late)
        strip.hide()
        session.changed.connect(self.follow)
        session.waits_for = LANE
        pane.seen.connect(self.follow)
        look.coloured.connect(self._colour)
        pane.shown_on_bed.connect(self.show_on_bed)
        strip.movement_chosen.connect(lambda times: view.show_load(times=times))
        for source in (strip.load_chosen, pane.load_chosen):
            source.connect(self.show_load)

    @property
    def is_wanted(self) -> bool:
        """Whether anything that shows strength is looked at."""
        return self.view.is_by_strength or self.pane.isVisible()

    def follow(self, _moved: Any = None) -> None:
        """Find out what the open bed carries, if anybody wants to know."""
        if not self.is_wanted or not self.session.has_bed:
            return
        bed = self.session.bed
        if not self._late.isActive():
            self._late.start()
        if self._known is not None and self._known.bed is bed:
            self._tell(self._known)
            return
        self.session.worker.ask(
            LANE, lambda: strength_of(bed), self._tell, lambda why: self._broke_off(bed, why)
        )

    def show_on_bed(self, is_on: bool) -> None:
        """Colour the bed by its strength, or as it was before."""
        self.look.choose_colour("strength" if is_on else self._other_colour)

    def show_load(self, key: str) -> None:
        """Show one load case everywhere."""
        self.view.show_load(key)
        self.strip.choose_load(key)
        self.pane.choose_load(key)

    def _colour(self, what: str) -> None:
        is_on = what == "strength"
        if not is_on:
            self._other_colour = what
        self.strip.setVisible(is_on)
        self.pane.press_bed_button(is_on)
        if is_on:
            self.follow()

    def _tell(self, found: Answer) -> None:
        bed = self.session.bed
        if found.bed is not bed:
            return
        self._known = found
        self._late.stop()
        if found.carried is None or found.body is None:
            self.view.show_no_strength(bed, found.trouble)
            self.pane.show_trouble(found.trouble)
        else:
            self.view.show_strength(bed, found.carried, found.body)
            worst = [found.carried.cases[each.case] for each in worst_loads(found.carried)]
            unit = self.session.unit
            self.strip.offer([(case.key, in_unit(case.title, unit)) for case in worst])
            self.pane.show_carried(bed, found.carried, unit)
        self.changed.emit()

    def _broke_off(self, bed: Bed, trouble: Exception) -> None:
        self.session.worker.unexpected(trouble)
        self._tell(Answer(bed, trouble=BROKE_OFF))
