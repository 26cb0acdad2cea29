"""How the panes lie: choices at the left, the bed beside them, lists and reasons below it."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QSplitter, QTabWidget, QVBoxLayout, QWidget

CHOICES_WIDTH, WHY_WIDTH = 318, 280
VIEW_SHARE, LISTS_SHARE = 54, 46
ALL = 10_000  # px, more than there are


def stacked(*panes: QWidget) -> QWidget:
    """Panes on top of each other; the last one takes what room is left."""
    whole = QWidget()
    layout = QVBoxLayout(whole)
    layout.setContentsMargins(0, 0, 0, 0)
    layout.setSpacing(0)
    for pane in panes[:-1]:
        layout.addWidget(pane)
    layout.addWidget(panes[-1], 1)
    return whole


class Workbench(QSplitter):
    """The splitters between the panes; every pane can be made larger, none can be lost."""

    def __init__(self, choices: QWidget, bed: QWidget, lists: QTabWidget, why: QWidget) -> None:
        super().__init__(Qt.Orientation.Horizontal)
        self.below = _splitter(Qt.Orientation.Horizontal, lists, why)
        self.right = _splitter(Qt.Orientation.Vertical, bed, self.below)
        for part in (choices, self.right):
            self.addWidget(part)
        self.setChildrenCollapsible(False)
        choices.setMinimumWidth(260)
        lists.setMinimumSize(320, 150)
        why.setMinimumWidth(180)
        bed.setMinimumHeight(200)
        self.setStretchFactor(0, 0)
        self.setStretchFactor(1, 1)
        self.below.setStretchFactor(0, 1)
        self.below.setStretchFactor(1, 0)
        self.right.setStretchFactor(0, VIEW_SHARE)
        self.right.setStretchFactor(1, LISTS_SHARE)
        self.setSizes([CHOICES_WIDTH, 10_000])
        self.below.setSizes([10_000, WHY_WIDTH])
        self.right.setSizes([VIEW_SHARE * 10, LISTS_SHARE * 10])
        self._shared: tuple[list[int], list[int]] | None = None

    def give_lists_room(self, is_wanted: bool) -> None:
        """Let the lists have as much as there is, or go back to how it was shared."""
        if is_wanted and self._shared is None:
            self._shared = (self.right.sizes(), self.below.sizes())
            for splitter, first, second in ((self.right, 1, ALL), (self.below, ALL, 1)):
                splitter.setSizes([first, second])
        elif not is_wanted and self._shared is not None:
            for splitter, sizes in zip((self.right, self.below), self._shared, strict=True):
                splitter.setSizes(sizes)
            self._shared = None


def _splitter(way: Qt.Orientation, first: QWidget, second: QWidget) -> QSplitter:
    splitter = QSplitter(way)
    splitter.setChildrenCollapsible(False)
    splitter.addWidget(first)
    splitter.addWidget(second)
    return splitter
