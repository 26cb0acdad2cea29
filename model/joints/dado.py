"""Dado: a slot across the grain that takes the end or the edge of another part."""

from __future__ import annotations

from model.joints.slot import slot
from model.part import Cut, Face, Point
from model.units import Mm


def dado(
    size: Point,
    face: Face,
    *,
    between: tuple[Mm, Mm],
    depth: Mm,
    across: tuple[Mm, Mm] | None = None,
) -> Cut:
    """A slot across a face or an edge, its walls at the distances `between` from the near end.

    `across` is where a stopped dado begins and ends across the part; None is through.
    """
    return slot(size, face, depth=depth, first=between, second=across, kind="dado")
