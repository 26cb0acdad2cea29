"""What a drawer weighs, empty, by its pieces."""

from __future__ import annotations

import numpy as np

from model.parts.pieces import Floats, Ints, Pieces
from model.units import Kg


def drawer_pieces(pieces: Pieces, row: str, number: int = 1) -> Ints:
    """The pieces that move with one drawer of a row: indices. None where there is no such row."""
    name = f"{row}-{number}"
    if name not in pieces.groups:
        return np.zeros(0, np.intp)
    return np.flatnonzero(pieces.group == pieces.groups.index(name))


def drawer_weight(pieces: Pieces, masses: Floats, row: str) -> Kg:
    """Box, bottom and front of a row's first drawer; its steel is not counted. All are alike."""
    return float(masses[drawer_pieces(pieces, row)].sum())
