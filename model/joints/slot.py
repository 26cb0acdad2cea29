"""The one box cut from which grooves, dadoes, rabbets and mortises are made."""

from __future__ import annotations

from model.part import Cut, Face, Point
from model.units import Mm


def slot(
    size: Point,
    face: Face,
    *,
    depth: Mm,
    first: tuple[Mm, Mm] | None = None,
    second: tuple[Mm, Mm] | None = None,
    kind: str,
) -> Cut:
    """A box cut let into `face` by `depth`.

    `first` and `second` are the (from, to) extents along the two other axes of the part, in the
    order length, width, thickness; None is the full extent. Example: on an edge, `first` runs
    along the length and `second` across the thickness.
    """
    low, high = [0.0, 0.0, 0.0], [float(s) for s in size]
    others = [axis for axis in range(3) if axis != face.axis]
    for axis, extent in zip(others, (first, second), strict=True):
        if extent is not None:
            low[axis], high[axis] = float(extent[0]), float(extent[1])
    if face.is_high:
        low[face.axis] = high[face.axis] - float(depth)
    else:
        high[face.axis] = float(depth)
    return Cut(kind, face, (low[0], low[1], low[2]), (high[0], high[1], high[2]))
