"""The top line: the design's name, undo and redo, the shown unit, and the plan package."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import (
    QButtonGroup,
    QFrame,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QPushButton,
    QWidget,
)

UNITS = {"inch": "Inches", "mm": "Millimetres"}


class DesignStrip(QFrame):
    """What concerns the design as a whole."""

    renamed = Signal(str)
    unit_chosen = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setProperty("kind", "strip")
        self.name_line = QLineEdit()
        self.name_line.setAccessibleName("Name of the design")
        self.name_line.setToolTip("Name of the design: it stands on the plan's cover")
        self.name_line.setMaxLength(120)
        self.name_line.editingFinished.connect(self._rename)
        self.undo_button = QPushButton("Undo")
        self.redo_button = QPushButton("Redo")
        self.plan_button = QPushButton("Write plan package …")
        self.plan_button.setProperty("kind", "main")
        self._units = QButtonGroup(self)
        self._name = ""
        line = QHBoxLayout(self)
        line.setContentsMargins(8, 5, 8, 5)
        label = QLabel("Design")
        label.setBuddy(self.name_line)
        line.addWidget(label)
        line.addWidget(self.name_line, 2)
        line.addWidget(self.undo_button)
        line.addWidget(self.redo_button)
        line.addStretch(1)
        line.addWidget(QLabel("Shown in"))
        for unit, words in UNITS.items():
            button = QPushButton(words, checkable=True)
            button.clicked.connect(lambda _=False, u=unit: self.unit_chosen.emit(u))
            self._units.addButton(button, list(UNITS).index(unit))
            line.addWidget(button)
        line.addSpacing(12)
        line.addWidget(self.plan_button)

    def show_design(self, name: str, unit: str) -> None:
        """The design's name and unit."""
        self._name = name
        if not self.name_line.hasFocus() or not self.name_line.isModified():
            self.name_line.setText(name)
        self._units.button(list(UNITS).index(unit)).setChecked(True)

    def _rename(self) -> None:
        typed = self.name_line.text().strip()
        self.name_line.setModified(False)
        if typed and typed != self._name:
            self.renamed.emit(typed)
        else:
            self.name_line.setText(self._name)
