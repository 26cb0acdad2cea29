"""Screws in a row along a part: through its thickness into what lies behind, each with the
hole that its shank passes.
"""

from __future__ import annotations

from model.part import Face, Hole, Point, Screw
from model.units import Places


def row_of_screws(
    size: Point,
    *,
    through: Face,
    places: Places,
    into: str,
    length: float,
    diameter: float,
    shank_hole: float,
    sunk: float = 0.0,
    cover: float = 3.0,
    kind: str = "wood screw",
) -> tuple[tuple[Hole, ...], tuple[Screw, ...]]:
    """Holes and screws along the middle of a part's width, driven in at the face `through`.

    `places` are those along its length. `shank_hole` is the diameter of the holes, `sunk` how deep
    the heads are countersunk, `cover` the wood that must stay before a point, `kind` what the
    screws are called. All mm, in the part's own axes.
    """
    start, toward = (size[2], -1.0) if through is Face.FACE else (0.0, 1.0)
    holes, screws = [], []
    for x in places:
        mouth = (float(x), size[1] / 2, start)
        holes.append(Hole("shank hole", through, mouth, (0.0, 0.0, toward), shank_hole, size[2]))
        head = (float(x), size[1] / 2, start + toward * sunk)
        screws.append(Screw(kind, head, (0.0, 0.0, toward), length, diameter, into, cover))
    return tuple(holes), tuple(screws)
