"""Boards and sheets: what is cut from what, drawn to scale, and in what order it is sawn.

Three pages share one picked plan: the list of all plans, the drawings, and the cuts in their order.
Where the pane is wide enough the drawings stand beside the list as well.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection, Sequence
from typing import Any

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QHideEvent, QResizeEvent, QShowEvent
from PySide6.QtWidgets import (
    QButtonGroup,
    QComboBox,
    QFrame,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QScrollArea,
    QSizePolicy,
    QSplitter,
    QStackedWidget,
    QToolButton,
    QVBoxLayout,
    QWidget,
)

from app.panes.cutting_lights import Moment, lights
from app.panes.cutting_misfits import CuttingMisfits
from app.panes.cutting_order import CuttingOrder
from app.panes.cutting_view import PIECE, Board, CuttingView
from app.tables.cutting import PLAN_COLUMNS, SETTING_COLUMNS, SettingRow, material_words
from app.tables.rows import Rows
from app.tables.view import TableView
from model.cutting.record import Layout
from model.drawings.cut_layout import Shown
from model.drawings.cut_names import CutNames
from model.drawings.cut_steps import SawnPlan
from model.drawings.plan_words import plan_sentences, runs_words, title_words

PLANS, DRAWINGS, ORDER = range(3)
SHARES = {PLANS: [5500, 4500], DRAWINGS: [0, 10_000], ORDER: [4000, 6000]}  # list, drawings
WIDE = 940  # px: room for the drawings beside the list of plans
FIRST = "Planning the cuts …"


class CuttingPane(QWidget):
    """Plans or settings at the left, drawings beside them, and the cuts one by one."""

    picked = Signal(str)  # a piece's name, "" for none
    ticked = Signal(str, bool)  # the key of a cut
    offer_taken = Signal(str)  # the key of a plan that is to be kept, or replaced by a better one
    stop_asked = Signal()
    go_on_asked = Signal()
    room_asked = Signal(bool)
    seen = Signal()
    left = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.plans: tuple[SawnPlan, ...] = ()
        self.names = CutNames()
        self.done: Collection[str] = ()
        self.offers: dict[str, tuple[str, str]] = {}
        self._unit, self._key = "mm", ""
        self._moment = Moment()
        self._is_told = False
        self._drawn: tuple[Any, ...] = ()  # what the drawings show
        self.table = TableView(Rows(PLAN_COLUMNS), "Materials to cut")
        self.settings = TableView(Rows(SETTING_COLUMNS), "Settings in the order of sawing")
        for table in (self.table, self.settings):
            table.stretch(0)
        self.view, self.order, self.misfits = CuttingView(), CuttingOrder(), CuttingMisfits()
        self.told = QLabel(FIRST, wordWrap=True, margin=8)
        self.told.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        self.told.setAlignment(Qt.AlignmentFlag.AlignTop)
        self.told.setAccessibleName("About the plan that is picked")
        self.chooser = QComboBox()
        self.chooser.setAccessibleName("Material")
        self.chooser.setSizeAdjustPolicy(
            QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon
        )
        self.progress, self.short = QLabel(), QLabel()
        self.short.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        self.progress.setProperty("kind", "faint")
        self.stop_button, self.offer_button = QPushButton("Stop"), QPushButton()
        self.room_button = QPushButton("More room", checkable=True)
        self.room_button.setToolTip("Let the lists have most of the window, or give it back")
        self.before_button = _tool(Qt.ArrowType.UpArrow, "The one before")
        self.after_button = _tool(Qt.ArrowType.DownArrow, "The next one")
        self.smaller_button, self.larger_button = _tool("−", "Smaller"), _tool("+", "Larger")
        self.fit_button = _tool("Fit", "As large as there is room")
        self._stack, self._switch = QStackedWidget(), QButtonGroup(self)
        self._lay_out()
        self._connect()
        self.show_page(PLANS)
        self.say_progress("")

    # ------------------------------------------------------------ how it lies

    def _lay_out(self) -> None:
        line = QHBoxLayout()
        line.setContentsMargins(6, 6, 6, 6)
        line.setSpacing(5)
        for place, words in enumerate(("Plans", "Drawings", "Cut order")):
            button = QPushButton(words, checkable=True, checked=place == PLANS)
            self._switch.addButton(button, place)
            line.addWidget(button)
        line.addWidget(self.chooser, 1)
        for widget in (
            self.before_button, self.after_button, self.smaller_button, self.larger_button,
            self.fit_button, self.room_button,
        ):  # fmt: skip
            line.addWidget(widget)
        for page in (self._plans_page(), self.settings):
            self._stack.addWidget(page)
        self._parts = QSplitter(Qt.Orientation.Horizontal)
        self._parts.setChildrenCollapsible(False)
        self._stack.setMinimumWidth(230)
        for place, widget in enumerate((self._stack, self.view)):
            self._parts.addWidget(widget)
            self._parts.setStretchFactor(place, 1)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(0)
        whole.addLayout(line)
        whole.addWidget(self.misfits)
        whole.addWidget(self._parts, 1)
        whole.addWidget(self.order)
        whole.addWidget(self._foot())

    def _plans_page(self) -> QSplitter:
        words = QScrollArea(widgetResizable=True)
        words.setWidget(self.told)
        page = QSplitter(Qt.Orientation.Vertical)
        page.setChildrenCollapsible(False)
        for widget, share in ((self.table, 3), (words, 2)):
            page.addWidget(widget)
            page.setStretchFactor(page.count() - 1, share)
        page.setSizes([3000, 2000])
        return page

    def _foot(self) -> QFrame:
        self._below = foot = QFrame()
        foot.setProperty("kind", "help")
        line = QHBoxLayout(foot)
        line.setContentsMargins(8, 3, 6, 3)
        line.addWidget(self.short, 1)
        line.addStretch(0)
        for widget in (self.progress, self.stop_button, self.offer_button):
            line.addWidget(widget)
        foot.setMinimumHeight(self.stop_button.sizeHint().height() + 8)
        return foot

    def _share_out(self) -> None:
        """Who has the room: the list, the drawings, or both."""
        page = self.page
        self._stack.setVisible(page != DRAWINGS)
        self.view.setVisible(page != PLANS or self.width() >= WIDE)
        self.order.setVisible(page == ORDER)
        self.short.setVisible(page == DRAWINGS)
        self.offer_button.setVisible(page != ORDER and bool(self.offer_button.text()))
        self._below.setVisible(page != ORDER or not self.progress.isHidden())
        for widget in (
            self.before_button, self.after_button, self.smaller_button, self.larger_button,
            self.fit_button,
        ):  # fmt: skip
            widget.setVisible(not self.view.isHidden())

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._share_out()

    def _connect(self) -> None:
        self._switch.idClicked.connect(self.show_page)
        self.chooser.currentIndexChanged.connect(self._chooser_moved)
        self.table.row_chosen.connect(self._plan_chosen)
        self.table.doubleClicked.connect(lambda _: self.show_page(DRAWINGS))
        self.settings.row_chosen.connect(self._setting_chosen)
        self.view.piece_picked.connect(self._piece_pressed)
        self.view.piece_pointed.connect(self._point)
        self.view.cut_picked.connect(self._cut_pressed)
        self.view.stepped.connect(self._stepped)
        self.view.ticked.connect(self._space)
        self.view.board_changed.connect(self._name_board)
        self.view.tip = lambda about: self._tip(about)
        self.order.moved.connect(self._moved)
        self.order.ticked.connect(self.ticked)
        self.before_button.clicked.connect(lambda: self.view.show_board(self.view.board - 1))
        self.after_button.clicked.connect(lambda: self.view.show_board(self.view.board + 1))
        self.smaller_button.clicked.connect(lambda: self.view.zoom_by(-1))
        self.larger_button.clicked.connect(lambda: self.view.zoom_by(1))
        self.fit_button.clicked.connect(lambda: self.view.set_zoom(1.0))
        self.room_button.toggled.connect(self.room_asked)
        self.stop_button.clicked.connect(self._stop_pressed)
        self.offer_button.clicked.connect(lambda: self.offer_taken.emit(self._key))

    # ------------------------------------------------------------ what is shown

    @property
    def plan(self) -> SawnPlan | None:
        """The plan that is picked."""
        return next((each for each in self.plans if each.key == self._key), None)

    @property
    def page(self) -> int:
        """The page on view."""
        return self._switch.checkedId()

    @property
    def is_in_order(self) -> bool:
        """Whether the cuts are shown one by one."""
        return self.page == ORDER

    def show_plans(
        self, plans: Sequence[SawnPlan], names: CutNames, done: Collection[str], unit: str
    ) -> None:
        """Other plans, or the same ones further on; what was picked stays picked."""
        self.plans, self.names, self.done, self._unit = tuple(plans), names, done, unit
        if self.plan is None:
            self._key = self.plans[0].key if self.plans else ""
        self._is_told = True
        self.table.sorted.rows.show_records(self.plans, unit)
        self._offer_materials()
        self._is_told = False
        self.choose_plan(self._key)

    def show_trouble(self, sentence: str) -> None:
        """There are no plans, and why."""
        self.show_plans((), self.names, (), self._unit)
        self.told.setText(sentence)

    def show_page(self, place: int) -> None:
        """0: all plans, 1: the drawings of one, 2: its cuts in their order."""
        self._switch.button(place).setChecked(True)
        self._stack.setCurrentIndex(1 if place == ORDER else 0)
        self._share_out()
        self._parts.setSizes(SHARES[place])
        self._show_plan()
        if place == ORDER:
            self.view.setFocus()  # for its keys: back, next, tick

    def offer(self, offers: dict[str, tuple[str, str]]) -> None:
        """For keys of plans: a sentence, and the words on the button that takes the offer."""
        self.offers = offers
        self._tell()

    def say_progress(self, words: str, button: str = "") -> None:
        """How far the search for better plans is; `button` stops it or has it go on."""
        self.progress.setText(words)
        self.progress.setVisible(bool(words))
        self.stop_button.setText(button)
        self.stop_button.setVisible(bool(button))
        self._share_out()

    def pick(self, names: Collection[str]) -> None:
        """Pieces are picked elsewhere: show the board of the first one."""
        self._moment = self._moment._replace(picked=tuple(names))
        holding = next((p for p in self.plans if any(map(p.holding, names))), None)
        if holding is not None and not any(map(self.plan.holding, names) if self.plan else ()):
            self.choose_plan(holding.key)
        self._light()
        if holding is not None and self.isVisible():
            first = next(name for name in names if holding.holding(name))
            self.view.show_about(f"{PIECE}{first}")

    def choose_plan(self, key: str) -> None:
        """Show the plan of a task."""
        self._is_told = True
        self._key = key
        self.table.choose(lambda row: row.key == key)
        self.chooser.setCurrentIndex(self.chooser.findData(key))
        self._is_told = False
        self._show_plan()

    # ------------------------------------------------------------ inside

    def _offer_materials(self) -> None:
        """The chooser lists what the table lists, in the order of the parts list."""
        listed = [(material_words(each, self._unit), each.key) for each in self.plans]
        shown = [
            (self.chooser.itemText(k), self.chooser.itemData(k))
            for k in range(self.chooser.count())
        ]
        if listed != shown:
            self.chooser.clear()
            for words, key in listed:
                self.chooser.addItem(words, key)

    def _show_plan(self) -> None:
        plan = self.plan
        self._tell()
        if plan is None:
            self.view.show_boards(())
            self.settings.sorted.rows.show_records((), self._unit)
            return
        drawn = (plan.cut.plan, self._unit, self.names.parts)
        if drawn != self._drawn:
            self._drawn = drawn
            self.view.show_boards([self._board(plan, each) for each in plan.layouts])
        self._show_settings(plan)
        self.order.show_plan(plan, self.done)

    def _board(self, plan: SawnPlan, layout: Layout) -> Board:
        title = title_words(plan, layout)
        return Board(
            layout,
            Shown(
                unit=self._unit, names=self.names.parts, numbers=plan.numbers(layout),
                title=title, all_named=False,
            ),
        )  # fmt: skip

    def _show_settings(self, plan: SawnPlan) -> None:
        made = Counter(step.batch for step in plan.steps if step.key in self.done)
        rows = [
            SettingRow(place, batch, _boards(plan, place), made[place])
            for place, batch in enumerate(plan.batches)
        ]
        self._is_told = True
        self.settings.sorted.rows.show_records(rows, self._unit)
        self._is_told = False

    def _tell(self) -> None:
        plan = self.plan
        sentence, words = self.offers.get(self._key, ("", ""))
        self.offer_button.setText(words)
        self.offer_button.setVisible(bool(words) and self.page != ORDER)
        self.offer_button.setToolTip(sentence)
        if plan is None:
            self.told.setText("" if self.plans else FIRST)
            self.short.clear()
            return
        told = plan_sentences(plan, self._unit)
        self.told.setText(" ".join((*told, sentence)))
        self.short.setText(sentence or told[0])
        self.short.setToolTip("\n".join(told))

    def _light(self) -> None:
        if self.plan is not None:
            self.view.light(lights(self.plan, self._moment))

    def _tip(self, about: str) -> str:
        if about.startswith(PIECE):
            return self.names.told(about.removeprefix(PIECE), self._unit)
        number = int(about.rpartition("/")[2])
        steps = self.plan.steps if self.plan is not None else ()
        return next((f"{s.setting}\n{s.detail}" for s in steps if s.number == number), "")

    def _name_board(self, place: int) -> None:
        count = len(self.plan.layouts) if self.plan is not None else 0
        self.before_button.setEnabled(place > 0)
        self.after_button.setEnabled(-1 < place < count - 1)

    # ------------------------------------------------------------ what is pressed

    def _plan_chosen(self, row: Any) -> None:
        if not self._is_told and row is not None:
            self.choose_plan(row.key)

    def _chooser_moved(self, place: int) -> None:
        if not self._is_told and place >= 0:
            self.choose_plan(self.chooser.itemData(place))

    def _setting_chosen(self, row: Any) -> None:
        if self._is_told or row is None or self.plan is None:
            return
        steps = [k for k, step in enumerate(self.plan.steps) if step.batch == row.place]
        still = (k for k in steps if self.plan.steps[k].key not in self.done)
        self.order.go_to(next(still, steps[0]))

    def _piece_pressed(self, name: str) -> None:
        self._moment = self._moment._replace(picked=(name,) if name else ())
        self._light()
        self.picked.emit(name)

    def _point(self, name: str) -> None:
        self._moment = self._moment._replace(pointed=name)
        self._light()

    def _cut_pressed(self, number: int) -> None:
        self.show_page(ORDER)
        self.order.go_to_cut(number)

    def _stepped(self, steps: int) -> None:
        if self.is_in_order:
            self.order.step_by(steps)
        else:
            self.view.show_board(self.view.board + steps)

    def _space(self) -> None:
        if self.is_in_order:
            self.order.tick()

    def _moved(self, place: int) -> None:
        """The order shows another step: light it, and bring its board into sight."""
        plan = self.plan
        if plan is None:
            return
        is_shown = self.is_in_order and bool(plan.steps)
        done = self.done if is_shown else ()
        self._moment = self._moment._replace(step=place if is_shown else -1, ticked=done)
        self._light()
        if not is_shown:
            return
        step = plan.steps[place]
        self._is_told = True
        self.settings.choose(lambda row: row.place == step.batch)
        self._is_told = False
        numbers = [layout.number for layout in plan.layouts]
        self.view.show_board(numbers.index(step.layout))

    def _stop_pressed(self) -> None:
        (self.stop_asked if self.stop_button.text() == "Stop" else self.go_on_asked).emit()

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self.seen.emit()

    def hideEvent(self, event: QHideEvent) -> None:
        super().hideEvent(event)
        self.left.emit()


def _boards(plan: SawnPlan, batch: int) -> str:
    """On which boards a setting is used."""
    return runs_words(step.layout for step in plan.steps if step.batch == batch)


def _tool(face: Qt.ArrowType | str, name: str) -> QToolButton:
    button = QToolButton()
    if isinstance(face, str):
        button.setText(face)
    else:
        button.setArrowType(face)
    button.setProperty("kind", "plain")
    button.setMaximumWidth(34)
    button.setAccessibleName(name)
    button.setToolTip(name)
    return button
