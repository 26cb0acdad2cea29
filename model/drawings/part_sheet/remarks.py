"""What is said of a part in a line below its drawing."""

from __future__ import annotations

from collections.abc import Iterator

from model.drawings.dimensioning.told import Told
from model.part import Part


def remarks(part: Part, handed: str, told: Told) -> tuple[str, ...]:
    """Taper, layers, eased edges, handedness."""
    return tuple(line for line in _remarks(part, handed, told) if line)


def _remarks(part: Part, handed: str, told: Told) -> Iterator[str]:
    if part.taper:
        ends = [told.size(side - 2 * part.taper) for side in part.size[1:]]
        yield (
            f"Taper on all four sides over the first {told.size(part.taper_length)} from the near "
            f"end, {told.size(part.taper)} a side, to {ends[0]} × {ends[1]} there."
        )
    if part.layers > 1 and part.layer_thickness:
        yield f"Glued up of {part.layers} layers, {told.size(part.layer_thickness)} each."
    if part.eased:
        yield f"Long edges eased, radius {told.size(part.eased)}, after the last cut."
    if handed:
        yield f"Handed: {handed}."
    yield _datums(part)


def _datums(part: Part) -> str:
    if not part.cuts and not part.holes:
        return ""
    return (
        "Measure from the sides marked ▲. Sections: seen from the near end, the face at the right."
    )
