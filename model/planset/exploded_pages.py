"""The bed taken apart: the whole, then each assembly, a mark on every kind of piece."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from functools import partial

import numpy as np

from model.bed import Bed
from model.cutting.record import Box
from model.parts.pieces import Floats
from model.planset.exploded import picture
from model.planset.setting import Setting
from model.planset.sheet import Content, Sheet
from model.units import Share

KEY = "exploded"
# How far each assembly is moved out, in sizes of the bed along x, y and z. Drawers come out the way
# they open, by their row.
OUT: Mapping[str, tuple[Share, Share, Share]] = {
    "headboard": (0.0, 0.5, 0.0),
    "footboard": (0.0, -0.5, 0.0),
    "left side": (-0.45, 0.0, 0.0),
    "right side": (0.45, 0.0, 0.0),
    "deck": (0.0, 0.0, 0.9),
    "under the bed": (0.0, 0.0, 0.0),
}
ROWS: Mapping[str, tuple[Share, Share, Share]] = {
    "left": (-0.8, 0.0, 0.0),
    "right": (0.8, 0.0, 0.0),
    "foot": (0.0, -0.8, 0.0),
}
FRONTS: Share = 0.25  # how much farther fronts come out than their boxes
APART: Share = (
    0.6  # how far pieces of one assembly are drawn from its middle, in their own distance
)


def sheets(setting: Setting) -> tuple[Sheet, ...]:
    """The whole bed, and every assembly of more than one mark."""
    bed = setting.bed
    draw = partial(_whole, bed)
    whole = Sheet(KEY, "The bed taken apart", draw, chapter_title="Exploded views")
    names = dict.fromkeys(mark.assembly for mark in bed.marks)
    return (whole, *(_assembly(bed, name) for name in names if _marks(bed, name) > 1))


def _marks(bed: Bed, assembly: str) -> int:
    return sum(mark.assembly == assembly for mark in bed.marks)


def _assembly(bed: Bed, name: str) -> Sheet:
    key = f"{KEY}/{name.replace(' ', '-')}"
    return Sheet(key, f"{name.capitalize()} taken apart", partial(_one, bed, name), KEY)


# ---------------------------------------------------------------- the whole


def _whole(bed: Bed, room: Box) -> Content:
    pieces = [n for n in range(len(bed.pieces)) if not bed.pieces.form(n).hardware]
    return Content(tuple(picture(bed, pieces, pieces, room, _moved_out(bed))))


def _moved_out(bed: Bed) -> Floats:
    low, high = bed.pieces.bounds
    size = high.max(axis=0) - low.min(axis=0)
    found = np.zeros((len(bed.pieces), 3))
    for n in range(len(bed.pieces)):
        form, group = bed.pieces.form(n), bed.pieces.groups[bed.pieces.group[n]]
        out = OUT.get(form.assembly, (0.0, 0.0, 0.0))
        if group:
            out = ROWS[group.partition("-")[0]]
            farther = 1.0 + FRONTS * (form.assembly == "fronts")
            out = (out[0] * farther, out[1] * farther, out[2])
        found[n] = np.array(out) * size
    return found


# ---------------------------------------------------------------- one assembly


def _one(bed: Bed, name: str, room: Box) -> Content:
    pieces = list(_pieces(bed, name))
    return Content(tuple(picture(bed, pieces, pieces, room, _spread(bed, pieces))))


def _pieces(bed: Bed, name: str) -> Iterator[int]:
    """All pieces of an assembly; of drawers and fronts, those of the first of each kind of mark."""
    if name not in ("drawers", "fronts"):
        wood = (piece for mark in bed.marks for piece in mark.pieces)
        yield from (piece for piece in wood if bed.pieces.form(piece).assembly == name)
        return
    shown: set[str] = set()
    for group in bed.pieces.groups:
        own = [
            (mark.mark, piece)
            for mark in bed.marks if mark.assembly == name
            for piece in mark.pieces if bed.pieces.groups[bed.pieces.group[piece]] == group
        ]  # fmt: skip
        if {mark for mark, _ in own} - shown:
            shown |= {mark for mark, _ in own}
            yield from (piece for _, piece in own)


def _spread(bed: Bed, pieces: list[int]) -> Floats:
    """Each piece away from the middle of its assembly, or of its drawer, by a share of its way."""
    low, high = bed.pieces.bounds
    middles = (low + high) / 2
    found = np.zeros((len(bed.pieces), 3))
    groups = {piece: bed.pieces.group[piece] for piece in pieces}
    for group in sorted(set(groups.values())):
        own = [piece for piece in pieces if groups[piece] == group]
        centre = (low[own].min(axis=0) + high[own].max(axis=0)) / 2
        found[own] = (middles[own] - centre) * APART
    return found
