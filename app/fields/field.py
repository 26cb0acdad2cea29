"""What every field has: a label, the sentence below it, and the way back to its default."""

from __future__ import annotations

from typing import Any

from PySide6.QtCore import QEvent, QObject, Qt, Signal
from PySide6.QtGui import QMouseEvent
from PySide6.QtWidgets import QGridLayout, QLabel, QSizePolicy, QToolButton, QWidget

from app.fields.wording import full_label, help_text
from model.brief.declare import Choice

INPUT_WIDTH, INPUT_HEIGHT = 128, 26


class Field(QWidget):
    """Shows one choice and says what was asked for; it decides nothing.

    While a sentence stands below it, the field keeps what was typed; `calm` shows what is in force.
    """

    edited = Signal(str, object)  # name, value in mm, count, yes-or-no or key
    dragged = Signal(str, object)  # the same while the hand is on the slider
    settled = Signal(str)  # the hand is off
    given_up = Signal(str)  # the maker takes a refused value back
    looked_at = Signal(str)  # it has the keyboard, or the mouse rests on it
    asked_why = Signal(str)  # its label was clicked: what hangs on it?

    def __init__(self, choice: Choice, unit: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.choice, self.unit = choice, unit
        self.value: Any = choice.default
        self.sentence = ""
        self._heading = QLabel(choice.label)
        self._heading.setWordWrap(True)
        self._heading.setCursor(Qt.CursorShape.WhatsThisCursor)
        self._back = QToolButton(text="↺", visible=False)
        self._back.setProperty("kind", "back")
        self._back.setFixedSize(20, 20)
        self._back.clicked.connect(self.go_back_to_default)
        self._said = QLabel(wordWrap=True, visible=False)
        self._said.setProperty("kind", "refusal")
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 2, 0, 2)
        self._grid.setHorizontalSpacing(4)
        self._grid.setVerticalSpacing(1)
        self._grid.setColumnStretch(0, 1)
        self._grid.addWidget(self._heading, 0, 0)
        self._grid.addWidget(self._back, 0, 1)
        self._grid.addWidget(self._said, 3, 0, 1, 3)
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Maximum)
        self.build()
        self.show_unit(unit)

    def build(self) -> None:
        """Make the input and `hold` it."""
        raise NotImplementedError

    def hold(self, widget: QWidget, *, row: int = 0, wide: bool = False) -> None:
        """Place the input, name it for those who do not see it, and watch its focus."""
        widget.setAccessibleName(full_label(self.choice))
        widget.setAccessibleDescription(self.choice.help)
        if wide:
            self._grid.addWidget(widget, row, 0, 1, 3)
        else:
            widget.setFixedWidth(INPUT_WIDTH)
            widget.setMinimumHeight(INPUT_HEIGHT)
            self._grid.addWidget(widget, row, 2, Qt.AlignmentFlag.AlignTop)
        if row == 0:
            self._heading.setBuddy(widget)
        widget.installEventFilter(self)

    def input(self) -> QWidget:
        """The widget that takes the keyboard."""
        return self._heading.buddy()

    # ------------------------------------------------------------ shown

    def show_value(self, value: Any) -> None:
        """The value in force; what was typed stays while a sentence stands below."""
        self.value = value
        self._back.setVisible(value != self.choice.default)
        if not self.sentence:
            self.fill(value)

    def show_unit(self, unit: str) -> None:
        """Lengths are shown and read in another unit from now on."""
        self.unit = unit
        told = help_text(self.choice, unit)
        self.setToolTip(f"<p>{told}</p>")
        self._back.setToolTip("Back to the default")
        self._back.setAccessibleName(f"{full_label(self.choice)}: back to the default")
        if not self.sentence:
            self.fill(self.value)

    def fill(self, value: Any) -> None:
        """Put a value into the input without asking for it."""
        raise NotImplementedError

    def say(self, sentence: str) -> None:
        """What was asked for is not in force, and why."""
        self.sentence = sentence
        self._said.setText(sentence)
        self._said.setVisible(bool(sentence))
        widget = self.input()
        widget.setProperty("refused", bool(sentence))
        widget.style().polish(widget)

    def calm(self) -> None:
        """Nothing is refused: show what is in force."""
        self.say("")
        self.fill(self.value)

    # ------------------------------------------------------------ asked

    def ask(self, value: Any) -> None:
        """Say what was asked for, if it is not in force already."""
        if value == self.value:
            self.take_back()
        else:
            self.edited.emit(self.choice.name, value)

    def go_back_to_default(self) -> None:
        """Ask for the default."""
        self.say("")
        self.ask(self.choice.default)

    def take_back(self) -> None:
        """Give up what was typed."""
        self.calm()
        self.given_up.emit(self.choice.name)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if event.type() == QEvent.Type.FocusIn:
            self.looked_at.emit(self.choice.name)
        elif event.type() == QEvent.Type.Wheel and not self.input().hasFocus():
            event.ignore()  # rolling through the pane must not change the bed
            return True
        return super().eventFilter(watched, event)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        if self._heading.geometry().contains(event.position().toPoint()):
            self.asked_why.emit(self.choice.name)
        super().mousePressEvent(event)

    def enterEvent(self, event: Any) -> None:
        self.looked_at.emit(self.choice.name)
        super().enterEvent(event)
