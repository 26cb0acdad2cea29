"""Pages on paper: at true size, in the middle of what paper the printer has."""

from __future__ import annotations

from PySide6.QtCore import QMarginsF, QRectF, QSizeF
from PySide6.QtGui import QPageLayout, QPageSize, QPainter
from PySide6.QtPrintSupport import QPrinter

from app.view.page_player import play_page, prepared_page
from model.planset.page import Page, Paper

MM = QPageLayout.Unit.Millimeter
NEARLY = 1.0  # mm by which a printer may call a paper larger or smaller


def printer_for(paper: Paper, title: str) -> QPrinter:
    """The usual printer, its paper the set's own."""
    printer = QPrinter(QPrinter.PrinterMode.HighResolution)
    printer.setDocName(title)
    printer.setCreator("Bedwright")
    lay_paper(printer, paper)
    return printer


def lay_paper(printer: QPrinter, paper: Paper) -> None:
    """Ask for a size of paper, upright, up to its edges: pages have margins of their own."""
    size = QSizeF(paper.width, paper.height)
    printer.setPageSize(QPageSize(size, QPageSize.Unit.Millimeter, paper.name))
    printer.setPageOrientation(QPageLayout.Orientation.Portrait)
    printer.setFullPage(True)
    printer.setPageMargins(QMarginsF(0, 0, 0, 0), MM)


def has_other_paper(printer: QPrinter, paper: Paper) -> bool:
    """Whether the paper in the printer is not the one that pages are laid out for."""
    sheet = printer.pageLayout().fullRect(MM)
    off = (sheet.width() - paper.width, sheet.height() - paper.height)
    return max(abs(side) for side in off) > NEARLY


def paint_on(painter: QPainter, printer: QPrinter, page: Page) -> None:
    """Paint one page, a mm as long as a mm."""
    drawing, sheet = page.drawing, printer.pageLayout().fullRect(MM)
    dots = printer.resolution() / 25.4
    painter.save()
    painter.scale(dots, dots)
    painter.translate((sheet.width() - drawing.width) / 2, (sheet.height() - drawing.height) / 2)
    painter.setClipRect(QRectF(0, 0, drawing.width, drawing.height))
    play_page(painter, prepared_page(drawing), as_outlines=True)
    painter.restore()
