"""How much each millimetre of a part changes over the year, along its own three axes."""

from __future__ import annotations

from collections.abc import Mapping
from typing import NamedTuple

import numpy as np

from model.materials import Material
from model.materials.movement import Way, growth
from model.parts.pieces import Floats, Pieces
from model.units import Percent


class Season(NamedTuple):
    """Over which moistures wood is followed, and which way its boards were cut."""

    bench: Percent
    driest: Percent
    wettest: Percent
    width: Way
    thickness: Way


class Rates(NamedTuple):
    """Per part (p, 3), along length, width and thickness, mm for each mm: `swell` from the bench
    to the wettest, `shrink` from the bench to the driest, both zero or more; `solid` (p,).
    """

    swell: Floats
    shrink: Floats
    solid: Floats


def rates(pieces: Pieces, materials: Mapping[str, Material], season: Season) -> Rates:
    """Sheets, hardware and the length of every board count as still."""
    known: dict[str, tuple[float, float, float, float, float]] = {}
    for key in {part.material for part in pieces.parts}:
        known[key] = _of(materials.get(key), season)
    table = np.array([known[part.material] for part in pieces.parts]).reshape(-1, 5)
    still = np.zeros((len(table), 1))
    return Rates(np.hstack([still, table[:, :2]]), np.hstack([still, table[:, 2:4]]), table[:, 4])


def _of(material: Material | None, season: Season) -> tuple[float, float, float, float, float]:
    if material is None or material.wood is None:
        return (0.0, 0.0, 0.0, 0.0, 0.0)
    ways = (season.width, season.thickness)
    wide, thick = (growth(1.0, material, way, season.bench, season.wettest) for way in ways)
    thin, flat = (-growth(1.0, material, way, season.bench, season.driest) for way in ways)
    return (wide, thick, thin, flat, 1.0)
