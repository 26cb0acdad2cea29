"""A second line above the bed while it shows its strength: under which load, and how far bent."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QSignalBlocker, Signal
from PySide6.QtWidgets import QComboBox, QFrame, QHBoxLayout, QLabel, QSizePolicy, QWidget

ALL_LOADS = ("", "The worst of all loads")
# Times that movement is drawn, as the view knows them: below nought is as often as lets it be seen.
MOVEMENT = {
    "so that it is seen": -1.0,
    "not at all": 0.0,
    "at its true size": 1.0,
    **{f"{times} times": float(times) for times in (2, 5, 10, 20, 50, 100, 200, 500)},
}


class StrengthStrip(QFrame):
    """Says which load and how much of its movement; knows nothing of the view."""

    load_chosen = Signal(str)  # the key of a load case, "" for the worst of all
    movement_chosen = Signal(float)  # times

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setProperty("kind", "strip")
        self.load_box, self.move_box = _box("Load that is shown"), _box("Movement drawn")
        self.load_box.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.load_box.setMinimumContentsLength(18)
        self.load_box.setMaximumWidth(460)
        for words, times in MOVEMENT.items():
            self.move_box.addItem(words, times)
        line = QHBoxLayout(self)
        line.setContentsMargins(8, 3, 8, 3)
        for words, box, stretch in (
            ("Load", self.load_box, 20),
            ("Movement drawn", self.move_box, 0),
        ):
            label = QLabel(words)
            label.setBuddy(box)
            line.addWidget(label)
            line.addWidget(box, stretch)
            line.addSpacing(8)
        line.addStretch(1)
        self.offer([ALL_LOADS])
        self.load_box.currentIndexChanged.connect(self._tell_load)
        self.move_box.currentIndexChanged.connect(
            lambda: self.movement_chosen.emit(self.move_box.currentData())
        )

    def offer(self, loads: Sequence[tuple[str, str]]) -> None:
        """The load cases of another bed, key and title; what was chosen stays if it has it."""
        offered = [ALL_LOADS, *(load for load in loads if load != ALL_LOADS)]
        box = self.load_box
        if offered == [(box.itemData(k), box.itemText(k)) for k in range(box.count())]:
            return
        kept = box.currentData()
        with QSignalBlocker(box):
            box.clear()
            for key, title in offered:
                box.addItem(title, key)
            box.setCurrentIndex(max(box.findData(kept), 0))
        self._follow()

    def choose_load(self, key: str) -> None:
        """Show the load that was chosen elsewhere."""
        with QSignalBlocker(self.load_box):
            self.load_box.setCurrentIndex(max(self.load_box.findData(key), 0))
        self._follow()

    def _tell_load(self) -> None:
        self._follow()
        self.load_chosen.emit(self.load_box.currentData())

    def _follow(self) -> None:
        """Of all loads together there is no one shape: each piece is at its worst in another."""
        is_one = bool(self.load_box.currentData())
        self.move_box.setEnabled(is_one)
        self.move_box.setToolTip("" if is_one else "Choose one load to see the bed move under it")


def _box(name: str) -> QComboBox:
    box = QComboBox()
    box.setAccessibleName(name)
    return box
