"""How large the bed is as it stands."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np

from model.parts.marks import Mark
from model.parts.pieces import Pieces
from model.units import Mm

_PULL = "PULL-"


class Overall(NamedTuple):
    """How large a thing is, mm."""

    length: Mm
    width: Mm
    height: Mm


def overall(marks: Sequence[Mark], pieces: Pieces) -> Overall:
    """What its wood fills with its drawers closed, from the floor up: no pulls, no mattress."""
    return _filled([piece for mark in marks for piece in mark.pieces], pieces)


def with_pulls(marks: Sequence[Mark], pieces: Pieces) -> Overall:
    """What wood and pulls fill: the room that the bed takes, and what somebody walks past."""
    wood = [piece for mark in marks for piece in mark.pieces]
    pulls = [k for k in range(len(pieces)) if pieces.form(k).hardware.startswith(_PULL)]
    return _filled([*wood, *pulls], pieces)


def _filled(some: Sequence[int], pieces: Pieces) -> Overall:
    low, high = (bound[list(some)] for bound in pieces.bounds)
    width, length, _ = np.round(high.max(axis=0) - low.min(axis=0), 6).tolist()
    return Overall(length, width, float(high[:, 2].max()))
