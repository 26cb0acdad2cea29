"""Vents in a deck panel: rows of holes through its thickness, evenly spread."""

from __future__ import annotations

from model.part import Face, Hole, Point

PITCH = 5.0  # diameters between vents along a row: stiff enough, common practice, no source


def vent_holes(size: Point, *, diameter: float, rows: int) -> tuple[Hole, ...]:
    """Holes of `diameter` mm in `rows` rows along the panel's length, clear of its edges."""
    across = max(1, int(size[0] / (PITCH * diameter)))
    down = (0.0, 0.0, -1.0)
    return tuple(
        Hole(
            "vent",
            Face.FACE,
            (size[0] * (i + 0.5) / across, size[1] * (r + 1) / (rows + 1), size[2]),
            down,
            float(diameter),
            size[2],
        )
        for r in range(rows)
        for i in range(across)
    )
