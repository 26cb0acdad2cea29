"""How wide a washer may be that lies under a screw's head in a wide hole."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

import numpy as np

from model.bed import Bed
from model.materials import wood_screw
from model.parts.pieces import Floats, Pieces
from model.shop.order.heads import is_wide
from model.units import Mm

_WOOD = "wood screw "
_OVER: Mm = 1.0  # a washer's thickness, and what stands no higher than it is not in its way


class WasherRoom(NamedTuple):
    """For a screw of this gauge and shank in a hole, the widest washer that lies flat, mm."""

    gauge: str
    shank: Mm
    hole: Mm
    most: Mm


def washer_room(bed: Bed) -> WasherRoom | None:
    """The narrowest room of all such screws of a bed; None where it has none."""
    return min(_rooms(bed), key=lambda each: each.most, default=None)


def _rooms(bed: Bed) -> Iterator[WasherRoom]:
    pieces = bed.pieces
    for piece in range(len(pieces)):
        form = pieces.form(piece)
        if not any(is_wide(hole) for hole in form.holes):
            continue
        screws = {screw.at: screw for screw in form.screws}
        for hole in form.holes:
            screw = screws.get(hole.at)
            if is_wide(hole) and screw is not None and screw.kind.startswith(_WOOD):
                gauge = screw.kind.removeprefix(_WOOD)
                room = 2 * _clear(pieces, piece, np.array(hole.at), np.array(hole.toward))
                yield WasherRoom(gauge, wood_screw(gauge).shank_mm, hole.diameter, room)


def _clear(pieces: Pieces, piece: int, at: Floats, toward: Floats) -> Mm:
    """From the axis of a hole to the nearest edge of its own piece, or the nearest other piece that
    stands on the face that the hole starts in.
    """
    turn = pieces.matrices[piece]
    spot, way = turn[:3, :3] @ at + turn[:3, 3], turn[:3, :3] @ toward
    axis = int(np.abs(way).argmax())
    flat = [k for k in range(3) if k != axis]
    low, high = pieces.bounds
    own = min(float(min(spot[k] - low[piece, k], high[piece, k] - spot[k])) for k in flat)
    before = spot[axis] - np.sign(way[axis]) * _OVER / 2
    others = (pieces.group == pieces.group[piece]) & (low[:, axis] < before)
    others &= high[:, axis] > before
    others[piece] = False
    if not others.any():
        return own
    off = np.maximum(np.maximum(low[others] - spot, spot - high[others]), 0.0)[:, flat]
    return min(own, float(np.sqrt((off**2).sum(axis=1)).min()))
