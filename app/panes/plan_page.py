"""One page of the plan set on white paper, as it prints: made larger, moved, followed by its links.

Its scale is mm on the screen to mm of paper: 1 is true size, by what the screen says of its own
width and height.
"""

from __future__ import annotations

from collections.abc import Callable, Collection

from PySide6.QtCore import QEvent, QPoint, QPointF, QRectF, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QHelpEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPixmap,
    QResizeEvent,
    QWheelEvent,
)
from PySide6.QtWidgets import QAbstractScrollArea, QFrame, QToolTip, QWidget

from app.panes.plan_places import PlanPlaces
from app.style import FAINT, LINE
from app.view.page_player import PlayedPage, play_lit, play_page, prepared_page
from model.drawings.paper import Point
from model.planset.page import Page
from model.units import Share

WHOLE, WIDTH, FREE = "whole", "width", "free"  # how the scale follows the window
GROUND = "#e7e3da"  # what the paper lies on
EDGE = 10  # px around the paper
THINNEST = 0.75  # px: thinner lines fade away on a screen
NEAR = 5.0  # px from a line that still belong to it
MOVED = 4  # px from which on a press is a pull
STEP: Share = 1.25
LEAST, MOST = 0.1, 8.0
KEPT_PIXELS = 12_000_000  # a larger page is painted where it is seen
STRANGE_SCREEN = (40.0, 600.0)  # dots per inch: beyond, the screen does not know its own size
USUAL_DOTS = 96.0


class PlanPage(QAbstractScrollArea):
    """Shows a page; says which link is followed, which piece is pressed, and which page is wanted
    next.
    """

    link_followed = Signal(str)  # the key of a page
    piece_picked = Signal(str)  # what it is about, "" beside all pieces
    turned = Signal(int)  # by so many pages
    turned_to_end = Signal(bool)  # the last, or the first
    scaled = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.page: Page | None = None
        self.follows = WHOLE
        self.lit: frozenset[str] = frozenset()
        self.told: Callable[[str], str] = str  # what the note of a piece says
        self.named: Callable[[str], str] = str  # what a page's key is called
        self._scale: Share = 1.0
        self._played: PlayedPage | None = None
        self._places: PlanPlaces | None = None
        self._kept: QPixmap | None = None
        self._pressed: QPoint | None = None
        self._last = QPoint()
        self._is_pulled = False
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMouseTracking(True)
        self.viewport().setMouseTracking(True)
        self.setMinimumSize(180, 110)
        self.setAccessibleName("Page of the plan set, as it prints")

    # ------------------------------------------------------------ what is shown

    def show_page(self, page: Page | None) -> None:
        """Another page from its top, or the same one drawn anew where it stands."""
        is_same = page is not None and self.page is not None and page.key == self.page.key
        self.page = page
        self._played = prepared_page(page.drawing) if page is not None else None
        self._places = PlanPlaces(page) if page is not None else None
        self._kept = None
        self.setAccessibleDescription(page.title if page is not None else "")
        self._arrange()
        if not is_same:
            self.verticalScrollBar().setValue(0)
        self.viewport().update()

    def light(self, abouts: Collection[str]) -> None:
        """Light these pieces."""
        if self.lit != frozenset(abouts):
            self.lit = frozenset(abouts)
            self.viewport().update()

    def bring_to_sight(self, abouts: Collection[str]) -> None:
        """Scroll to the first of these pieces that stands on the page."""
        boxes = [self._places.box_of(about) for about in abouts] if self._places else []
        box = next((each for each in boxes if each is not None), None)
        if box is None:
            return
        middle = self._on_screen(((box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2))
        view = self.viewport().rect()
        if not view.contains(middle.toPoint()):
            off = middle.toPoint() - view.center()
            self._scroll_by(-off)

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
        point = self._on_paper(held)
        self.follows = FREE
        self._scale = min(max(scale, LEAST), MOST)
        self._arrange()
        if point is not None:
            self._scroll_by((held - self._on_screen(point)).toPoint())

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

    def _on_screen(self, point: Point) -> QPointF:
        assert self.page is not None
        x, y = point
        return self._corner() + QPointF(x, self.page.drawing.height - y) * self.pixels

    def _on_paper(self, point: QPointF) -> Point | None:
        if self.page is None:
            return None
        off = (point - self._corner()) / self.pixels
        return (off.x(), self.page.drawing.height - off.y())

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

    # ------------------------------------------------------------ mouse

    def link_at(self, point: QPointF) -> str:
        """The key of the page that the place there leads to, or ""."""
        at = self._on_paper(point)
        link = self._places.link_at(at) if self._places is not None and at is not None else None
        return link.to if link is not None else ""

    def piece_at(self, point: QPointF) -> str:
        """What the piece there is about, or ""."""
        at = self._on_paper(point)
        if self._places is None or at is None:
            return ""
        return self._places.piece_at(at, NEAR / self.pixels)

    def where(self, point: Point) -> QPoint:
        """Where a point of the paper, mm from its lower left corner, lies in the window."""
        return self._on_screen(point).toPoint()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        if event.button() in (Qt.MouseButton.LeftButton, Qt.MouseButton.MiddleButton):
            self._pressed = self._last = event.position().toPoint()
            self._is_pulled = False

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        here = event.position().toPoint()
        if self._pressed is None:
            self._show_hand(event.position())
            return
        if self._is_pulled or (here - self._pressed).manhattanLength() > MOVED:
            self._is_pulled = True
            self.viewport().setCursor(Qt.CursorShape.ClosedHandCursor)
            self._scroll_by(here - self._last)
            self._last = here

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        was_pressed, self._pressed = self._pressed, None
        self._show_hand(event.position())
        if was_pressed is None or self._is_pulled or event.button() != Qt.MouseButton.LeftButton:
            return
        key = self.link_at(event.position())
        if key:
            self.link_followed.emit(key)
        else:
            self.piece_picked.emit(self.piece_at(event.position()))

    def _show_hand(self, point: QPointF) -> None:
        is_way = bool(self.link_at(point) or self.piece_at(point))
        shape = Qt.CursorShape.PointingHandCursor if is_way else Qt.CursorShape.ArrowCursor
        self.viewport().setCursor(shape)

    def _scroll_by(self, off: QPoint) -> None:
        for bar, by in (
            (self.horizontalScrollBar(), off.x()),
            (self.verticalScrollBar(), off.y()),
        ):
            bar.setValue(bar.value() - by)

    def wheelEvent(self, event: QWheelEvent) -> None:
        steps = event.angleDelta().y()
        if event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            if steps:
                self.scale_by(1 if steps > 0 else -1, event.position())
        elif self.verticalScrollBar().maximum() or not steps:
            super().wheelEvent(event)
        else:  # nothing to scroll: the wheel turns the pages
            self.turned.emit(-1 if steps > 0 else 1)
        event.accept()

    def viewportEvent(self, event: QEvent) -> bool:
        if event.type() == QEvent.Type.ToolTip and isinstance(event, QHelpEvent):
            QToolTip.showText(event.globalPos(), self._note(QPointF(event.pos())), self.viewport())
            return True
        return super().viewportEvent(event)

    def _note(self, point: QPointF) -> str:
        key = self.link_at(point)
        if key:
            return f"Go to {self.named(key)}"
        about = self.piece_at(point)
        return self.told(about) if about else ""

    # ------------------------------------------------------------ keys

    def keyPressEvent(self, event: QKeyEvent) -> None:
        key = event.key()
        if key in (Qt.Key.Key_PageUp, Qt.Key.Key_PageDown):
            self.turned.emit(1 if key == Qt.Key.Key_PageDown else -1)
        elif key in (Qt.Key.Key_Home, Qt.Key.Key_End):
            self.turned_to_end.emit(key == Qt.Key.Key_End)
        elif key in (Qt.Key.Key_Plus, Qt.Key.Key_Equal, Qt.Key.Key_Minus):
            self.scale_by(-1 if key == Qt.Key.Key_Minus else 1)
        else:
            super().keyPressEvent(event)
