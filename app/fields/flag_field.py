"""Yes or no."""

from __future__ import annotations

from typing import Any

from PySide6.QtCore import QSignalBlocker
from PySide6.QtWidgets import QCheckBox

from app.fields.field import Field


class FlagField(Field):
    """One box to tick."""

    def build(self) -> None:
        self.box = QCheckBox("yes")
        self.box.clicked.connect(self.ask)
        self.hold(self.box)

    def fill(self, value: Any) -> None:
        with QSignalBlocker(self.box):
            self.box.setChecked(bool(value))
