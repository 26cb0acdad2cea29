"""One page of the plan set on white paper, as it prints, at any size.

Its scale is mm on the screen to mm of paper: 1 is true size, by what the screen says of its own
width and height.
"""

from __future__ import annotations

from PySide6.QtCore import QPoint, QPointF, QRectF, Qt, Signal
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPixmap, QResizeEvent
from PySide6.QtWidgets import QAbstractScrollArea, QFrame, QWidget

from app.style import FAINT, LINE
from app.view.page_player import PlayedPage, play_lit, play_page, prepared_page
from model.drawings.paper import Point
from model.planset.page import Page
from model.units import Share

WHOLE, WIDTH, FREE = "whole", "width", "free"  # how the scale follows the window
GROUND = "#e7e3da"  # what the paper lies on
EDGE = 10  # px around the paper
THINNEST = 0.75  # px: thinner lines fade away on a screen
STEP: Share = 1.25
LEAST, MOST = 0.1, 8.0
KEPT_PIXELS = 12_000_000  # a larger page is painted where it is seen
STRANGE_SCREEN = (40.0, 600.0)  # dots per inch: beyond, the screen does not know its own size
USUAL_DOTS = 96.0


class PlanPaper(QAbstractScrollArea):
    """Paints a page, scales it, and knows which point of the paper lies where in the window."""

    scaled = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.page: Page | None = None
        self.follows = WHOLE
        self.lit: frozenset[str] = frozenset()
        self._scale: Share = 1.0
        self._played: PlayedPage | None = None
        self._kept: QPixmap | None = None
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setMinimumSize(180, 110)
        self.setAccessibleName("Page of the plan set, as it prints")

    def show_page(self, page: Page | None) -> None:
        """Another page from its top, or the same one drawn anew where it stands."""
        is_same = page is not None and self.page is not None and page.key == self.page.key
        self.page = page
        self._played = prepared_page(page.drawing) if page is not None else None
        self._kept = None
        self.setAccessibleDescription(page.title if page is not None else "")
        self._arrange()
        if not is_same:
            self.verticalScrollBar().setValue(0)
        self.viewport().update()

    # ------------------------------------------------------------ how large

    @property
    def dots(self) -> float:
        """Pixels of this window to a mm, by the screen's own word."""
        inch = self.screen().physicalDotsPerInch()
        low, high = STRANGE_SCREEN
        return (inch if low <= inch <= high else USUAL_DOTS) / 25.4

    @property
    def scale(self) -> Share:
        """Size on the screen to size on paper."""
        return self._scale

    @property
    def pixels(self) -> float:
        """Pixels to a mm of paper."""
        return self._scale * self.dots

    def follow(self, how: str) -> None:
        """Show the whole page or its whole width, however large the window is."""
        self.follows = how
        self._arrange()

    def set_scale(self, scale: Share, around: QPointF | None = None) -> None:
        """As large as this; what lies at a point of the window stays there."""
        middle = QPointF(self.viewport().rect().center())
        held = around if around is not None else middle
        point = self.on_paper(held)
        self.follows = FREE
        self._scale = min(max(scale, LEAST), MOST)
        self._arrange()
        if point is not None:
            self.scroll_by((held - self.on_screen(point)).toPoint())

    def scale_by(self, steps: int, around: QPointF | None = None) -> None:
        """Larger or smaller by steps."""
        self.set_scale(self._scale * STEP**steps, around)

    def _arrange(self) -> None:
        """Scale and scroll bars, as the window and the page ask for."""
        if self.page is None:
            self._set_bars(0, 0)
            return
        self._follow_window()
        size = self._size()
        self._set_bars(round(size.x()) + 2 * EDGE, round(size.y()) + 2 * EDGE)
        self.scaled.emit()
        self.viewport().update()

    def _follow_window(self) -> None:
        if self.follows == FREE or self.page is None:
            return
        drawing, room = self.page.drawing, self.maximumViewportSize()
        wide = (room.width() - 2 * EDGE) / drawing.width
        high = (room.height() - 2 * EDGE) / drawing.height
        if self.follows == WIDTH and wide > high:  # there will be a bar beside it
            wide -= self.verticalScrollBar().sizeHint().width() / drawing.width
        pixels = min(wide, high) if self.follows == WHOLE else wide
        self._scale = min(max(pixels / self.dots, LEAST), MOST)

    def _set_bars(self, wide: int, high: int) -> None:
        room = self.viewport().size()
        for bar, long, seen in (
            (self.horizontalScrollBar(), wide, room.width()),
            (self.verticalScrollBar(), high, room.height()),
        ):
            bar.setRange(0, max(long - seen, 0))
            bar.setPageStep(seen)
            bar.setSingleStep(24)

    def _size(self) -> QPointF:
        assert self.page is not None
        drawing = self.page.drawing
        return QPointF(drawing.width * self.pixels, drawing.height * self.pixels)

    def _corner(self) -> QPointF:
        """Where the paper's upper left corner lies in the window."""
        room, size = self.viewport().size(), self._size()
        bars = (self.horizontalScrollBar(), self.verticalScrollBar())
        spare = (
            room.width() - size.x() - 2 * EDGE,
            room.height() - size.y() - 2 * EDGE,
        )
        x, y = (
            EDGE + max(more, 0.0) / 2 - bar.value() for more, bar in zip(spare, bars, strict=True)
        )
        return QPointF(round(x), round(y))

    def on_screen(self, point: Point) -> QPointF:
        """Where a point of the paper, mm from its lower left corner, lies in the window."""
        assert self.page is not None
        x, y = point
        return self._corner() + QPointF(x, self.page.drawing.height - y) * self.pixels

    def on_paper(self, point: QPointF) -> Point | None:
        """Which point of the paper lies at a place of the window; None without a page."""
        if self.page is None:
            return None
        off = (point - self._corner()) / self.pixels
        return (off.x(), self.page.drawing.height - off.y())

    def scroll_by(self, off: QPoint) -> None:
        """Move the paper, as far as it goes."""
        for bar, by in (
            (self.horizontalScrollBar(), off.x()),
            (self.verticalScrollBar(), off.y()),
        ):
            bar.setValue(bar.value() - by)

    # ------------------------------------------------------------ painting

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self.viewport())
        painter.fillRect(event.rect(), QColor(GROUND))
        if self._played is None:
            return
        corner, size = self._corner(), self._size()
        paper = QRectF(corner, corner + size)
        painter.fillRect(paper.translated(2, 2), QColor(LINE))
        painter.fillRect(paper, QColor("white"))
        painter.setClipRect(paper.intersected(QRectF(event.rect())))
        kept = self._picture()
        if kept is not None:
            painter.drawPixmap(corner, kept)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.translate(corner)
        painter.scale(self.pixels, self.pixels)
        if kept is None:
            play_page(painter, self._played, THINNEST / self.pixels)
        if self.lit:
            play_lit(painter, self._played.drawing, self.lit)
        painter.resetTransform()
        painter.setClipping(False)
        painter.setPen(QColor(FAINT))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRect(paper.adjusted(-0.5, -0.5, 0.5, 0.5))

    def _picture(self) -> QPixmap | None:
        """The page painted once for this size; None where it would be too large to keep."""
        ratio, size = self.devicePixelRatioF(), self._size()
        wide, high = round(size.x() * ratio), round(size.y() * ratio)
        if wide * high > KEPT_PIXELS or self._played is None:
            return None
        if self._kept is None or (self._kept.width(), self._kept.height()) != (wide, high):
            self._kept = QPixmap(wide, high)
            self._kept.fill(QColor("white"))
            painter = QPainter(self._kept)
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            painter.scale(self.pixels * ratio, self.pixels * ratio)
            play_page(painter, self._played, THINNEST / self.pixels)
            painter.end()
            self._kept.setDevicePixelRatio(ratio)
        return self._kept

    def scrollContentsBy(self, dx: int, dy: int) -> None:
        self.viewport().update()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._arrange()
