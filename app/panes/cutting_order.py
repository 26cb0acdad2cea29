"""The cut order step by step: what to set, what to cut, what is cut already."""

from __future__ import annotations

from collections.abc import Collection

from PySide6.QtCore import QSignalBlocker, Qt, Signal
from PySide6.QtWidgets import (
    QCheckBox,
    QFrame,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QSizePolicy,
    QSlider,
    QVBoxLayout,
    QWidget,
)

from app.tables.cutting import setting_words
from model.drawings.cut_steps import SawnPlan

LARGER = 1.45  # the setting is read from the saw


class CuttingOrder(QFrame):
    """Back, next, and a slider over the cuts of one plan; a box to tick what is cut."""

    moved = Signal(int)  # place of the step shown
    ticked = Signal(str, bool)  # the key of the cut

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setProperty("kind", "help")
        self.sawn: SawnPlan | None = None
        self.done: Collection[str] = ()
        self.place = 0
        self.setting, self.detail, self.count = QLabel(), QLabel(), QLabel()
        self.back_button, self.next_button = QPushButton("Back"), QPushButton("Next")
        self.slider = QSlider(Qt.Orientation.Horizontal)
        self.slider.setAccessibleName("Cut")
        self.box = QCheckBox("This cut is made")
        self.box.setToolTip("Space ticks it and goes on to the next")
        for button in (self.back_button, self.next_button, self.box):
            button.setFocusPolicy(Qt.FocusPolicy.TabFocus)  # a press leaves the keys to the drawing
        font = self.setting.font()
        font.setPointSizeF(font.pointSizeF() * LARGER)
        font.setBold(True)
        self.setting.setFont(font)
        self.detail.setProperty("kind", "faint")
        self.count.setProperty("kind", "faint")
        for label in (self.setting, self.detail):
            label.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        self._lay_out()
        self.back_button.clicked.connect(lambda: self.step_by(-1))
        self.next_button.clicked.connect(lambda: self.step_by(1))
        self.slider.valueChanged.connect(self.go_to)
        self.box.clicked.connect(self.tick)

    def _lay_out(self) -> None:
        told = QHBoxLayout()
        told.addWidget(self.setting, 1)
        told.addWidget(self.count)
        keys = QHBoxLayout()
        for widget in (self.back_button, self.slider, self.next_button, self.box):
            keys.addWidget(widget, 1 if widget is self.slider else 0)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(8, 4, 8, 4)
        whole.setSpacing(2)
        whole.addLayout(told)
        whole.addWidget(self.detail)
        whole.addLayout(keys)

    # ------------------------------------------------------------ what is shown

    def show_plan(self, sawn: SawnPlan, done: Collection[str]) -> None:
        """Another plan starts at its first cut that is not made; the same one stays where it is."""
        is_other = self.sawn is None or self.sawn.cut.plan is not sawn.cut.plan
        self.sawn, self.done = sawn, done
        with QSignalBlocker(self.slider):
            self.slider.setRange(0, max(len(sawn.steps) - 1, 0))
        self.go_to(self.first_open() if is_other else self.place)

    def first_open(self) -> int:
        """The place of the first cut that is not made."""
        assert self.sawn is not None
        steps = enumerate(self.sawn.steps)
        last = max(len(self.sawn.steps) - 1, 0)
        return next((place for place, step in steps if step.key not in self.done), last)

    def go_to(self, place: int) -> None:
        """Show a step."""
        if self.sawn is None:
            return
        self.place = min(max(place, 0), max(len(self.sawn.steps) - 1, 0))
        with QSignalBlocker(self.slider):
            self.slider.setValue(self.place)
        self._tell()
        self.moved.emit(self.place)

    def step_by(self, steps: int) -> None:
        """Back or on."""
        self.go_to(self.place + steps)

    def go_to_cut(self, number: int) -> None:
        """Show the cut of this number."""
        steps = self.sawn.steps if self.sawn is not None else ()
        found = next((k for k, step in enumerate(steps) if step.number == number), None)
        if found is not None:
            self.go_to(found)

    def tick(self) -> None:
        """Tick the cut that is shown and go on to the next one, or take its tick back."""
        if self.sawn is None or not self.sawn.steps:
            return
        key = self.sawn.steps[self.place].key
        is_made = key not in self.done
        self.ticked.emit(key, is_made)
        if is_made and self.place < len(self.sawn.steps) - 1:
            self.step_by(1)

    def _tell(self) -> None:
        assert self.sawn is not None
        steps = self.sawn.steps
        for widget in (self.back_button, self.next_button, self.slider, self.box):
            widget.setEnabled(bool(steps))
        if not steps:
            self.setting.setText("No cuts.")
            self.detail.clear()
            self.count.clear()
            return
        step = steps[self.place]
        is_made = step.key in self.done
        where = f"{self.sawn.stock_word} {step.layout}"
        self.setting.setText(f"{setting_words(self.sawn.batches[step.batch])} – {where}")
        self.setting.setToolTip(self.setting.text())
        self.detail.setText(f"{step.detail[:1].upper()}{step.detail[1:]}")
        self.detail.setToolTip(self.detail.text())
        made = sum(each.key in self.done for each in steps)
        self.count.setText(f"cut {self.place + 1} of {len(steps)}, {made} made")
        self.back_button.setEnabled(self.place > 0)
        self.next_button.setEnabled(self.place < len(steps) - 1)
        with QSignalBlocker(self.box):
            self.box.setChecked(is_made)
