"""The line above the bed: where it is looked at from, what is shown, what is pulled out."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QActionGroup
from PySide6.QtWidgets import (
    QFrame,
    QHBoxLayout,
    QLabel,
    QMenu,
    QPushButton,
    QSizePolicy,
    QSlider,
    QWidget,
)

VIEWS = ("corner", "foot", "head", "left", "right", "above")
SHOWN = {  # words: what the view calls it, whether it is on at first
    "Mattress": ("mattress", True),
    "See through": ("see_through", False),
    "Dimensions": ("dimensions", True),
    "Shadow": ("shadow", True),
    "Parallel lines": ("parallel", False),
}
COLOURS = {
    "wood": "Wood as it is",
    "paint": "Painted",
    "assembly": "A colour for each assembly",
    "strength": "How hard each piece works",
}


class LookStrip(QFrame):
    """Says how the bed should be shown; knows nothing of the view."""

    looked_from = Signal(str)
    switched = Signal(str, bool)
    coloured = Signal(str)
    drawers_pulled = Signal(float)
    pulled_apart = Signal(float)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setProperty("kind", "strip")
        self.from_button = _menu_button("Look from")
        for view in VIEWS:
            words = {"above": "Above", "corner": "A corner"}.get(view, f"The {view}")
            self.from_button.menu().addAction(words, lambda v=view: self.looked_from.emit(v))
        self.show_button = _menu_button("Show")
        self.actions_by_name = {}
        for words, (name, is_on) in SHOWN.items():
            action = self.show_button.menu().addAction(words)
            action.setCheckable(True)
            action.setChecked(is_on)
            action.toggled.connect(lambda on, n=name: self.switched.emit(n, on))
            self.actions_by_name[name] = action
        self._offer_colours()
        self.drawers_slider = _share_slider("Drawers pulled out")
        self.apart_slider = _share_slider("Assemblies pulled apart")
        self.drawers_slider.valueChanged.connect(lambda n: self.drawers_pulled.emit(n / 100))
        self.apart_slider.valueChanged.connect(lambda n: self.pulled_apart.emit(n / 100))
        self.picked_label = QLabel()
        self.picked_label.setProperty("kind", "faint")
        self.picked_label.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        line = QHBoxLayout(self)
        line.setContentsMargins(8, 4, 8, 4)
        for widget in (self.from_button, self.show_button):
            line.addWidget(widget)
        for words, slider in (("Drawers out", self.drawers_slider), ("Apart", self.apart_slider)):
            line.addSpacing(6)
            line.addWidget(QLabel(words))
            line.addWidget(slider)
        line.addSpacing(10)
        line.addWidget(self.picked_label, 1)

    def _offer_colours(self) -> None:
        menu = self.show_button.menu()
        menu.addSeparator()
        self.colours = QActionGroup(self)
        for name, words in COLOURS.items():
            action = menu.addAction(words)
            action.setCheckable(True)
            action.setChecked(name == "wood")
            action.triggered.connect(lambda _=False, n=name: self.coloured.emit(n))
            self.colours.addAction(action)

    def choose_colour(self, name: str) -> None:
        """Colour the bed in one of these ways, as if it had been picked from the menu."""
        self.colours.actions()[list(COLOURS).index(name)].trigger()

    def say_picked(self, words: str) -> None:
        """Name the piece that is picked, or what a click would do."""
        self.picked_label.setText(words)
        self.picked_label.setToolTip(words)


def _menu_button(words: str) -> QPushButton:
    button = QPushButton(words)
    button.setMenu(QMenu(button))
    return button


def _share_slider(name: str) -> QSlider:
    slider = QSlider(Qt.Orientation.Horizontal)
    slider.setRange(0, 100)
    slider.setFixedWidth(90)
    slider.setAccessibleName(name)
    slider.setToolTip(name)
    return slider
