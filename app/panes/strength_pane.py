"""What the bed carries: the loads, what they do to each piece, and how far it sags."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from PySide6.QtCore import QSignalBlocker, Qt, Signal
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import (
    QFrame,
    QLabel,
    QLineEdit,
    QPushButton,
    QSplitter,
    QVBoxLayout,
    QWidget,
)

from app.panes.sag_chart import SagChart, SagLine
from app.panes.strength_words import CAUTION, effect_rows, effect_text, load_rows, load_text
from app.panes.switched_lists import SwitchedLists
from app.tables.effects import EFFECT_COLUMNS
from app.tables.loads import LOAD_COLUMNS
from app.tables.rows import Rows
from app.tables.view import TableView
from model.brief.words import in_unit
from model.structure.worst import (
    ALL,
    cases_of,
    deck_pieces,
    hardest_first,
    most_sagging,
    sag_limit,
    side_rails,
)

if TYPE_CHECKING:
    from model.bed import Bed
    from model.structure.record import Carried

LOADS, PIECES = range(2)
NO_PIECE = -1
LATE = "Working out what the bed carries now …"
HALF = 10_000  # px, more than there are: tables and chart start with as much room


class StrengthPane(QWidget):
    """Loads in one table, pieces in the other, and a chart of the sag of what is picked."""

    load_chosen = Signal(str)  # the key of a load, "" for the worst of all
    picked = Signal(object)  # the pieces of the row, as a tuple
    choice_shown = Signal(str)  # a choice that sets a load
    shown_on_bed = Signal(bool)
    seen = Signal()  # the pane has come to the front

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.bed: Bed | None = None
        self.carried: Carried | None = None
        self.load, self.piece = ALL, NO_PIECE
        self._unit, self._fitted_unit = "mm", ""
        self._is_told = False  # rows follow what was picked elsewhere: do not tell it again
        self.loads = TableView(Rows(LOAD_COLUMNS), "Loads, worst first")
        self.effects = TableView(Rows(EFFECT_COLUMNS), "What each piece carries, worst first")
        self.chart = SagChart()
        self.filter_line = QLineEdit(placeholderText="Show rows that hold these words")
        self.filter_line.setAccessibleName("Filter the loads and pieces")
        self.filter_line.setClearButtonEnabled(True)
        self.bed_button = QPushButton("Show on the bed", checkable=True)
        self.bed_button.setToolTip("Colour the bed by how hard each piece works")
        self.told = QLabel(wordWrap=True)
        self.told.setTextInteractionFlags(Qt.TextInteractionFlag.TextBrowserInteraction)
        self.told.setAccessibleName("About the row that is picked")
        self.caution = QLabel(CAUTION, wordWrap=True)
        self.caution.setProperty("kind", "faint")
        self.lists = SwitchedLists()
        self._lay_out()
        self._connect()

    def _lay_out(self) -> None:
        self.lists.add_list("Loads", self.loads)
        self.lists.add_list("Pieces", self.effects)
        self.lists.show_list(LOADS)
        self.lists.line.addWidget(self.filter_line, 1)
        self.lists.line.addWidget(self.bed_button)
        parts = QSplitter(Qt.Orientation.Horizontal)
        parts.setChildrenCollapsible(False)
        for widget in (self.lists, self.chart):
            parts.addWidget(widget)
            parts.setStretchFactor(parts.count() - 1, 1)
        parts.setSizes([HALF, HALF])
        foot = QFrame()
        foot.setProperty("kind", "help")
        told = QVBoxLayout(foot)
        told.setContentsMargins(8, 4, 8, 4)
        told.setSpacing(2)
        told.addWidget(self.told)
        told.addWidget(self.caution)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(0)
        whole.addLayout(self.lists.line)
        whole.addWidget(parts, 1)
        whole.addWidget(foot)

    def _connect(self) -> None:
        self.lists.asked.connect(self.show_table)
        for table in (self.loads, self.effects):
            self.filter_line.textChanged.connect(table.sorted.keep)
        self.loads.row_chosen.connect(self._load_picked)
        self.effects.row_chosen.connect(self._effect_picked)
        self.bed_button.toggled.connect(self.shown_on_bed)
        self.told.linkActivated.connect(
            lambda link: self.choice_shown.emit(link.removeprefix("choice:"))
        )

    # ------------------------------------------------------------ what is shown

    def show_carried(self, bed: Bed, carried: Carried, unit: str) -> None:
        """What another bed carries; what was picked stays picked if the bed still has it."""
        self.bed, self.carried, self._unit = bed, carried, unit
        labels = bed.pieces.labels
        kind = getattr(getattr(self.effects.record, "effect", None), "kind", "")
        if self.piece not in carried.pieces:
            self.piece = NO_PIECE
        self._is_told = True
        self.loads.sorted.rows.show_records(load_rows(carried, labels), unit)
        self.effects.sorted.rows.show_records(effect_rows(carried, labels), unit)
        self.choose_load(self.load)
        wanted = (self.piece, kind)
        self.effects.choose(lambda row: (row.effect.piece, row.effect.kind) == wanted)
        self._is_told = False
        if unit != self._fitted_unit:
            self.loads.fit_columns(220)
            self.effects.fit_columns(180)
            self._fitted_unit = unit
        self._tell()

    def show_trouble(self, sentence: str) -> None:
        """What the bed carries is not known, and why."""
        self.bed, self.carried, self.piece = None, None, NO_PIECE
        self._is_told = True
        for table in (self.loads, self.effects):
            table.sorted.rows.show_records((), self._unit)
        self._is_told = False
        self.chart.show_lines((), self._unit)
        self.told.setText(sentence)

    def show_late(self) -> None:
        """The open bed is being worked out; what is listed is of the last one."""
        self.told.setText(LATE)

    def show_table(self, place: int) -> None:
        """0: loads, 1: pieces."""
        self.lists.show_list(place)
        self._tell()

    @property
    def table(self) -> TableView:
        """The table on view."""
        return self.effects if self.lists.place == PIECES else self.loads

    def press_bed_button(self, is_on: bool) -> None:
        """The bed shows its strength, or does not, whoever asked for it."""
        with QSignalBlocker(self.bed_button):
            self.bed_button.setChecked(is_on)

    # ------------------------------------------------------------ picking

    def choose_load(self, key: str) -> None:
        """A load was chosen elsewhere."""
        was_told, self._is_told = self._is_told, True
        self.load = key
        self.loads.choose(lambda row: row.key == key)
        self._is_told = was_told
        if not was_told:
            self._tell()

    def choose_piece(self, piece: int) -> None:
        """Pick the hardest row of a piece clicked on the bed; -1 for none."""
        rows = self.effects.sorted.rows.records
        found = next((row for row in rows if row.effect.piece == piece), None)
        self._is_told = True
        self.piece = piece if found is not None else NO_PIECE
        if found is not None:
            self.show_table(PIECES)
            row = self.effects.sorted.rows.index(rows.index(found), 0)
            if not self.effects.sorted.mapFromSource(row).isValid():
                self.filter_line.clear()
        self.effects.choose(lambda row: row is found)
        self._is_told = False
        self._tell()

    def _load_picked(self, row: Any) -> None:
        if self._is_told or row is None:
            return
        self.load, self.piece = row.key, NO_PIECE
        self._tell()
        self.load_chosen.emit(row.key)

    def _effect_picked(self, row: Any) -> None:
        if self._is_told:
            return
        self.piece = row.effect.piece if row is not None else NO_PIECE
        self._tell()
        self.picked.emit((row.effect.piece,) if row is not None else ())

    # ------------------------------------------------------------ words and chart

    def _tell(self) -> None:
        """Say what the picked row means, and draw the sag that belongs to it."""
        if self.carried is None:
            return
        row = self.table.record
        if row is None:
            self.told.setText("Pick a row to read what it means.")
        else:
            words = load_text if self.table is self.loads else effect_text
            self.told.setText(words(row, self._unit))
        self.chart.show_lines(self._lines(), self._unit)

    def _lines(self) -> list[SagLine]:
        """The sag of the picked piece, or of the worst slat and the worst rail."""
        assert self.bed is not None and self.carried is not None
        cases = cases_of(self.carried, self.load) or cases_of(self.carried)
        cases = hardest_first(self.carried, cases)
        if self.piece != NO_PIECE:
            groups: tuple[tuple[int, ...], ...] = ((self.piece,),)
        else:
            groups = (deck_pieces(self.bed.pieces), side_rails(self.bed.pieces))
        found = [most_sagging(self.carried, cases, group) for group in groups]
        return [self._line(*each) for each in found if each is not None]

    def _line(self, piece: int, case: int) -> SagLine:
        assert self.bed is not None and self.carried is not None
        curve = self.carried.curve(piece, case)
        label = self.bed.pieces.labels[piece]
        title = in_unit(self.carried.cases[case].title, self._unit)
        words = label if self.load != ALL else f"{label} ({title})"
        return SagLine(words, curve.at, curve.sag, sag_limit(self.carried, piece, case))

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self.seen.emit()
