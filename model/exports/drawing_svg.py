"""A drawing as an SVG file: true to scale when it is printed at its own size."""

from __future__ import annotations

from base64 import b64encode
from collections.abc import Iterator
from html import escape
from pathlib import Path

from model.drawings.fonts import CAPITAL
from model.drawings.hatching import hatch_strokes
from model.drawings.letters import words_width
from model.drawings.measures import inked
from model.drawings.paper import (
    DASHES,
    PEN_WIDTHS,
    Drawing,
    Fill,
    Hatch,
    Item,
    Pen,
    Picture,
    Point,
    Ring,
    Stroke,
    Text,
)
from model.units import Mm, Share

INK = "#000"
_ENDS = {"left": "start", "middle": "middle", "right": "end"}


def write(drawing: Drawing, path: Path) -> None:
    """Write the file."""
    path.write_text(svg_text(drawing), encoding="utf-8", newline="\n")


def svg_text(drawing: Drawing) -> str:
    """The whole file. Items keep what they stand for in `data-about`."""
    width, height = _number(drawing.width), _number(drawing.height)
    head = (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{width}mm" height="{height}mm" '
        f'viewBox="0 0 {width} {height}">'
    )
    body = (line for item in inked(drawing.items) for line in _drawn(item, drawing.height))
    title = f"<title>{escape(drawing.title)}</title>"
    paper = f'<rect width="{width}" height="{height}" fill="#fff"/>'
    return "\n".join((head, title, paper, *body, "</svg>", ""))


def _drawn(item: Item, top: Mm) -> Iterator[str]:
    about = f' data-about="{escape(item.about)}"' if item.about else ""
    if isinstance(item, Stroke):
        yield f'<path d="{_path(item.points, top)}" fill="none" {_pen(item.pen)}{about}/>'
    elif isinstance(item, Ring):
        x, y = _point(item.at, top)
        fill = "#fff" if item.blank else "none"
        ring = f'cx="{x}" cy="{y}" r="{_number(item.radius)}" fill="{fill}"'
        yield f"<circle {ring} {_pen(item.pen)}{about}/>"
    elif isinstance(item, Hatch):
        lines = " ".join(_path(stroke, top) for stroke in hatch_strokes(item))
        yield f'<path d="{lines}" fill="none" {_pen("fine")}{about}/>'
    elif isinstance(item, Fill):
        yield f'<path d="{_path(item.outline, top)} Z" fill="{grey(item.tone)}"{about}/>'
    elif isinstance(item, Picture):
        yield _picture(item, top, about)
    elif isinstance(item, Text):
        yield _text(item, top, about)


def _picture(picture: Picture, top: Mm, about: str) -> str:
    box = picture.box
    x, y = _point((box.x0, box.y1), top)
    file = b64encode(picture.file).decode("ascii")
    return (
        f'<image x="{x}" y="{y}" width="{_number(box.x1 - box.x0)}" '
        f'height="{_number(box.y1 - box.y0)}" href="data:image/png;base64,{file}"{about}/>'
    )


def _text(text: Text, top: Mm, about: str) -> str:
    x, y = _point(text.at, top)
    long = _number(words_width(text.words, text.height, text.bold))
    size = _number(text.height / CAPITAL)
    # The baseline lies half a capital below; words are held to the room that was kept for them.
    down = _number(text.height / 2)
    turn = f' transform="rotate(-90 {x} {y})"' if text.turned else ""
    weight = ' font-weight="bold"' if text.bold else ""
    return (
        f'<text x="{x}" y="{y}" dy="{down}" font-family="sans-serif" font-size="{size}"{weight} '
        f'text-anchor="{_ENDS[text.anchor]}" textLength="{long}" '
        f'lengthAdjust="spacingAndGlyphs" xml:space="preserve"{turn}{about}>'
        f"{escape(text.words)}</text>"
    )


def grey(tone: Share) -> str:
    """The grey of a fill."""
    level = round(255 * (1 - tone))
    return f"#{level:02x}{level:02x}{level:02x}"


def _pen(pen: Pen) -> str:
    width = PEN_WIDTHS[pen]
    dashes = " ".join(_number(share * width) for share in DASHES.get(pen, ()))
    dashed = f' stroke-dasharray="{dashes}"' if dashes else ""
    return f'stroke="{INK}" stroke-width="{_number(width)}"{dashed}'


def _path(points: tuple[Point, ...], top: Mm) -> str:
    return "M" + " L".join(" ".join(_point(point, top)) for point in points)


def _point(point: Point, top: Mm) -> tuple[str, str]:
    """From the lower left corner to the upper left one."""
    return _number(point[0]), _number(top - point[1])


def _number(mm: Mm) -> str:
    """To a thousandth, never `-0`."""
    return f"{round(mm, 3) + 0.0:.3f}".rstrip("0").rstrip(".")
