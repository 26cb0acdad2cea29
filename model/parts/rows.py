"""Pieces that stand in rows: at each of some places along the run, and at each of some heights."""

from __future__ import annotations

from model.part import Place
from model.units import Places


def in_rows(across: Places, up: Places) -> tuple[Place, ...]:
    """One piece at each place and height, shifted from the first of both."""
    return tuple(Place(u=u - across[0], z=z - up[0]) for u in across for z in up)
