"""The bed taken apart: the whole, then each assembly, a mark on every kind of piece."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from functools import partial

import numpy as np

from model.bed import Bed
from model.cutting.record import Box
from model.parts.pieces import Floats
from model.planset.exploded import gaze_for, picture, scale_in
from model.planset.setting import Setting
from model.planset.sheet import Content, Sheet
from model.units import Share

KEY = "exploded"
# How far each assembly is moved out, in sizes of the bed along x, y and z. Drawers come out the way
# they open, by their row. Much of it is up and down: pages are higher than wide.
OUT: Mapping[str, tuple[Share, Share, Share]] = {
    "headboard": (0.0, 0.25, 0.35),
    "footboard": (0.0, -0.25, -0.35),
    "left side": (-0.2, 0.0, -0.55),
    "right side": (0.2, 0.0, -0.55),
    "deck": (0.0, 0.0, 1.25),
    "under the bed": (0.0, 0.0, -0.75),
}
ROWS: Mapping[str, tuple[Share, Share, Share]] = {
    "left": (-0.55, 0.0, -0.3),
    "right": (0.55, 0.0, -0.3),
    "foot": (0.0, -0.55, -0.3),
}
SIDES = ("left side", "right side")
FRONTS: Share = 0.35  # how much farther fronts come out than their boxes
# How far pieces of one assembly are drawn from its middle, in their own distance: along its length
# no more than leaves a gap, across it as far as the page has room.
ALONG: Share = 0.2
ACROSS: tuple[Share, ...] = (0.6, 1.0, 1.6, 2.5, 4.0, 6.0, 9.0)
FARTHEST: Share = 0.4  # of its greatest size, that any piece is moved across
STACKED: Share = 0.75  # of length and width of a drawer, how far the next one lies below it
MOSTLY: Share = 0.5
SMALLER: Share = 0.8  # of the scale without, that moving across may cost


def sheets(setting: Setting) -> tuple[Sheet, ...]:
    """The whole bed, and every assembly of more than one mark."""
    bed = setting.bed
    draw = partial(_whole, bed)
    whole = Sheet(KEY, "The bed taken apart", draw, chapter_title="Exploded views")
    names = dict.fromkeys(mark.assembly for mark in bed.marks)
    return (whole, *(_assembly(bed, name) for name in names if _marks(bed, name) > 1))


def _marks(bed: Bed, assembly: str) -> int:
    if assembly in SIDES:  # marks of both sides are named after the left one
        own = set(_pieces(bed, assembly))
        return sum(not own.isdisjoint(mark.pieces) for mark in bed.marks)
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
    return Content(tuple(picture(bed, pieces, pieces, room, _spread(bed, pieces, room))))


def _pieces(bed: Bed, name: str) -> Iterator[int]:
    """The pieces of an assembly: of what is alike on both sides of the bed that of one side, of
    drawers and fronts those of the first of each kind of mark.
    """
    if name in ("drawers", "fronts"):
        yield from _first_of_each_kind(bed, name)
        return
    wood = [piece for mark in bed.marks for piece in mark.pieces]
    names = SIDES if name in SIDES else (name,)
    yield from (
        piece for piece in wood
        if bed.pieces.form(piece).assembly in names and _lies_on(bed, piece, name)
    )  # fmt: skip


def _lies_on(bed: Bed, piece: int, name: str) -> bool:
    """Whether a piece of a side lies on that side; all others lie where they do."""
    low, high = bed.pieces.bounds
    middle = float(low[piece, 0] + high[piece, 0]) / 2
    return {"left side": middle < 0, "right side": middle > 0}.get(name, True)


def _first_of_each_kind(bed: Bed, name: str) -> Iterator[int]:
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


def _spread(bed: Bed, pieces: list[int], room: Box) -> Floats:
    """Each piece away from the middle of its assembly, or of its drawer, so that the page is full:
    upwards first, which costs no scale on a page that is higher than wide.
    """
    away, stacked = _from_the_middle(bed, pieces), _one_below_the_other(bed, pieces)
    low, high = (bound[pieces] for bound in bed.pieces.bounds)
    size = high.max(axis=0) - low.min(axis=0)
    long = int(size[:2].argmax())
    shares = np.full(3, ACROSS[0])
    shares[long] = ALONG
    gaze = gaze_for(bed, pieces)
    least = SMALLER * scale_in(room, bed, pieces, gaze, stacked + away * shares)
    for axis in (each for each in (2, 1 - long) if _lie_behind(low, high, each)):
        for share in ACROSS[1:]:
            tried = shares.copy()
            tried[axis] = share
            is_far = float(np.abs(away[:, axis]).max()) * share > FARTHEST * float(size.max())
            if is_far or scale_in(room, bed, pieces, gaze, stacked + away * tried) < least:
                break
            shares = tried
    return np.asarray(stacked + away * shares)


def _one_below_the_other(bed: Bed, pieces: list[int]) -> Floats:
    """Drawers of several kinds below the first, out of each other's way; (n, 3), mm."""
    low, high = bed.pieces.bounds
    found = np.zeros((len(bed.pieces), 3))
    groups = dict.fromkeys(bed.pieces.group[piece] for piece in pieces)
    top, first = 0.0, None
    for group in groups:
        own = [piece for piece in pieces if bed.pieces.group[piece] == group]
        start, end = low[own].min(axis=0), high[own].max(axis=0)
        first = (start + end) / 2 if first is None else first
        high_on_view = float((end - start)[:2].sum()) * STACKED / 2
        if top:
            top -= high_on_view
        found[own] = first - (start + end) / 2 + np.array((0.0, 0.0, top))
        top -= high_on_view
    return found


def _lie_behind(low: Floats, high: Floats, axis: int) -> bool:
    """Whether some of these boxes (n, 3) lies behind another as seen along an axis, for the most
    part.
    """
    seen_as = [k for k in range(3) if k != axis]
    low, high = low[:, seen_as], high[:, seen_as]
    shared = np.minimum(high[:, None], high[None]) - np.maximum(low[:, None], low[None])
    area = shared.clip(min=0.0).prod(axis=2)
    np.fill_diagonal(area, 0.0)
    return bool((area > MOSTLY * (high - low).prod(axis=1)).any())


def _from_the_middle(bed: Bed, pieces: list[int]) -> Floats:
    """From the middle of its assembly, or of its drawer, to that of each piece (n, 3)."""
    low, high = bed.pieces.bounds
    middles = (low + high) / 2
    found = np.zeros((len(bed.pieces), 3))
    groups = {piece: bed.pieces.group[piece] for piece in pieces}
    for group in sorted(set(groups.values())):
        own = [piece for piece in pieces if groups[piece] == group]
        centre = (low[own].min(axis=0) + high[own].max(axis=0)) / 2
        found[own] = middles[own] - centre
    return found
