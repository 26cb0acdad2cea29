"""A length as makers write it: fractions, feet, mm, small sums; an unreadable one is kept."""

from __future__ import annotations

from typing import Any

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QLineEdit

from app.fields.field import Field
from app.fields.wording import outside_text, value_text
from model.errors import BadInput
from model.read_length import parse_length


class TextInput(QLineEdit):
    """A line that gives its text up on Escape and selects all when it is entered."""

    def __init__(self, field: LengthField) -> None:
        super().__init__(field)
        self._field = field
        self.setAlignment(Qt.AlignmentFlag.AlignRight)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Escape and (self.isModified() or self._field.sentence):
            self._field.take_back()
        else:
            super().keyPressEvent(event)

    def focusInEvent(self, event: Any) -> None:
        super().focusInEvent(event)
        if event.reason() in (Qt.FocusReason.TabFocusReason, Qt.FocusReason.BacktabFocusReason):
            self.selectAll()


class LengthField(Field):
    """One length, shown in the maker's unit and read in any."""

    def build(self) -> None:
        self.line = TextInput(self)
        self.line.editingFinished.connect(self._take)
        self.hold(self.line)

    def fill(self, value: Any) -> None:
        self.line.setText(value_text(self.choice, value, self.unit))
        self.line.setModified(False)

    def _take(self) -> None:
        if not self.line.isModified():
            return
        self.line.setModified(False)
        try:
            value = self.read(self.line.text())
        except BadInput as trouble:
            self.say(trouble.sentence)
            return
        outside = "" if value is None else outside_text(self.choice, value, self.unit)
        if outside:
            self.say(outside)
        else:
            self.say("")
            self.ask(value)

    def read(self, text: str) -> float | None:
        """The text as mm. Refused: a sentence that says what is not understood."""
        return parse_length(text, self.unit, self.choice.name)
