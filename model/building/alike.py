"""Which units are made alike: one can be turned about its upright so that it lies on the other."""

from __future__ import annotations

import hashlib
from collections.abc import Iterable, Sequence

import numpy as np

from model.building.joined import Joined
from model.building.units import Unit, Units
from model.parts.pieces import Floats

_STEPS_PER_MM = 62.83185  # about 0.016 mm; the odd factor keeps fractions of an inch off its steps


class Alike:
    """Groups of alike units."""

    def __init__(self, joined: Joined, units: Units) -> None:
        self._joined, self._units = joined, units

    def groups(self, roots: Iterable[Unit]) -> list[list[Unit]]:
        """Units that are alike with all that is fixed to them, in the order of the first."""
        found: dict[str, list[Unit]] = {}
        for unit in roots:
            found.setdefault(self._digest(self._units.whole(unit)), []).append(unit)
        return list(found.values())

    def _digest(self, whole: Sequence[int]) -> str:
        """The same for units that are alike, another for mirror images."""
        boxes, owners = self._boxes(whole)
        low, high = boxes[:, :3].min(axis=0), boxes[:, 3:].max(axis=0)
        moved = boxes - np.tile((low + high) / 2, 2)
        turned = []
        for _ in range(4):
            rows = np.round(moved * _STEPS_PER_MM).astype(int).tolist()
            turned.append(repr(sorted(zip(owners, map(tuple, rows), strict=True))))
            moved = _quarter(moved)
        return hashlib.sha256(min(turned).encode()).hexdigest()

    def _boxes(self, whole: Sequence[int]) -> tuple[Floats, list[str]]:
        """Every box of the pieces, and each hole as a box of no width: (b, 6), and whose it is."""
        joined, pieces = self._joined, self._joined.pieces
        rows: list[Floats] = []
        owners: list[str] = []
        for piece in whole:
            name = joined.mark_of.get(piece) or joined.hardware[piece]
            own = slice(int(pieces.first[piece]), int(pieces.first[piece + 1]))
            wood = np.concatenate([pieces.lo[own], pieces.hi[own]], axis=1)
            rows.append(wood)
            owners += [name] * len(wood)
            holes = joined.part(piece).holes
            if holes and joined.is_wood(piece):
                matrix = pieces.matrices[piece]
                at = np.array([hole.at for hole in holes], float) @ matrix[:3, :3].T + matrix[:3, 3]
                rows.append(np.tile(at, 2))
                owners += [f"{name} {hole.kind}" for hole in holes]
        return np.concatenate(rows), owners


def _quarter(boxes: Floats) -> Floats:
    """Boxes turned by a quarter about the upright axis: x to y, y to -x."""
    x0, y0, z0, x1, y1, z1 = boxes.T
    return np.stack([-y1, x0, z0, -y0, x1, z1], axis=1)
