"""The end of a round bar: a hatched circle and its diameter."""

from __future__ import annotations

import math

from model.cutting.record import Box
from model.drawings.dimensioning.rows import rows
from model.drawings.dimensioning.runs import Run
from model.drawings.dimensioning.told import Told
from model.drawings.moved import around, together
from model.drawings.paper import Hatch, Ring, Stroke, Text
from model.drawings.part_sheet.block import LABEL, Block
from model.drawings.part_sheet.section_view import FIRST, HATCHED
from model.drawings.scales import scale_words, scales
from model.part import Part
from model.units import Mm

_CORNERS = 48  # of the circle that is hatched
_ARM: Mm = 1.5  # of the cross of centre lines, beyond the circle


def round_end(part: Part, told: Told, limit: tuple[Mm, Mm]) -> Block:
    """At the largest scale within `limit` (width, height) on paper."""
    size = part.size[1]
    fitting = (scale for scale in scales(told.unit) if size * scale <= min(limit))
    scale = next(fitting, 0.01)
    wide = size * scale
    view, radius = Box(0.0, 0.0, wide, wide), wide / 2
    angles = (2 * math.pi * k / _CORNERS for k in range(_CORNERS))
    edge = tuple((radius + radius * math.cos(a), radius + radius * math.sin(a)) for a in angles)
    across = Run(((0.0, radius), (wide, radius)), (size,), (f"⌀ {told.size(size)}",))
    below = rows(view, "below", [across], FIRST)
    title = Text((0.0, wide + 4.5), f"Across  {scale_words(scale)}", LABEL, "left", bold=True)
    low, high = -_ARM, wide + _ARM
    items = (
        Hatch(edge, HATCHED), Ring((radius, radius), radius, "wide"),
        Stroke(((low, radius), (high, radius)), "centre"),
        Stroke(((radius, low), (radius, high)), "centre"), *below.items, title,
    )  # fmt: skip
    return Block.of(items, together([view, below.box, around(items[:4] + (title,)) or view]))
