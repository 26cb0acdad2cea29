"""How far a piece sags along its length, with the line that it must stay above."""

from __future__ import annotations

import html
import math
from collections.abc import Sequence
from itertools import zip_longest
from typing import TYPE_CHECKING, NamedTuple

import numpy as np
import numpy.typing as npt
from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QColor, QKeyEvent, QShowEvent
from PySide6.QtWidgets import QLabel, QSizePolicy, QVBoxLayout, QWidget

from app.style import BRICK, FAINT, INK, LINE, SHEET, SLATE, SPRUCE
from model.units import INCH, ShopGrid, show_length

if TYPE_CHECKING:
    import pyqtgraph as pg

# Told apart by the stroke as well as by the colour; the sign shows the stroke beside the name.
STROKES = (
    (SPRUCE, Qt.PenStyle.SolidLine, "━━"),
    (SLATE, Qt.PenStyle.DashLine, "╍╍"),
)
LABELS_AT = (0.27, 0.73)  # of the width: limits that lie near each other keep their names apart
NOTHING = "Nothing to show yet."
MARKS = {"inch": ShopGrid(INCH / 8, "inch"), "mm": ShopGrid(1.0, "mm")}  # where it is read off
STEP = 1 / 40  # of the length, for each press of an arrow key


class SagLine(NamedTuple):
    """One piece in one load case: `at` and `sag` (s,) mm, sag down; its limit, inf for none."""

    words: str
    at: npt.NDArray[np.float64]
    sag: npt.NDArray[np.float64]
    limit: float

    @property
    def deepest(self) -> float:
        """Its greatest sag, mm."""
        return float(self.sag.max())

    def told(self, unit: str) -> str:
        """The line in words."""
        limit = f" of {show_length(self.limit, unit)}" if math.isfinite(self.limit) else ""
        return f"{show_length(self.deepest, unit)}{limit}: {self.words}"


class SagChart(QWidget):
    """A chart of up to two lines. The mouse, or the arrow keys, read it off."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.lines: tuple[SagLine, ...] = ()
        self.unit = "mm"
        self.read_at: float | None = None  # mm along the pieces
        self.names, self.reading = tuple(QLabel() for _ in STROKES), QLabel(" ")
        self.reading.setProperty("kind", "faint")
        self.plot: pg.PlotWidget | None = None  # made when first shown: it is slow to make
        self._is_stale = False
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName("Sag along the piece")
        self.setMinimumSize(190, 120)
        self._layout = QVBoxLayout(self)
        self._layout.setContentsMargins(8, 4, 6, 2)
        self._layout.setSpacing(0)
        for name in self.names:
            name.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
            self._layout.addWidget(name)
        self._layout.addStretch(1)
        self._layout.addWidget(self.reading)

    def show_lines(self, lines: Sequence[SagLine], unit: str) -> None:
        """Other lines, or another unit."""
        self.lines, self.unit = tuple(lines[: len(STROKES)]), unit
        told = [f"Sags {line.told(unit)}" for line in self.lines] or [NOTHING]
        for name, words, stroke in zip_longest(self.names, told, STROKES, fillvalue=""):
            name.setText(_name(words, stroke) if self.lines and words else words)
            name.setToolTip(words)
            name.setVisible(bool(words))
        self.setAccessibleDescription("; ".join(told))
        self._draw()

    def read(self, at: float | None) -> None:
        """Read the lines off at a place along them, mm; None: no more."""
        self.read_at = at = None if at is None else self._held(at)
        told = []
        if at is not None and self.lines:
            told = [show_length(self._sag(line, at), self.unit) for line in self.lines]
        words = f"At {show_length(at or 0.0, self.unit)}: {' and '.join(told)}" if told else " "
        self.reading.setText(words)
        if told:
            self.setAccessibleDescription(words)
        if self.plot is not None:
            self._cursor.setVisible(bool(told))
            self._cursor.setValue(at or 0.0)

    @staticmethod
    def _sag(line: SagLine, at: float) -> float:
        return float(np.interp(at, line.at, line.sag))

    # ------------------------------------------------------------ drawing

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        if self.plot is None:
            self._make_plot()
            self._is_stale = True
        if self._is_stale:
            self._draw()

    def _make_plot(self) -> None:
        import pyqtgraph as pg  # 150 ms, and asked for by who opens this pane only

        from app.panes.length_axis import LengthAxis

        self._along, self._down = LengthAxis("bottom"), LengthAxis("left")
        self.plot = pg.PlotWidget(
            self, background=SHEET, axisItems={"bottom": self._along, "left": self._down}
        )
        for axis in (self._along, self._down):
            axis.setPen(LINE)
            axis.setTextPen(INK)
        item = self.plot.getPlotItem()
        item.setMenuEnabled(False)
        item.hideButtons()
        item.setMouseEnabled(False, False)
        item.invertY(True)  # sag hangs down
        self.plot.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self._cursor = pg.InfiniteLine(angle=90, pen=FAINT)
        place = self._layout.indexOf(self.reading) - 1
        self._layout.takeAt(place)
        self._layout.insertWidget(place, self.plot, 1)
        self.plot.scene().sigMouseMoved.connect(self._point)

    def _draw(self) -> None:
        self._is_stale = not self.isVisible() or self.plot is None
        if self._is_stale or self.plot is None:
            return
        import pyqtgraph as pg

        self.plot.clear()
        self._along.show_unit(self.unit)
        self._down.show_unit(self.unit)
        for line, (colour, stroke, _) in zip(self.lines, STROKES, strict=False):
            self.plot.plot(line.at, line.sag, pen=pg.mkPen(colour, width=2, style=stroke))
        for place, (limit, colour) in enumerate(self._limits().items()):
            self.plot.addItem(self._limit_line(limit, colour, LABELS_AT[place]))
        self.plot.addItem(self._cursor)
        self._set_range()
        self.read(self.read_at)

    def _limits(self) -> dict[float, str]:
        """The limits that there are, each once, and the colour of the first line it is for."""
        found: dict[float, str] = {}
        for line, (colour, _, _) in zip(self.lines, STROKES, strict=False):
            if math.isfinite(line.limit):
                found.setdefault(line.limit, colour)
        return found if len(found) != 1 or len(self.lines) == 1 else dict.fromkeys(found, BRICK)

    def _limit_line(self, limit: float, colour: str, label_at: float) -> pg.InfiniteLine:
        import pyqtgraph as pg

        label = {"position": label_at, "color": QColor(colour), "anchors": [(0.5, 1)] * 2}
        return pg.InfiniteLine(
            pos=limit, angle=0, pen=pg.mkPen(colour, width=1.4, style=Qt.PenStyle.DotLine),
            label=f"may sag {show_length(limit, self.unit)}", labelOpts=label,
        )  # fmt: skip

    def _set_range(self) -> None:
        assert self.plot is not None
        depths = [0.0, *self._limits(), *(line.deepest for line in self.lines)]
        highest = min([0.0, *(float(line.sag.min()) for line in self.lines)])
        room = max(max(depths) - highest, 0.1)
        far = max((float(line.at[-1]) for line in self.lines), default=1.0)
        self.plot.setXRange(0, far, padding=0.02)
        self.plot.setYRange(highest - 0.06 * room, max(depths) + 0.12 * room, padding=0)

    # ------------------------------------------------------------ reading off

    def _point(self, place: QPointF) -> None:
        assert self.plot is not None
        box = self.plot.getPlotItem().getViewBox()
        inside = box.sceneBoundingRect().contains(place)
        self.read(box.mapSceneToView(place).x() if inside else None)

    def _held(self, at: float) -> float:
        """The nearest mark of a tape, within the longest line."""
        far = max((float(line.at[-1]) for line in self.lines), default=0.0)
        return min(max(MARKS[self.unit].near(at), 0.0), MARKS[self.unit].down(far))

    def leaveEvent(self, event: object) -> None:
        self.read(None)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        ways = {Qt.Key.Key_Left: -1, Qt.Key.Key_Right: 1}
        if event.key() not in ways or not self.lines:
            super().keyPressEvent(event)
            return
        far = max(float(line.at[-1]) for line in self.lines)
        middle = far / 2 if self.read_at is None else self.read_at
        self.read(middle + ways[Qt.Key(event.key())] * STEP * far)


def _name(told: str, stroke: tuple[str, Qt.PenStyle, str]) -> str:
    colour, _, sign = stroke
    return f'<span style="color:{colour}">{sign}</span> {html.escape(told, quote=False)}'
