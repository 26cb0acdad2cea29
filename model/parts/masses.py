"""What the pieces weigh, by the density of what they are made of."""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np

from model.materials import Material
from model.parts.pieces import Floats, Pieces

_MM3_PER_M3 = 1e9


def masses(pieces: Pieces, known: Mapping[str, Material]) -> Floats:
    """The mass of every piece, by the materials with their keys: (n,), kg. Round holes are not
    taken off; what is not made of a wood or a sheet (steel, the mattress) counts as nothing.
    """
    each = np.prod(pieces.hi - pieces.lo, axis=1)
    volume = np.bincount(pieces.piece, each, minlength=len(pieces))
    density = [
        known[part.material].density_kg_m3 if part.material in known else 0.0
        for part in pieces.parts
    ]
    return np.asarray(volume * np.array(density)[pieces.part] / _MM3_PER_M3)
