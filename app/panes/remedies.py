"""What would make the picked check hold: asked for beside the window, offered below the checks."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from PySide6.QtCore import QObject

from app.panes.checks_pane import ChecksPane
from model.checks.record import Finding, Verdict

if TYPE_CHECKING:
    from app.session import Session
    from model.improve import Improvement

SEARCHING = "Looking for the smallest change that makes this hold …"
MADE = "Done: {change}. Undo takes it back."
LANE = "improve"


class Remedies(QObject):
    """Carries the picked check to the search, and its answer back to the pane.

    An answer is good for one bed; it is kept while that bed is on view, and dropped with it.
    """

    def __init__(self, session: Session, checks: ChecksPane) -> None:
        super().__init__(session)
        self._session, self._checks = session, checks
        self._answers: dict[tuple[str, str], Improvement | None] = {}
        self._asked: tuple[str, str] | None = None
        self._made: Improvement | None = None
        session.changed.connect(self._drop)
        session.history_moved.connect(self._follow)  # the hand is off the slider
        checks.picked.connect(self._follow)
        checks.remedy.taken.connect(self._take)

    @property
    def improvement(self) -> Improvement | None:
        """What is offered for the picked check."""
        finding = self._checks.finding
        return self._answers.get(_key(finding)) if finding is not None else None

    def _drop(self, _moved: Any = None) -> None:
        self._answers.clear()
        self._asked = None
        self._checks.remedy.tell("")

    def _follow(self, _finding: Finding | None = None) -> None:
        session, finding = self._session, self._checks.finding
        is_current = session.is_judged and not session.is_dragging and self._checks.isVisible()
        if finding is None or not is_current:
            self._checks.remedy.tell("")
        elif finding.verdict not in (Verdict.FAILS, Verdict.TIGHT):
            self._checks.remedy.tell(self._made_text(finding))
        elif _key(finding) in self._answers:
            self._offer(finding)
        elif self._asked != _key(finding):
            self._ask(finding)

    def _made_text(self, finding: Finding) -> str:
        """The change that was made just now, beside the check that it was made for."""
        made = self._made
        if made is None or any(self._session.design.value(n) != v for n, v in made.changes.items()):
            return ""
        keys = {_key(each) for each in (made.finding, made.then) if each is not None}
        return MADE.format(change=made.change) if _key(finding) in keys else ""

    # ------------------------------------------------------------ the search

    def _ask(self, finding: Finding) -> None:
        from model.improve import improvement

        bed, self._asked = self._session.bed, _key(finding)
        self._checks.remedy.tell(SEARCHING)

        def is_stale() -> bool:
            return self._session.bed is not bed or self._asked != _key(finding)

        def failed(trouble: Exception) -> None:
            if not is_stale():
                self._checks.remedy.tell("")
                self._session.worker.unexpected(trouble)

        self._session.worker.ask(
            LANE,
            lambda: improvement(bed, finding, is_stale),
            lambda found: None if is_stale() else self._answered(finding, found),
            failed,
        )

    def _answered(self, finding: Finding, found: Improvement | None) -> None:
        self._answers[_key(finding)] = found
        self._asked = None
        self._follow()

    def _offer(self, finding: Finding) -> None:
        from model.improve import NOTHING

        found = self._answers[_key(finding)]
        if found is None:
            self._checks.remedy.tell(NOTHING)
        else:
            self._checks.remedy.tell(found.sentence, found.change)

    def _take(self) -> None:
        found = self.improvement
        if found is not None:
            self._made = found
            self._checks.keep_in_view(found.then or found.finding)
            self._session.choose_all(found.changes)


def _key(finding: Finding) -> tuple[str, str]:
    return finding.id, finding.place
