"""The list of pages: by chapter, each with its number and a tick for what is printed and saved."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QModelIndex, Signal
from PySide6.QtWidgets import (
    QAbstractItemView,
    QHBoxLayout,
    QHeaderView,
    QPushButton,
    QTreeView,
    QVBoxLayout,
    QWidget,
)

from app.tables.pages import PLACE, PageRow, PageTree


class PlanList(QWidget):
    """Says which page is wanted; keeps the ticks."""

    page_chosen = Signal(int)  # its place
    ticked = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.tree = PageTree(self)
        self.view = QTreeView()
        self.view.setModel(self.tree)
        self.view.setAccessibleName("Pages of the plan set")
        self.view.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.view.setUniformRowHeights(True)
        self.view.setIndentation(12)
        self.view.setHeaderHidden(True)
        self.all_button, self.none_button = QPushButton("All"), QPushButton("None")
        self.all_button.setToolTip("Tick all pages")
        self.none_button.setToolTip("Tick no page")
        self._is_told = False
        self._lay_out()
        self.view.selectionModel().currentChanged.connect(self._chosen)
        self.tree.ticked.connect(self.ticked)
        self.all_button.clicked.connect(lambda: self._tick_all(True))
        self.none_button.clicked.connect(lambda: self._tick_all(False))

    def _lay_out(self) -> None:
        header = self.view.header()
        header.setStretchLastSection(False)
        header.setMinimumSectionSize(20)
        header.setSectionResizeMode(0, QHeaderView.ResizeMode.Stretch)
        header.setSectionResizeMode(1, QHeaderView.ResizeMode.ResizeToContents)
        line = QHBoxLayout()
        line.setContentsMargins(6, 6, 6, 6)
        line.setSpacing(5)
        for widget in (self.all_button, self.none_button):
            line.addWidget(widget)
        line.addStretch(1)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(0)
        whole.addLayout(line)
        whole.addWidget(self.view, 1)

    # ------------------------------------------------------------ what is shown

    @property
    def pages(self) -> tuple[PageRow, ...]:
        """The pages listed."""
        return self.tree.pages

    @property
    def chosen(self) -> frozenset[int]:
        """The places of the pages that have a tick."""
        return self.tree.chosen

    def show_pages(self, pages: Sequence[PageRow]) -> None:
        """Other pages; chapters that are open stay open."""
        opened = {self.tree.pages[c[0]].key for k, c in enumerate(self.tree.chapters)
                  if self.view.isExpanded(self.tree.index(k, 0))}  # fmt: skip
        self._is_told = True
        if self.tree.show_pages(pages):
            for row, chapter in enumerate(self.tree.chapters):
                if self.tree.pages[chapter[0]].key in opened:
                    self.view.setExpanded(self.tree.index(row, 0), True)
        self._is_told = False

    def choose(self, place: int) -> None:
        """A page is shown, whoever asked for it."""
        here = self.view.currentIndex()
        if here.isValid() and here.data(PLACE) == place:
            return
        self._is_told = True
        index = self.tree.index_of(place)
        self.view.setCurrentIndex(index)
        self.view.scrollTo(index)
        self._is_told = False

    # ------------------------------------------------------------ inside

    def _chosen(self, index: QModelIndex) -> None:
        if index.isValid() and not self._is_told:
            self.page_chosen.emit(index.data(PLACE))

    def _tick_all(self, is_on: bool) -> None:
        self.tree.tick(range(len(self.pages)), is_on)
