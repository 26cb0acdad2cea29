"""One word of a short list, or one row of a table; long lists are searched by typing."""

from __future__ import annotations

from typing import Any

from PySide6.QtCore import QSignalBlocker, Qt
from PySide6.QtWidgets import QComboBox, QCompleter

from app.fields.field import INPUT_HEIGHT, Field
from app.fields.wording import row_name
from model.brief.declare import Choice

MANY = 15  # rows: more are searched, not scrolled through


class OptionField(Field):
    """One choice of several, shown by the names that the trade uses."""

    def build(self) -> None:
        self.box = QComboBox()
        self.box.setSizeAdjustPolicy(
            QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon
        )
        self._list_rows()
        if len(self.choice.keys) > MANY:
            self._make_searchable()
        self.box.activated.connect(self._take)
        is_wide = self.choice.table is not None  # names of rows are longer than words
        self.hold(self.box, row=int(is_wide), wide=is_wide)
        self.box.setMinimumHeight(INPUT_HEIGHT)
        self._heading.setBuddy(self.box)

    def offer(self, choice: Choice) -> None:
        """Other rows to pick from; what is picked stays."""
        self.choice = choice
        with QSignalBlocker(self.box):
            self.box.clear()
            self._list_rows()
        if not self.sentence:
            self.fill(self.value)

    def _list_rows(self) -> None:
        for key in self.choice.keys:
            name = row_name(self.choice, key)
            self.box.addItem(name[:1].upper() + name[1:], key)
            self.box.setItemData(self.box.count() - 1, name, Qt.ItemDataRole.ToolTipRole)
        self.box.view().setMinimumWidth(self.box.view().sizeHintForColumn(0) + 24)

    def fill(self, value: Any) -> None:
        with QSignalBlocker(self.box):
            self.box.setCurrentIndex(self.box.findData(value))
        if self.box.isEditable():
            self.box.lineEdit().setCursorPosition(0)

    def _make_searchable(self) -> None:
        self.box.setEditable(True)
        self.box.setInsertPolicy(QComboBox.InsertPolicy.NoInsert)
        completer = self.box.completer()
        completer.setFilterMode(Qt.MatchFlag.MatchContains)
        completer.setCompletionMode(QCompleter.CompletionMode.PopupCompletion)
        self.box.lineEdit().editingFinished.connect(self._read)

    def _read(self) -> None:
        """What was typed must be a row; otherwise the row in force comes back."""
        typed = self.box.lineEdit().text()
        found = self.box.findText(typed, Qt.MatchFlag.MatchFixedString)
        if found >= 0:
            self._take(found)
        elif typed.strip():
            self.say(
                f"No row is called “{typed.strip()}”. Type a part of a name, or pick from the list."
            )

    def _take(self, index: int) -> None:
        key = self.box.itemData(index)
        if key != self.value or self.sentence:
            self.say("")
            self.ask(key)
