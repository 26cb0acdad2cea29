"""The bed as it is seen in a room: its wood, and the pulls on its fronts."""

from __future__ import annotations

from model.bed import Bed
from model.drawings.views.scene import Scene, bed_scene

PULL = "PULL-"  # how the codes of pulls begin


def outside(bed: Bed) -> Scene:
    """All wood, and of what is bought the pulls."""
    codes = (bed.pieces.form(piece).hardware for piece in range(len(bed.pieces)))
    return bed_scene(
        bed, [n for n, code in enumerate(codes) if not code or code.startswith(PULL)]
    )  # fmt: skip
