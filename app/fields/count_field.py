"""A whole number with a step up and a step down."""

from __future__ import annotations

from typing import Any

from PySide6.QtCore import QLocale, QSignalBlocker
from PySide6.QtWidgets import QSpinBox

from app.fields.field import Field
from app.fields.wording import outside_text

ROOM = 999  # beyond the range, so that a number outside it can be typed and answered


class CountField(Field):
    """One count."""

    def build(self) -> None:
        self.box = QSpinBox()
        self.box.setLocale(QLocale.c())
        self.box.setKeyboardTracking(False)  # typing 12 is one change, not two
        self.box.setRange(-ROOM, ROOM)
        self.box.valueChanged.connect(self._take)
        self.hold(self.box)
        self.box.lineEdit().installEventFilter(self)

    def fill(self, value: Any) -> None:
        with QSignalBlocker(self.box):
            self.box.setValue(int(value))

    def _take(self, value: int) -> None:
        outside = outside_text(self.choice, value, self.unit)
        self.say(outside)
        if not outside:
            self.ask(value)
