"""Pages as a PDF file: lines and letters as such, fonts within, bookmarks, links from page to page.

Written by reportlab, without the date, so that the same pages always give the same file.
"""

from __future__ import annotations

import io
from collections.abc import Callable, Sequence
from functools import cache
from typing import TYPE_CHECKING, Any

from model.drawings.by_pen import Lines, by_pen
from model.drawings.fonts import CAPITAL, Face, face_file, runs
from model.drawings.letters import words_width
from model.drawings.paper import DASHES, PEN_WIDTHS, Drawing, Fill, Pen, Picture, Ring, Text
from model.planset.page import Page
from model.units import Mm

if TYPE_CHECKING:
    from reportlab.pdfgen.canvas import Canvas

POINT: Mm = 25.4 / 72
FACES: tuple[Face, ...] = ("regular", "bold", "signs")
LANGUAGE = "en"
_SHARE = {"left": 0.0, "middle": 0.5, "right": 1.0}


def pdf_file(
    pages: Sequence[Page],
    title: str,
    told: Callable[[int], None] = lambda done: None,
    author: str = "",
) -> bytes:
    """The whole file; `told` hears how many pages are done, and may raise to give up."""
    from reportlab import rl_config
    from reportlab.pdfgen.canvas import Canvas

    rl_config.useA85 = 0  # bytes as they are: nobody sends files through seven-bit lines any more
    _fonts_known()
    file = io.BytesIO()
    canvas = Canvas(
        file, invariant=1, lang=LANGUAGE, pageCompression=1, pdfVersion=(1, 7),
        initialFontName=_called("regular"),  # else each page names one that is not within
    )  # fmt: skip
    canvas.setTitle(title)
    canvas.setSubject("Plans to build a bed by")
    canvas.setCreator("Bedwright")
    canvas.setAuthor(author)
    canvas.setViewerPreference("DisplayDocTitle", "true")
    canvas.showOutline()
    known = {page.key for page in pages}
    for done, page in enumerate(pages, 1):
        _write_page(canvas, page, known)
        told(done)
    canvas.save()
    return file.getvalue()


@cache
def _fonts_known() -> None:
    from reportlab.pdfbase import pdfmetrics
    from reportlab.pdfbase.ttfonts import TTFont

    for face in FACES:
        pdfmetrics.registerFont(TTFont(_called(face), io.BytesIO(face_file(face))))


def _called(face: Face) -> str:
    return f"Bedwright-{face}"


def _write_page(canvas: Canvas, page: Page, known: set[str]) -> None:
    drawing = page.drawing
    canvas.setPageSize((drawing.width / POINT, drawing.height / POINT))
    canvas.bookmarkPage(page.key)
    level = 1 if page.chapter in known else 0  # a page may be chosen without its chapter's first
    canvas.addOutlineEntry(page.listed_as, page.key, level, closed=True)
    canvas.saveState()
    canvas.scale(1 / POINT, 1 / POINT)  # from here on all is in mm
    _draw(canvas, drawing)
    for link in page.links:
        if link.to in known:
            box = (link.box.x0, link.box.y0, link.box.x1, link.box.y1)
            canvas.linkRect("", link.to, box, relative=1, thickness=0)
    canvas.restoreState()
    canvas.showPage()


def _draw(canvas: Canvas, drawing: Drawing) -> None:
    for step in by_pen(drawing.items):
        match step:
            case Lines():
                _draw_lines(canvas, step)
            case Ring():
                _draw_ring(canvas, step)
            case Fill():
                _fill(canvas, step)
            case Picture():
                _show(canvas, step)
            case Text():
                _write(canvas, step)


def _draw_lines(canvas: Canvas, lines: Lines) -> None:
    _take(canvas, lines.pen)
    path = canvas.beginPath()
    for points in lines.lines:
        path.moveTo(*points[0])
        for point in points[1:]:
            path.lineTo(*point)
    canvas.drawPath(path, stroke=1, fill=0)


def _take(canvas: Canvas, pen: Pen) -> None:
    """Take a pen: dashes end square, so that they keep their length."""
    width = PEN_WIDTHS[pen]
    canvas.setLineWidth(width)
    canvas.setLineCap(0 if pen in DASHES else 1)
    canvas.setLineJoin(1)
    canvas.setDash([share * width for share in DASHES.get(pen, ())])


def _draw_ring(canvas: Canvas, ring: Ring) -> None:
    _take(canvas, ring.pen)
    canvas.setFillGray(1)
    canvas.circle(*ring.at, ring.radius, stroke=1, fill=int(ring.blank))


def _fill(canvas: Canvas, fill: Fill) -> None:
    canvas.setFillGray(1 - fill.tone)
    path = canvas.beginPath()
    path.moveTo(*fill.outline[0])
    for point in fill.outline[1:]:
        path.lineTo(*point)
    path.close()
    canvas.drawPath(path, stroke=0, fill=1)


def _show(canvas: Canvas, picture: Picture) -> None:
    from reportlab.lib.utils import ImageReader

    box = picture.box
    image = ImageReader(io.BytesIO(picture.file))
    canvas.drawImage(image, box.x0, box.y0, box.x1 - box.x0, box.y1 - box.y0, mask="auto")


def _write(canvas: Canvas, text: Text) -> None:
    """A line of words from its anchor; the baseline lies half a capital below."""
    x, y = text.at
    size = text.height / CAPITAL
    back = _SHARE[text.anchor] * words_width(text.words, text.height, text.bold)
    canvas.setFillGray(0)
    line: Any = canvas.beginText()
    if text.turned:
        line.setTextTransform(0, 1, -1, 0, x + text.height / 2, y - back)
    else:
        line.setTextOrigin(x - back, y - text.height / 2)
    for run in runs(text.words, text.bold):
        line.setFont(_called(run.face), size)
        line.textOut(run.letters)
    canvas.drawText(line)
