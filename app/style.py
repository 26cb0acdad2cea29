"""How the window looks: its colours, its spacing, and the signs of the four verdicts."""

from __future__ import annotations

from functools import cache

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QIcon, QPainter, QPalette, QPen, QPixmap, QPolygonF
from PySide6.QtWidgets import QApplication

PAPER = "#f6f4ef"  # the window
SHEET = "#ffffff"  # what is read and typed in
INK = "#26292c"
FAINT = "#6a6e71"  # 4.9 : 1 on PAPER: still readable
LINE = "#d5d0c5"
SPRUCE = "#22644f"  # what is chosen, pressed or changed
SPRUCE_PALE = "#dcebe3"
BRICK = "#a3331f"
BRICK_PALE = "#f8e4de"
OCHRE = "#8a5a00"
SLATE = "#39566f"

VERDICT_COLOURS = {"fails": BRICK, "tight": OCHRE, "note": SLATE, "holds": SPRUCE}

SHEET_OF_RULES = f"""
QMainWindow, QDialog, QSplitter, QStatusBar, QMenuBar {{ background: {PAPER}; }}
QToolTip {{ background: {SHEET}; color: {INK}; border: 1px solid {LINE}; padding: 4px; }}
QSplitter::handle {{ background: {LINE}; }}
QSplitter::handle:horizontal {{ width: 5px; }} QSplitter::handle:vertical {{ height: 5px; }}
QSplitter::handle:hover {{ background: {SPRUCE}; }}
QScrollArea {{ border: none; }}
QLineEdit {{
  background: {SHEET}; border: 1px solid {LINE}; border-radius: 3px; padding: 2px 5px;
  min-height: 20px; selection-background-color: {SPRUCE}; selection-color: white; }}
QLineEdit:focus {{ border: 1px solid {SPRUCE}; }}
QLineEdit[refused="true"] {{ border: 2px solid {BRICK}; background: {BRICK_PALE}; }}
QComboBox QLineEdit, QSpinBox QLineEdit {{ border: none; padding: 0 3px; min-height: 18px; }}
QComboBox[refused="true"], QSpinBox[refused="true"] {{ background: {BRICK_PALE}; }}
QLabel[kind="faint"] {{ color: {FAINT}; }}
QLabel[kind="refusal"] {{ color: {BRICK}; }}
QLabel[kind="title"] {{ font-weight: 600; }}
QLabel[kind="subtitle"] {{ color: {FAINT}; font-weight: 600; padding-top: 6px; }}
QFrame[kind="banner"] {{ background: {BRICK_PALE}; border-bottom: 1px solid {BRICK}; }}
QFrame[kind="offer"] {{ background: {SPRUCE_PALE}; border-bottom: 1px solid {SPRUCE}; }}
QFrame[kind="strip"] {{ background: {PAPER}; border-bottom: 1px solid {LINE}; }}
QFrame[kind="help"] {{ background: {SHEET}; border-top: 1px solid {LINE}; }}
QToolButton[kind="heading"] {{
  border: none; border-top: 1px solid {LINE}; border-radius: 0; padding: 6px 4px; text-align: left;
  font-weight: 600; background: {PAPER}; }}
QToolButton[kind="heading"]:hover {{ color: {SPRUCE}; }}
QToolButton[kind="heading"]:focus {{ border: 1px solid {SPRUCE}; }}
QToolButton[kind="back"] {{ border: none; color: {SPRUCE}; padding: 0; }}
QToolButton[kind="back"]:hover {{ background: {SPRUCE_PALE}; }}
QPushButton, QToolButton[kind="plain"] {{
  background: {SHEET}; border: 1px solid {LINE}; border-radius: 3px; padding: 3px 9px; }}
QPushButton:hover, QToolButton[kind="plain"]:hover {{ border-color: {SPRUCE}; }}
QPushButton:focus, QToolButton[kind="plain"]:focus {{ border: 1px solid {SPRUCE}; }}
QPushButton:checked, QToolButton[kind="plain"]:checked {{
  background: {SPRUCE_PALE}; border-color: {SPRUCE}; }}
QPushButton:disabled, QToolButton[kind="plain"]:disabled {{ color: #a5a299; }}
QPushButton[kind="main"] {{ background: {SPRUCE}; color: white; border-color: {SPRUCE}; }}
QPushButton[kind="main"]:disabled {{ background: #8faea3; }}
QTableView, QTreeView, QTextBrowser {{
  background: {SHEET}; border: none; gridline-color: #ebe7de; alternate-background-color: #faf8f4;
  selection-background-color: {SPRUCE_PALE}; selection-color: {INK}; }}
QHeaderView::section {{
  background: {PAPER}; border: none; border-right: 1px solid {LINE};
  border-bottom: 1px solid {LINE}; padding: 4px 6px; font-weight: 600; }}
QTabWidget::pane {{ border: none; border-top: 1px solid {LINE}; }}
QTabBar::tab {{ padding: 5px 12px; border: none; border-bottom: 3px solid transparent; }}
QTabBar::tab:selected {{ border-bottom: 3px solid {SPRUCE}; font-weight: 600; }}
QTabBar::tab:hover {{ color: {SPRUCE}; }}
QTabBar::tab:focus {{ color: {SPRUCE}; }}
QSlider::groove:horizontal {{ height: 4px; background: {LINE}; border-radius: 2px; }}
QSlider::sub-page:horizontal {{ background: {SPRUCE}; border-radius: 2px; }}
QSlider::handle:horizontal {{
  width: 12px; height: 12px; margin: -5px 0; border-radius: 7px;
  background: {SHEET}; border: 2px solid {SPRUCE}; }}
QSlider::handle:horizontal:focus {{ background: {SPRUCE}; }}
QStatusBar {{ border-top: 1px solid {LINE}; }} QStatusBar::item {{ border: none; }}
"""


def dress(app: QApplication) -> None:
    """Give the application its look, alike on every system: the bed is drawn on a light ground."""
    app.setStyle("Fusion")
    palette = QPalette()
    for role, colour in {
        QPalette.ColorRole.Window: PAPER,
        QPalette.ColorRole.WindowText: INK,
        QPalette.ColorRole.Base: SHEET,
        QPalette.ColorRole.AlternateBase: "#faf8f4",
        QPalette.ColorRole.Text: INK,
        QPalette.ColorRole.Button: "#fbfaf7",
        QPalette.ColorRole.ButtonText: INK,
        QPalette.ColorRole.Highlight: SPRUCE,
        QPalette.ColorRole.HighlightedText: "#ffffff",
        QPalette.ColorRole.PlaceholderText: FAINT,
        QPalette.ColorRole.Link: SPRUCE,
        QPalette.ColorRole.ToolTipBase: SHEET,
        QPalette.ColorRole.ToolTipText: INK,
    }.items():
        palette.setColor(role, QColor(colour))
    app.setPalette(palette)
    app.setStyleSheet(SHEET_OF_RULES)


@cache
def verdict_icon(verdict: str) -> QIcon:
    """A sign that differs in shape, not in colour alone: cross, triangle, dot, tick."""
    picture = QPixmap(32, 32)
    picture.fill(Qt.GlobalColor.transparent)
    painter = QPainter(picture)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    colour = QColor(VERDICT_COLOURS[verdict])
    pen = QPen(colour, 5, Qt.PenStyle.SolidLine, Qt.PenCapStyle.RoundCap)
    painter.setPen(pen)
    if verdict == "fails":
        painter.drawLine(7, 7, 25, 25)
        painter.drawLine(25, 7, 7, 25)
    elif verdict == "holds":
        painter.drawPolyline(QPolygonF([QPointF(6, 17), QPointF(13, 24), QPointF(26, 8)]))
    elif verdict == "tight":
        painter.setBrush(colour)
        painter.drawPolygon(QPolygonF([QPointF(16, 6), QPointF(27, 25), QPointF(5, 25)]))
    else:
        painter.setBrush(colour)
        painter.drawEllipse(QRectF(10, 10, 12, 12))
    painter.end()
    return QIcon(picture)
