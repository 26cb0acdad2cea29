"""All that the maker can decide, by group, with a line to find a choice and a line of help."""

from __future__ import annotations

from typing import Any

from PySide6.QtCore import QCoreApplication, QEvent, QTimer, Signal
from PySide6.QtWidgets import (
    QFrame,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QPushButton,
    QScrollArea,
    QVBoxLayout,
    QWidget,
)

from app.fields.field import Field
from app.fields.group import Group, grouped
from app.fields.wording import full_label, help_text
from model.brief import all_choices
from model.materials import OwnRows

OPEN_AT_FIRST = ("Mattress", "Heights")
HELP_HEIGHT = 92


class ChoicesPane(QWidget):
    """Says what was asked for; shows what is in force and why a wish is not."""

    edited = Signal(str, object)
    dragged = Signal(str, object)
    settled = Signal(str)
    given_up = Signal(str)
    asked_why = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._choices = all_choices()
        self._values: dict[str, Any] = {}
        self._unit = "mm"
        self._opened: frozenset[str] = frozenset()  # headings open while nothing is searched
        self._is_searching = False
        self.find_line = QLineEdit(placeholderText="Find a choice")
        self.find_line.setAccessibleName("Find a choice")
        self.find_line.setClearButtonEnabled(True)
        self.find_line.textChanged.connect(self._search)
        self.changed_only = QPushButton("Changed", checkable=True)
        self.changed_only.setToolTip("Show only what differs from its default")
        self.changed_only.toggled.connect(self._search)
        self.groups = {
            title: Group(title, choices, self._dress)
            for title, choices in grouped(self._choices).items()
        }
        self._group_of = {c.name: g for g in self.groups.values() for c in g.choices}
        for group in self.groups.values():
            group.heading.toggled.connect(lambda on, g=group: self._make(g) if on else None)
        self._none_found = QLabel("No choice holds these words.", visible=False, margin=12)
        self._help = QLabel("Point at a choice to read what it is for.", wordWrap=True)
        self._help.setProperty("kind", "faint")
        self._lay_out()

    def _lay_out(self) -> None:
        top = QFrame()
        top.setProperty("kind", "strip")
        line = QHBoxLayout(top)
        line.setContentsMargins(8, 6, 8, 6)
        line.addWidget(self.find_line, 1)
        line.addWidget(self.changed_only)
        inside = QWidget()
        rows = QVBoxLayout(inside)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(0)
        for group in self.groups.values():
            rows.addWidget(group)
        rows.addWidget(self._none_found)
        rows.addStretch(1)
        self._scroll = QScrollArea(widgetResizable=True)
        self._scroll.setWidget(inside)
        foot = QFrame()
        foot.setProperty("kind", "help")
        foot.setFixedHeight(HELP_HEIGHT)
        told = QVBoxLayout(foot)
        told.setContentsMargins(8, 4, 8, 4)
        told.addWidget(self._help)
        told.addStretch(1)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(0)
        whole.addWidget(top)
        whole.addWidget(self._scroll, 1)
        whole.addWidget(foot)

    # ------------------------------------------------------------ shown

    def show_values(self, values: dict[str, Any], unit: str) -> None:
        """What is in force, in the shown unit."""
        first = not self._values
        moved = {n for n, v in values.items() if first or self._values.get(n) != v}
        unit_moved, self._unit = unit != self._unit, unit
        self._values = values
        for name, field in self.fields().items():
            if unit_moved:
                field.show_unit(unit)
            if name in moved:
                field.show_value(values[name])
        for group in {self._group_of[name] for name in moved}:
            group.count_changed(values)
        if first:
            for title in OPEN_AT_FIRST:
                self.groups[title].open()

    def offer(self, own: OwnRows) -> None:
        """The materials to pick from: those of the trade, and the maker's own."""
        self._choices = all_choices(own)
        for group in self.groups.values():
            group.offer(self._choices)

    def fields(self) -> dict[str, Field]:
        """The fields made so far."""
        return {n: f for group in self.groups.values() for n, f in group.fields.items()}

    def field(self, name: str) -> Field:
        """One field, made if need be."""
        group = self._group_of[name]
        self._make(group)
        return group.fields[name]

    def say(self, name: str, sentence: str) -> None:
        """Show a sentence beside the field that it is about."""
        if name in self._group_of:
            self.field(name).say(sentence)
            self._group_of[name].open()

    def calm(self, name: str) -> None:
        """The wish is in force, or given up."""
        if name in self._group_of:
            self.field(name).calm()

    def go_to(self, name: str) -> None:
        """Bring a field into view and give it the keyboard."""
        if name not in self._group_of:
            return
        self.changed_only.setChecked(False)
        self.find_line.clear()
        self._group_of[name].open()
        field = self.field(name)
        field.input().setFocus()
        self._help_for(name)
        QTimer.singleShot(0, field, lambda: self._bring_into_view(field))

    def _bring_into_view(self, field: Field) -> None:
        # Fields that were just made lie in layouts within layouts, each laid out by its own event.
        QCoreApplication.sendPostedEvents(None, QEvent.Type.LayoutRequest.value)
        self._scroll.ensureWidgetVisible(field, 0, 60)

    def _make(self, group: Group) -> None:
        group.make(self._unit, lambda name: self._values.get(name, self._choices[name].default))

    def _dress(self, field: Field) -> None:
        field.edited.connect(self.edited)
        field.dragged.connect(self.dragged)
        field.settled.connect(self.settled)
        field.given_up.connect(self.given_up)
        field.looked_at.connect(self._help_for)
        field.asked_why.connect(self.asked_why)

    def _help_for(self, name: str) -> None:
        choice = self._choices[name]
        self._help.setText(f"<b>{full_label(choice)}.</b> {help_text(choice, self._unit)}")

    # ------------------------------------------------------------ searching

    def _search(self) -> None:
        words, changed = self.find_line.text().casefold().split(), self.changed_only.isChecked()
        is_searching = bool(words) or changed
        if is_searching and not self._is_searching:
            self._opened = frozenset(
                title for title, group in self.groups.items() if group.heading.isChecked()
            )
        found = frozenset(n for n in self._choices if self._matches(n, words, changed))
        for title, group in self.groups.items():
            is_found = any(choice.name in found for choice in group.choices)
            group.open(is_found if is_searching else title in self._opened)
            group.keep(found)
        self._is_searching = is_searching
        self._none_found.setVisible(not found)

    def _matches(self, name: str, words: list[str], changed: bool) -> bool:
        choice = self._choices[name]
        if changed and self._values.get(name, choice.default) == choice.default:
            return False
        text = f"{full_label(choice)} {self._group_of[name].title} {choice.help}".casefold()
        return all(word in text for word in words)
