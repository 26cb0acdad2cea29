"""How cut faces are hatched, so that neighbours and kinds of wood are told apart.

End grain is hatched at 45°, neighbours the other way or wider; long grain has wide strokes along
its fibres; sheet goods are hatched close; what is too thin for strokes is filled.
Source: ISO 128-3, hatching and thin sections; German practice of joinery drawings for the kinds of
wood; both from memory.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from typing import NamedTuple

from model.cutting.record import Box
from model.drawings.paper import Fill, Hatch, Item, Point, grown, touches
from model.drawings.views.section import Cutaway
from model.units import Degrees, Mm, Share

SPACING: dict[Cutaway, Mm] = {"end grain": 1.6, "long grain": 2.2, "sheet": 0.9, "bought": 0.7}
THIN: Mm = 1.0  # a face narrower than this is filled
TONE: dict[Cutaway, Share] = {"end grain": 0.45, "long grain": 0.3, "sheet": 0.6, "bought": 0.8}
_WIDER = 1.5  # times as far apart, where another way of hatching is needed
_NEXT: Mm = 0.2  # faces nearer to each other than this are neighbours


class Face(NamedTuple):
    """A cut face on paper. `grain` is the angle at which its fibres run on the paper."""

    outline: tuple[Point, ...]
    holes: tuple[tuple[Point, ...], ...]
    shows: Cutaway
    grain: Degrees
    about: str


def hatched(faces: Sequence[Face]) -> Iterator[Item]:
    """The hatches and fills of all faces, in their order."""
    boxes = [_box(face.outline) for face in faces]
    ways: list[int] = []
    for k, face in enumerate(faces):
        near = {ways[j] for j in range(k) if touches(grown(boxes[k], _NEXT), boxes[j])}
        ways.append(next(way for way in range(len(near) + 1) if way not in near))
        if is_thin(face.outline):
            yield Fill(face.outline, TONE[face.shows], face.about)
        else:
            yield _hatch(face, ways[k])


def _hatch(face: Face, way: int) -> Hatch:
    along = face.shows == "long grain"
    angle = face.grain if along else (45.0, 135.0)[way % 2]
    spacing = SPACING[face.shows] * _WIDER ** (way if along else way // 2)
    least = _width(face.outline)  # no wider, or a narrow face may fall between two strokes
    return Hatch(face.outline, min(spacing, least), angle, face.holes, face.about)


def is_thin(outline: Sequence[Point]) -> bool:
    """Whether a face is filled, for strokes would not show in it, nor a wide outline around it."""
    return _width(outline) < THIN


def _box(outline: Sequence[Point]) -> Box:
    xs, ys = [x for x, _ in outline], [y for _, y in outline]
    return Box(min(xs), min(ys), max(xs), max(ys))


def _width(outline: Sequence[Point]) -> Mm:
    """About how wide a face is: its area over half its outline, right for long strips."""
    pairs = list(zip(outline, [*outline[1:], outline[0]], strict=True))
    area = abs(sum(x0 * y1 - x1 * y0 for (x0, y0), (x1, y1) in pairs)) / 2
    return 2 * area / max(sum(math.dist(one, other) for one, other in pairs), 1e-9)
