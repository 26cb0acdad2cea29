"""A drawing as a DXF file: wood at true size, layers by purpose, dimensions that are dimensions.

Where a part of a drawing is enlarged beside the rest (a section of a long rail) it stays enlarged
by as much, and its dimensions count with their own factor, so that they read sizes of wood.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from pathlib import Path
from typing import Any

from model.cutting.record import Box
from model.drawings.dimensioning.told import Unit
from model.drawings.measures import default_words_at, measure_ink
from model.drawings.moved import around
from model.drawings.paper import (
    DASHES,
    PEN_WIDTHS,
    Drawing,
    Fill,
    Hatch,
    Item,
    Measure,
    Pen,
    Point,
    Ring,
    Stroke,
    Text,
)
from model.exports.drawing_svg import grey
from model.exports.dxf_frame import GREY, STYLE, Layer, Lengths, file_of, new_document
from model.exports.dxf_hatch import hatched_loops
from model.exports.dxf_ink import Ink
from model.exports.dxf_words import line, override

OF_PENS: dict[Pen, str] = {
    "wide": "outline", "narrow": "edges", "fine": "fine-lines", "hidden": "hidden",
    "centre": "centre-lines",
}  # fmt: skip
HATCHING, DIMENSIONS, WORDS, GROUND = "hatching", "dimensions", "words", "ground"
LAYERS: dict[str, Layer] = {
    **{
        name: Layer(width=PEN_WIDTHS[pen], dashes=pen if pen in DASHES else "Continuous")
        for pen, name in OF_PENS.items()
    },
    HATCHING: Layer(GREY, PEN_WIDTHS["fine"]), DIMENSIONS: Layer(), WORDS: Layer(),
    GROUND: Layer(GREY),
}  # fmt: skip
_LINEAR = 0 + 32 + 128  # a level or upright one, with a block of its own and words in their place
_TRUE = 1e-9


def write(drawing: Drawing, path: Path, unit: Unit) -> None:
    """Write the file; `unit` is that of its lengths."""
    path.write_bytes(dxf_file(drawing, unit))


def dxf_file(drawing: Drawing, unit: Unit) -> bytes:
    """The whole file."""
    player = _Player(Lengths(unit, drawing.scale))
    player.play(drawing.items)
    box = around(drawing.items) or Box(0.0, 0.0, drawing.width, drawing.height)
    per = player.lengths.per_paper
    return file_of(player.document, Box(*(per * side for side in box)))


class _Player:
    """Puts items into a document; on paper they are in mm, there in the file's unit."""

    def __init__(self, lengths: Lengths) -> None:
        self.lengths = lengths
        self.document = new_document(lengths, LAYERS)
        self._space = self.document.modelspace()
        self._ink = Ink(self._space)
        self._per = lengths.per_paper

    def play(self, items: Sequence[Item]) -> None:
        blanks = [item for item in items if isinstance(item, Ring) and item.blank]
        for item in items:
            match item:
                case Stroke():
                    self._stroke(self._ink, item, OF_PENS[item.pen])
                case Ring():
                    self._ring(item)
                case Text():
                    self._text(self._ink, item, WORDS)
                case Hatch():
                    self._hatch(item, blanks)
                case Fill():
                    self._fill(item)
                case Measure():
                    self._measure(item)

    def _at(self, point: Point) -> Point:
        return (point[0] * self._per, point[1] * self._per)

    def _stroke(self, ink: Ink, stroke: Stroke, layer: str) -> None:
        points = [self._at(point) for point in stroke.points]
        closes = len(points) > 3 and math.dist(points[0], points[-1]) < 1e-6
        ink.stroke(points[:-1] if closes else points, layer, closes)

    def _ring(self, ring: Ring) -> None:
        self._ink.circle(self._at(ring.at), ring.radius * self._per, OF_PENS[ring.pen])

    def _text(self, ink: Ink, text: Text, layer: str) -> None:
        style = "bold" if text.bold else "regular"
        ink.words(
            self._at(text.at), line(text.words), text.height * self._per, text.anchor, text.turned,
            style, layer,
        )  # fmt: skip

    # ------------------------------------------------------------ what is filled

    def _hatch(self, hatch: Hatch, blanks: Iterable[Ring]) -> None:
        entity = self._space.add_hatch(dxfattribs={"layer": HATCHING, "color": 256})
        turn, apart = math.radians(hatch.angle), hatch.spacing * self._per
        step = (-apart * math.sin(turn), apart * math.cos(turn))
        entity.set_pattern_fill(
            "_USER", color=256, pattern_type=0, definition=[[hatch.angle, (0.0, 0.0), step, []]]
        )
        self._bound(entity, hatched_loops(hatch, blanks))

    def _fill(self, fill: Fill) -> None:
        entity = self._space.add_hatch(dxfattribs={"layer": GROUND, "color": 256})
        entity.set_solid_fill(color=256)
        if fill.tone < 1:
            red, green, blue = bytes.fromhex(grey(fill.tone)[1:])
            entity.rgb = (red, green, blue)
        self._bound(entity, [fill.outline])

    def _bound(self, entity: Any, loops: Iterable[Sequence[Point]]) -> None:
        """The first loop is the outer one."""
        for k, loop in enumerate(loops):
            points = [self._at(point) for point in loop]
            entity.paths.add_polyline_path(points, is_closed=True, flags=0 if k else 1)

    # ------------------------------------------------------------ dimensions

    def _measure(self, measure: Measure) -> None:
        """Its ink in a block of its own, as readers show it; its ends, so that they can measure."""
        from ezdxf.entities import DimStyleOverride

        block = self.document.blocks.new_anonymous_block(type_char="D")
        ink = Ink(block)
        for item in measure_ink(measure):
            if isinstance(item, Stroke):
                self._stroke(ink, item, "0")
            elif isinstance(item, Text):
                self._text(ink, item, "0")
        along = 1 if measure.upright else 0
        x, y = measure.end
        size = measure.size * self.lengths.per_wood
        drawn = abs(measure.end[along] - measure.start[along]) * self._per
        entity: Any = self._space.new_entity("DIMENSION", {"layer": DIMENSIONS, "dimtype": _LINEAR})
        entity.update_dxf_attribs({
            "dimstyle": STYLE, "geometry": block.name,
            "text": override(measure.words, measure.size, self.lengths.unit),
            "defpoint": self._at((measure.line, y) if measure.upright else (x, measure.line)),
            "defpoint2": self._at(measure.start), "defpoint3": self._at(measure.end),
            "text_midpoint": self._at(measure.words_at or default_words_at(measure)),
            "angle": 90.0 if measure.upright else 0.0, "attachment_point": 5,
            "actual_measurement": size,
        })  # fmt: skip
        if drawn and abs(size / drawn - 1) > _TRUE:
            DimStyleOverride(entity, {"dimlfac": size / drawn}).commit()
