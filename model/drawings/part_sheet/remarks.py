"""What is said of a part in lines below its drawing."""

from __future__ import annotations

from collections.abc import Iterator

from model.drawings.dimensioning.told import Told
from model.part import Part


def remarks(part: Part, told: Told) -> tuple[str, ...]:
    """Taper, layers, eased edges, and how the drawing is read."""
    return tuple(_remarks(part, told))


def _remarks(part: Part, told: Told) -> Iterator[str]:
    if part.taper:
        ends = [told.size(side - 2 * part.taper) for side in part.size[1:]]
        yield f"Tapered on all four sides, {told.size(part.taper)} a side,"
        yield f"to {ends[0]} × {ends[1]} at the near end."
    if part.layers > 1 and part.layer_thickness:
        yield f"Glued up of {part.layers} layers, {told.size(part.layer_thickness)} each."
    if part.eased:
        yield f"Long edges eased, radius {told.size(part.eased)}, after the last cut."
    if part.cuts or part.holes:
        yield "Measure from the sides marked ▲."
        yield "Sections are seen from the near end, the face at the right."
