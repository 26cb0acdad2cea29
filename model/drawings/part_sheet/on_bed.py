"""Which way a part lies on the bed, so that its near end and face are not mistaken for the far end
and the back.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import numpy as np

from model.bed import Bed
from model.drawings.part_sheet.record import HAIR
from model.part import Part
from model.parts.marks import Mark, piece_names
from model.parts.pieces import Floats
from model.shop.order.say import listed

# Bed axes: x across, y from foot to head, z up; left and right as seen from the foot.
_WAYS = {
    (1, 0, 0): "to the right", (-1, 0, 0): "to the left", (0, 1, 0): "to the head",
    (0, -1, 0): "to the foot", (0, 0, 1): "up", (0, 0, -1): "down",
}  # fmt: skip
_SIDES = (("near end", 0, -1), ("face", 2, 1), ("upper edge", 1, 1))
_DRAWERS = "drawers"
_NAMED = 6  # pieces that are told apart by their names


def on_bed_words(mark: Mark, bed: Bed | None = None) -> str:
    """`near end down, face to the head and upper edge to the right`.

    Pieces that lie otherwise than each other are told by what they have alike: `face to the inside
    of the bed`. Where that does not fix how they lie, the near end and the face are told of each of
    them, the face only where it is not cut as the back is. Without a bed only what is alike is
    told.
    """
    turns = mark.matrices[:, :3, :3]
    ways = {name: np.round(turns[:, :, axis] * sign) for name, axis, sign in _SIDES}
    told = {name: _alike(toward) for name, toward in ways.items()}
    if bed is not None:
        told = {name: said or _toward_the_middle(ways[name], mark, bed)
                for name, said in told.items()}  # fmt: skip
        if sum(bool(said) for said in told.values()) < 2:  # two sides fix the third
            told |= {name: told[name] or _one_by_one(ways[name], mark, bed)
                     for name in ("near end", *["face"] * has_two_faces(mark.part))}  # fmt: skip
    return listed([f"{name} {said}" for name, said in told.items() if said])


def has_two_faces(part: Part) -> bool:
    """Whether what is cut and drilled into the face is otherwise than that of the back."""
    return set(_work(part)) != set(_work(part, is_turned=True))


def _work(part: Part, is_turned: bool = False) -> Iterator[tuple[object, ...]]:
    """Every cut and hole by its place; thicknesses from the face where the part is turned over."""
    thick = part.size[2]
    for cut in part.cuts:
        depths = sorted(_kept(thick - z if is_turned else z) for z in (cut.low[2], cut.high[2]))
        yield ("cut", *map(_kept, (*cut.low[:2], *cut.high[:2])), *depths)
    for hole in part.holes:
        ends = [hole.at, tuple(a + hole.depth * b for a, b in zip(hole.at, hole.toward,
                                                                  strict=True))]  # fmt: skip
        places = sorted(
            (_kept(x), _kept(y), _kept(thick - z if is_turned else z)) for x, y, z in ends
        )
        yield ("hole", hole.diameter, *places)


def _kept(mm: float) -> int:
    """Places are alike within a thousandth of a mm."""
    return round(mm * 1000)


def _way(vector: Sequence[float]) -> str:
    """In words; "" where it stands askew."""
    x, y, z = (int(each) for each in vector)
    return _WAYS.get((x, y, z), "")


def _alike(toward: Floats) -> str:
    """Where one side of all pieces looks, "" where they differ or stand askew."""
    return _way(toward[0].tolist()) if (toward == toward[0]).all() else ""


def _toward_the_middle(toward: Floats, mark: Mark, bed: Bed) -> str:
    """Whether one side of all pieces looks in, or out; "" where they differ."""
    low, high = bed.pieces.bounds
    own = list(mark.pieces)
    middles = (low[own] + high[own]) / 2
    inward = ((_homes(mark, bed) - middles) * toward).sum(axis=1)
    of = "its drawer" if mark.assembly == _DRAWERS else "the bed"
    ways = (f"to the inside of {of}", f"to the outside of {of}")
    if of == "the bed" and not (toward[:, 0] != 0).any():  # its inside would read as across
        ways = ("along the bed, to its middle", "along the bed, away from its middle")
    if (toward[:, 2] != 0).any():
        return ""
    if (inward > HAIR).all():
        return ways[0]
    return ways[1] if (inward < -HAIR).all() else ""


def _homes(mark: Mark, bed: Bed) -> Floats:
    """The middle of what each piece belongs to: its drawer, or the bed; (n, 3), mm."""
    low, high = bed.pieces.bounds
    found = np.tile((low.min(axis=0) + high.max(axis=0)) / 2, (len(mark.pieces), 1))
    if mark.assembly != _DRAWERS:
        return found
    for row, piece in enumerate(mark.pieces):
        group = bed.pieces.group[piece]
        mates = [
            n for n in range(len(bed.pieces))
            if bed.pieces.group[n] == group and bed.pieces.form(n).assembly == _DRAWERS
            and not bed.pieces.form(n).hardware
        ]  # fmt: skip
        found[row] = (low[mates].min(axis=0) + high[mates].max(axis=0)) / 2
    return found


def _one_by_one(toward: Floats, mark: Mark, bed: Bed) -> str:
    """`down (S7-1 and S7-3) or up (S7-2)`; "" where any stands askew."""
    names = piece_names(bed.parts, bed.pieces)
    found: dict[str, list[str]] = {}
    for vector, piece in zip(toward.tolist(), mark.pieces, strict=True):
        found.setdefault(_way(vector), []).append(names[piece])
    if "" in found:
        return ""
    few = len(mark.pieces) <= _NAMED
    told = [
        f"{way} ({listed(own)})" if few else f"{way} on {len(own)}" for way, own in found.items()
    ]
    return listed(told, "or" if few else "and")
