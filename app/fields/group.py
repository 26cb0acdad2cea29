"""Choices that belong together, under a heading that opens and closes; made when first opened."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from typing import Any

from PySide6.QtCore import QSize, Qt
from PySide6.QtWidgets import QSizePolicy, QToolButton, QVBoxLayout, QWidget

from app.fields.field import Field
from app.fields.make import field_for
from app.fields.measured_field import MEASURED
from app.fields.option_field import OptionField
from model.brief.declare import Choice

PLACES = {"left": "Left side", "right": "Right side", "foot": "Foot end", "head": "Head end"}


def grouped(choices: Mapping[str, Choice]) -> dict[str, tuple[Choice, ...]]:
    """Choices by heading: those of a side or end by place, all others by topic.

    A measured size stands right below the nominal one that it replaces.
    """
    found: dict[str, list[Choice]] = {}
    for choice in choices.values():
        scope = choice.name.rpartition(".")[0]
        found.setdefault(PLACES.get(scope, choice.topic), []).append(choice)
    return {title: tuple(_paired(group)) for title, group in found.items()}


def _paired(group: list[Choice]) -> Iterable[Choice]:
    names = {choice.name for choice in group}
    by_name = {choice.name: choice for choice in group}
    for choice in group:
        if choice.name.removesuffix(MEASURED) in names - {choice.name}:
            continue
        yield choice
        if choice.name + MEASURED in names:
            yield by_name[choice.name + MEASURED]


class Group(QWidget):
    """One heading and its fields."""

    def __init__(
        self, title: str, choices: tuple[Choice, ...], dressed: Callable[[Field], None]
    ) -> None:
        super().__init__()
        self.title, self.choices = title, choices
        self.fields: dict[str, Field] = {}
        self._dressed = dressed  # tells the pane of each new field
        self.heading = QToolButton(checkable=True)
        self.heading.setProperty("kind", "heading")
        self.heading.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonTextBesideIcon)
        self.heading.setIconSize(QSize(10, 10))
        self.heading.setArrowType(Qt.ArrowType.RightArrow)
        self.heading.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.heading.toggled.connect(self._open)
        self._body = QWidget()
        self._body.setVisible(False)
        self._rows = QVBoxLayout(self._body)
        self._rows.setContentsMargins(10, 2, 8, 10)
        self._rows.setSpacing(3)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(0)
        whole.addWidget(self.heading)
        whole.addWidget(self._body)
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Maximum)
        self.count_changed({})

    def open(self, is_open: bool = True) -> None:
        """Show the fields, or only the heading."""
        self.heading.setChecked(is_open)

    def make(self, unit: str, design_value: Callable[[str], Any]) -> None:
        """Make the fields, if that has not been done."""
        if self.fields:
            return
        for choice in self.choices:
            field = field_for(choice, unit)
            self.fields[choice.name] = field
            self._rows.addWidget(field)
            self._dressed(field)
            field.show_value(design_value(choice.name))

    def offer(self, known: Mapping[str, Choice]) -> None:
        """Other materials to pick from, in the fields that are made and in those to come."""
        self.choices = tuple(known[choice.name] for choice in self.choices)
        for choice in self.choices:
            field = self.fields.get(choice.name)
            if choice.takes_own and isinstance(field, OptionField):
                field.offer(choice)

    def keep(self, names: frozenset[str]) -> None:
        """Show only these fields; no heading where there is none of them."""
        for name, field in self.fields.items():
            field.setVisible(name in names)
        self.setVisible(any(choice.name in names for choice in self.choices))

    def count_changed(self, values: Mapping[str, Any]) -> None:
        """Say in the heading how many choices differ from their defaults."""
        changed = sum(values.get(c.name, c.default) != c.default for c in self.choices)
        self.heading.setText(f"{self.title}   · {changed} changed" if changed else self.title)
        self.heading.setAccessibleName(f"{self.title}, {changed} changed from default")

    def _open(self, is_open: bool) -> None:
        self.heading.setArrowType(Qt.ArrowType.DownArrow if is_open else Qt.ArrowType.RightArrow)
        self._body.setVisible(is_open)
