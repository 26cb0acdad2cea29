"""What is said about wishes that do not build: beside their fields and above the bed."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from PySide6.QtCore import QObject

from app.fields.wording import full_label, in_unit, value_text, within, works_text
from app.panes.choices_pane import ChoicesPane
from app.panes.refusal_banner import RefusalBanner
from model.brief import all_choices

if TYPE_CHECKING:
    from app.session import Refusal, Session

SEARCHING = "Looking for what would work …"


class Wishes(QObject):
    """Carries refusals from the session to the fields, and answers back."""

    def __init__(self, session: Session, choices: ChoicesPane, banner: RefusalBanner) -> None:
        super().__init__(session)
        self._session, self._choices, self._banner = session, choices, banner
        session.refused.connect(lambda name, _: self._tell(name))
        session.mended.connect(lambda name, _: self._tell(name))
        session.granted.connect(self._calm)
        banner.given_up.connect(session.give_up)
        banner.shown_field.connect(choices.go_to)
        banner.offer_taken.connect(self._take_offer)

    def _tell(self, name: str) -> None:
        refusal, unit = self._session.refusals[name], self._session.unit
        known = all_choices(self._session.design.own)
        sentence = in_unit(refusal.error.sentence, unit)
        offer = offer_text(refusal.mended, unit) if refusal.mended is not None else ""
        beside = f"{sentence} {offer}".strip()
        self._choices.say(name, beside)
        if self._session.is_dragging:
            return  # a banner that comes and goes would push the bed about under the hand
        wished = value_text(known[name], refusal.value, unit) or "as nominal"
        self._banner.tell(
            name,
            f"{full_label(known[name])} {wished} is not built; the last good bed stays on view.",
            sentence,
            offer or (SEARCHING if self._session.worker.is_busy("mend") else ""),
            can_use=bool(getattr(refusal.mended, "changes", None)),
        )

    def _calm(self, name: str) -> None:
        self._choices.calm(name)
        rest = next(reversed(self._session.refusals), None)
        if rest is None:
            self._banner.hide()
        else:
            self._tell(rest)

    def _take_offer(self, name: str) -> None:
        refusal: Refusal | None = self._session.refusals.get(name)
        if refusal is not None and refusal.mended is not None:
            changes = offered_changes(refusal.mended, self._session.unit)
            self._session.choose_all({name: refusal.value, **changes})


def offered_changes(mended: Any, unit: str) -> dict[str, Any]:
    """The changes that build; a length at the end of its range goes on a step inside it."""
    changes = dict(mended.changes)
    if mended.choice and mended.range is not None:
        low, high = within(all_choices()[mended.choice], *mended.range, unit)
        changes[mended.choice] = min(max(changes[mended.choice], low), high)
    return changes


def offer_text(mended: Any, unit: str) -> str:
    """The way out in the shown unit."""
    known = all_choices()
    if mended.choice:
        works = mended.range if mended.range is not None else mended.keys
        return works_text(known[mended.choice], works, unit)
    if mended.conflict:
        names = ", ".join(full_label(known[name]) for name in mended.conflict)
        return f"In conflict: {names}. With their defaults the bed builds."
    return ""
