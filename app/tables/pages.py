"""The pages of a plan set by chapter, each with a tick for what is printed and saved."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Sequence
from itertools import groupby
from typing import Any, NamedTuple

from PySide6.QtCore import (
    QAbstractItemModel,
    QModelIndex,
    QObject,
    QPersistentModelIndex,
    Qt,
    Signal,
)

Index = QModelIndex | QPersistentModelIndex
Role = Qt.ItemDataRole
PLACE = Role.UserRole + 1  # of the page, or of the first page of a chapter
NONE = QModelIndex()
HEADS = ("Title", "Page")
CHAPTER = 0  # the internal id of a chapter's rows; of a page's, its chapter's row + 1


class PageRow(NamedTuple):
    """A page: the key of it, what it is called, and the key of its chapter, "" for its first."""

    key: str
    title: str
    chapter: str = ""
    chapter_title: str = ""  # of the first page of a chapter, what the chapter is called


class PageTree(QAbstractItemModel):
    """Chapters, and in those that have several pages their pages. A page that is new is ticked."""

    ticked = Signal()  # the ticks have moved

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.pages: tuple[PageRow, ...] = ()
        self.chapters: tuple[range, ...] = ()
        self.left_out: frozenset[str] = frozenset()  # keys of pages without a tick

    # ------------------------------------------------------------ what is shown

    def show_pages(self, pages: Sequence[PageRow]) -> bool:
        """Other pages; ticks stay by their keys. Whether anything is other than before."""
        if tuple(pages) == self.pages:
            return False
        self.beginResetModel()
        self.pages, self.chapters = tuple(pages), tuple(_chapters(pages))
        self.endResetModel()
        self.ticked.emit()
        return True

    @property
    def chosen(self) -> frozenset[int]:
        """The places of the pages that have a tick."""
        return frozenset(k for k, page in enumerate(self.pages) if page.key not in self.left_out)

    def tick(self, places: Iterable[int], is_on: bool) -> None:
        """Tick these pages, or take their ticks away."""
        keys = {self.pages[place].key for place in places}
        self.left_out = self.left_out - keys if is_on else self.left_out | keys
        if self.pages:
            last = self.index(len(self.chapters) - 1, len(HEADS) - 1)
            self.dataChanged.emit(self.index(0, 0), last, [Role.CheckStateRole])
            for row, chapter in enumerate(self.chapters):
                if len(chapter) > 1:
                    above = self.index(row, 0)
                    ends = (self.index(0, 0, above), self.index(len(chapter) - 1, 0, above))
                    self.dataChanged.emit(*ends, [Role.CheckStateRole])
        self.ticked.emit()

    def index_of(self, place: int) -> QModelIndex:
        """The row of a page; that of its chapter, where it is the only one of it."""
        for row, chapter in enumerate(self.chapters):
            if place in chapter:
                above = self.index(row, 0)
                return self.index(place - chapter[0], 0, above) if len(chapter) > 1 else above
        return QModelIndex()

    def places(self, index: Index) -> range:
        """The pages that a row stands for."""
        chapter = self.chapters[index.row() if self._is_chapter(index) else index.internalId() - 1]
        return chapter if self._is_chapter(index) else chapter[index.row() : index.row() + 1]

    @staticmethod
    def _is_chapter(index: Index) -> bool:
        return int(index.internalId()) == CHAPTER

    # ------------------------------------------------------------ Qt's own

    def index(self, row: int, column: int, parent: Index = NONE) -> QModelIndex:
        if not self.hasIndex(row, column, parent):
            return QModelIndex()
        return self.createIndex(row, column, parent.row() + 1 if parent.isValid() else CHAPTER)

    def parent(self, index: Index = NONE) -> Any:  # type: ignore[override]
        if not index.isValid() or self._is_chapter(index):
            return QModelIndex()
        return self.createIndex(index.internalId() - 1, 0, CHAPTER)

    def rowCount(self, parent: Index = NONE) -> int:
        if not parent.isValid():
            return len(self.chapters)
        many = len(self.chapters[parent.row()]) if self._is_chapter(parent) else 0
        return many if many > 1 and parent.column() == 0 else 0

    def columnCount(self, parent: Index = NONE) -> int:
        return len(HEADS)

    def headerData(self, section: int, way: Qt.Orientation, role: int = Role.DisplayRole) -> Any:
        if way == Qt.Orientation.Horizontal and role == Role.DisplayRole:
            return HEADS[section]
        return None

    def flags(self, index: Index) -> Qt.ItemFlag:
        flags = super().flags(index)
        return flags | Qt.ItemFlag.ItemIsUserCheckable if index.column() == 0 else flags

    def data(self, index: Index, role: int = Role.DisplayRole) -> Any:
        if not index.isValid():
            return None
        places = self.places(index)
        if role == Role.DisplayRole:
            return self._words(index, places)
        if role == Role.ToolTipRole:
            return self.pages[places[0]].title
        if role == PLACE:
            return places[0]
        if role == Role.TextAlignmentRole and index.column() == 1:
            return int(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        if role == Role.CheckStateRole and index.column() == 0:
            return _state([self.pages[k].key not in self.left_out for k in places])
        return None

    def setData(self, index: Index, value: Any, role: int = Role.EditRole) -> bool:
        if role != Role.CheckStateRole or not index.isValid():
            return False
        self.tick(self.places(index), Qt.CheckState(value) != Qt.CheckState.Unchecked)
        return True

    def _words(self, index: Index, places: range) -> str:
        if index.column() == 0:
            first = self.pages[places[0]]
            is_whole = self._is_chapter(index)
            return first.chapter_title or first.title if is_whole else first.title
        return f"{places[0] + 1}"


def _chapters(pages: Sequence[PageRow]) -> Iterable[range]:
    at = 0
    for _, some in groupby(pages, key=lambda page: page.chapter or page.key):
        many = len(list(some))
        yield range(at, at + many)
        at += many


def _state(ticks: Collection[bool]) -> Qt.CheckState:
    if all(ticks):
        return Qt.CheckState.Checked
    return Qt.CheckState.PartiallyChecked if any(ticks) else Qt.CheckState.Unchecked
