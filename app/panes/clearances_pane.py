"""Room to move and wood to bear on: drawers in their openings, slats on their cleats, to scale."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QComboBox, QHBoxLayout, QLabel, QSplitter, QVBoxLayout, QWidget

from app.panes.deck_sections import deck_sections
from app.panes.drawer_sections import drawer_sections
from app.panes.section import Drawing
from app.panes.section_view import SectionView
from app.tables.gaps import GAP_COLUMNS, GapRow
from app.tables.rows import Rows
from app.tables.view import TableView
from model.brief import all_choices
from model.units import show_length

if TYPE_CHECKING:
    from model.bed import Bed

ROWS = ("left", "right", "foot")
DECK = "deck"


class ClearancesPane(QWidget):
    """Two sections of what is picked, and the list of their numbers."""

    asked_why = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.bed: Bed | None = None
        self._unit = "mm"
        self._is_stale = False  # drawn only while it is seen
        self.chooser = QComboBox()
        self.chooser.setAccessibleName("What is shown")
        self.chooser.setMinimumWidth(170)
        self.views = (SectionView(), SectionView())
        self.table = TableView(Rows(GAP_COLUMNS), "Numbers on the sections")
        self.table.setAlternatingRowColors(False)
        self.table.stretch(1)
        line = QHBoxLayout()
        line.setContentsMargins(6, 6, 6, 6)
        line.setSpacing(6)
        label = QLabel("Show")
        label.setBuddy(self.chooser)
        line.addWidget(label)
        line.addWidget(self.chooser)
        line.addStretch(1)
        hint = QLabel("To scale. Click a number: why. Double-click: larger.")
        hint.setProperty("kind", "faint")
        line.addWidget(hint)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(0)
        whole.addLayout(line)
        whole.addWidget(self._side_by_side(), 1)
        self.chooser.currentIndexChanged.connect(self._draw)
        self.table.asked_why.connect(self.asked_why)
        self.table.row_chosen.connect(lambda row: self._light(row.number if row else 0))
        for view in self.views:
            view.asked_why.connect(self.asked_why)
            view.pointed.connect(self._light)
            view.enlarged.connect(lambda v=view: self.enlarge(v))

    def _side_by_side(self) -> QSplitter:
        parts = QSplitter(Qt.Orientation.Horizontal)
        parts.setChildrenCollapsible(False)
        for widget, share in ((self.views[0], 5), (self.views[1], 5), (self.table, 4)):
            parts.addWidget(widget)
            parts.setStretchFactor(parts.count() - 1, share)
        self.table.setMinimumWidth(224)
        return parts

    def show_bed(self, bed: Bed, unit: str) -> None:
        """Another bed; what was picked stays picked if the bed still has it."""
        self.bed, self._unit = bed, unit
        offered = _offered(bed)
        if offered != [self.chooser.itemData(k) for k in range(self.chooser.count())]:
            kept = self.chooser.currentData()
            self.chooser.blockSignals(True)
            self.chooser.clear()
            for place in offered:
                self.chooser.addItem(_words(place), place)
            self.chooser.setCurrentIndex(max(self.chooser.findData(kept), 0))
            self.chooser.blockSignals(False)
        self._draw()

    def choose(self, drawer: str) -> None:
        """Show a drawer, such as `left-1`, or the deck."""
        place = self.chooser.findData(drawer)
        if place >= 0:
            self.chooser.setCurrentIndex(place)

    def enlarge(self, view: SectionView) -> None:
        """Give one section the room of both, or share it again."""
        for other in self.views:
            if other is not view:
                other.setVisible(other.isHidden())

    def showEvent(self, event: object) -> None:
        super().showEvent(event)  # type: ignore[arg-type]
        if self._is_stale:
            self._draw()

    # ------------------------------------------------------------ inside

    def _draw(self) -> None:
        self._is_stale = not self.isVisible()
        if self.bed is None or self._is_stale:
            return
        place = self.chooser.currentData()
        row, _, number = place.partition("-")
        drawings = (
            deck_sections(self.bed)
            if place == DECK
            else drawer_sections(self.bed, row, int(number))
        )
        rows = self._rows(drawings)
        told = ", ".join(f"{r.words} {show_length(r.value, self._unit)}" for r in rows)
        for view, drawing in zip(self.views, drawings, strict=True):
            view.show_drawing(drawing, told)
        self.table.sorted.rows.show_records(rows, self._unit)

    def _rows(self, drawings: tuple[Drawing, ...]) -> tuple[GapRow, ...]:
        assert self.bed is not None
        names = {gap.number: gap.name for drawing in drawings for gap in drawing.gaps}
        return tuple(
            GapRow(
                n,
                names[n],
                _measure_words(names[n]),
                float(self.bed[names[n]]),
                self._reason(names[n]),
            )
            for n in sorted(names)
        )

    def _reason(self, name: str) -> str:
        assert self.bed is not None
        choice = all_choices().get(name)
        return choice.help if choice is not None else self.bed.dimensions.book.reason(name)

    def _light(self, number: int) -> None:
        for view in self.views:
            view.light(number)


def _offered(bed: Bed) -> list[str]:
    drawers = [
        f"{row}-{number}"
        for row in ROWS
        for number in range(1, int(bed[f"{row}.drawer_count"]) + 1)
    ]
    return [*drawers, DECK]


def _words(place: str) -> str:
    row, _, number = place.partition("-")
    return f"Drawer {number}, {row}" if number else "Deck on its cleats"


def _measure_words(name: str) -> str:
    words = name.rpartition(".")[2].removesuffix("_built").replace("_", " ")
    return words.capitalize()
