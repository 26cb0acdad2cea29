"""A length with a slider below it: drag to see the bed follow, type to be exact."""

from __future__ import annotations

from typing import Any

from PySide6.QtCore import QSignalBlocker, Qt
from PySide6.QtWidgets import QSlider

from app.fields.length_field import LengthField
from app.fields.wording import full_label, value_text
from model.units import INCH

STEPS = {"mm": (1.0, 5.0), "inch": (INCH / 16, INCH / 4)}  # short ranges, long ranges
LONG = 400.0  # mm: over longer ranges one pixel of the slider is more than the fine step


class SliderField(LengthField):
    """One length under the maker's hand."""

    def build(self) -> None:
        super().build()
        self.slider = QSlider(Qt.Orientation.Horizontal)
        self.hold(self.slider, row=1, wide=True)
        self.slider.setAccessibleName(f"{full_label(self.choice)}, slider")
        self.slider.valueChanged.connect(self._slid)
        self.slider.sliderReleased.connect(lambda: self.settled.emit(self.choice.name))

    def show_unit(self, unit: str) -> None:
        with QSignalBlocker(self.slider):
            self.slider.setRange(0, self._count(unit))
            self.slider.setPageStep(max(1, self._count(unit) // 20))
        super().show_unit(unit)

    def fill(self, value: Any) -> None:
        super().fill(value)
        if not self.slider.isSliderDown():  # never pull the handle out of the maker's hand
            self._place(value)

    def show_value(self, value: Any) -> None:
        super().show_value(value)
        if self.sentence and not self.slider.isSliderDown():
            self._place(value)

    def _place(self, value: Any) -> None:
        with QSignalBlocker(self.slider):
            self.slider.setValue(round((value - self._low()) / self._step(self.unit)))

    def _slid(self, position: int) -> None:
        value = min(self._low() + position * self._step(self.unit), float(self.choice.most or 0.0))
        self.line.setText(self._text(value))
        if self.slider.isSliderDown():
            self.dragged.emit(self.choice.name, value)
        else:
            self.say("")
            self.ask(value)

    def _text(self, value: float) -> str:
        return value_text(self.choice, value, self.unit)

    def _step(self, unit: str) -> float:
        fine, coarse = STEPS[unit]
        return coarse if (self.choice.most or 0) - (self.choice.least or 0) > LONG else fine

    def _low(self) -> float:
        """The slider stands on whole steps, so that it gives 60" and not 59 63/64"."""
        step, least = self._step(self.unit), float(self.choice.least or 0.0)
        return -(-least // step) * step

    def _count(self, unit: str) -> int:
        step = self._step(unit)
        low = -(-float(self.choice.least or 0.0) // step) * step
        return int((float(self.choice.most or 0.0) - low) / step)
