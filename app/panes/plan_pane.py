"""The plan set: its pages listed at the left, and the one that is picked as it prints."""

from __future__ import annotations

from collections.abc import Collection, Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QSplitter, QVBoxLayout, QWidget

from app.panes.plan_foot import PlanFoot
from app.panes.plan_list import PlanList
from app.panes.plan_page import PlanPage
from app.panes.plan_paper import FREE
from app.panes.plan_tools import TRUE, PlanTools
from app.tables.pages import PageRow
from model.planset.page import Page

LIST_WIDTH = 236
FIRST = "Laying out the plan set …"


class PlanPane(QWidget):
    """List and page keep to each other; what is printed or saved is left to the desk."""

    page_asked = Signal(str)  # its key
    picked = Signal(str)  # what a piece is about, "" for none
    room_asked = Signal(bool)
    seen = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.key = ""  # of the page that is wanted; it may not be there yet
        self.list, self.page = PlanList(), PlanPage()
        self.tools, self.foot = PlanTools(), PlanFoot()
        self._lay_out()
        self._connect()
        self.foot.say(FIRST)
        self._tell_ticks()
        self.tools.show_place(-1, 0)

    def _lay_out(self) -> None:
        right = QWidget()
        column = QVBoxLayout(right)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.tools)
        column.addWidget(self.page, 1)
        parts = QSplitter(Qt.Orientation.Horizontal)
        parts.setChildrenCollapsible(False)
        self.list.setMinimumWidth(150)
        for widget, share in ((self.list, 0), (right, 1)):
            parts.addWidget(widget)
            parts.setStretchFactor(parts.count() - 1, share)
        parts.setSizes([LIST_WIDTH, 3 * LIST_WIDTH])
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(0)
        whole.addWidget(parts, 1)
        whole.addWidget(self.foot)

    def _connect(self) -> None:
        self.list.page_chosen.connect(self._go)
        self.list.ticked.connect(self._tell_ticks)
        self.tools.turned.connect(self._turn)
        self.tools.scale_asked.connect(self.page.scale_by)
        self.tools.follow_asked.connect(self._follow)
        self.tools.room_asked.connect(self.room_asked)
        self.page.turned.connect(self._turn)
        self.page.turned_to_end.connect(
            lambda last: self._go(len(self.list.pages) - 1 if last else 0)
        )
        self.page.link_followed.connect(self.go_to)
        self.page.piece_picked.connect(self.picked)
        self.page.scaled.connect(self._tell_scale)
        self.page.named = self._title

    # ------------------------------------------------------------ what is shown

    @property
    def place(self) -> int:
        """The place of the page that is wanted, -1 where the list has none of its key."""
        return next((k for k, row in enumerate(self.list.pages) if row.key == self.key), -1)

    def show_pages(self, rows: Sequence[PageRow]) -> None:
        """The list of pages. A page that is gone gives way to the one that has its place now."""
        was = self.place
        self.list.show_pages(rows)
        if rows and self.place < 0:
            self.key = rows[min(max(was, 0), len(rows) - 1)].key
        self._tell_place()

    def show_page(self, page: Page) -> None:
        """The page that is wanted, or what there is of it until it is ready."""
        self.page.show_page(page)
        self._tell_place()

    def light(self, abouts: Collection[str]) -> None:
        """Light these pieces, and bring one to sight."""
        self.page.light(abouts)
        self.page.bring_to_sight(abouts)

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self.seen.emit()

    # ------------------------------------------------------------ asked

    def go_to(self, key: str) -> None:
        """Ask for the page of a key, if the list has one."""
        if any(row.key == key for row in self.list.pages):
            self.key = key
            self._tell_place()
            self.page_asked.emit(key)

    def _go(self, place: int) -> None:
        if 0 <= place < len(self.list.pages):
            self.go_to(self.list.pages[place].key)

    def _turn(self, by: int) -> None:
        self._go(self.place + by)

    def _follow(self, how: str) -> None:
        if how == FREE:
            self.page.set_scale(TRUE)
        else:
            self.page.follow(how)
        self._tell_scale()

    def _tell_scale(self) -> None:
        self.tools.show_scale(self.page.scale, self.page.follows)

    def _tell_place(self) -> None:
        self.tools.show_place(self.place, len(self.list.pages))
        if self.place >= 0:
            self.list.choose(self.place)

    def _tell_ticks(self) -> None:
        self.foot.tell_ticks(len(self.list.chosen), len(self.list.pages))

    def _title(self, key: str) -> str:
        return next((row.title for row in self.list.pages if row.key == key), key)
