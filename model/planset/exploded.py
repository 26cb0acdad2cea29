"""A picture of some pieces by themselves, taken apart along the ways they come, marks around it."""

from __future__ import annotations

import math
from collections.abc import Collection, Iterator, Mapping, Sequence

import numpy as np

from model.bed import Bed
from model.cutting.record import Box
from model.drawings.dimensioning.balloons import Marked, balloons, room_for
from model.drawings.paper import Item, Point, Stroke
from model.drawings.views.gaze import FOOT_LEFT, FOOT_RIGHT, Gaze
from model.drawings.views.on_paper import on_paper
from model.drawings.views.scene import bed_scene
from model.drawings.views.view import View, seen
from model.part import Point as Way
from model.parts.pieces import Bools, Floats
from model.units import Mm, Share

NEAR: Share = 0.02  # of the size of a view: leaders that end nearer to each other look like one
MOST_EDGES = 12  # of a mark, on which places for its leader are sought
_SHARES: tuple[Share, ...] = (0.5, 0.3, 0.7, 0.1, 0.9)  # of a piece's box, for a leader's end
_LEVEL = 1e-9  # no line to the eye is quite along an axis
APART: Share = 0.07  # of the size of what is shown, for each turn


def gaze_for(bed: Bed, pieces: Sequence[int]) -> Gaze:
    """From the side on which the pieces lie."""
    low, high = bed.pieces.bounds
    middle = (low[list(pieces), 0] + high[list(pieces), 0]).mean() / 2
    return FOOT_RIGHT if middle > 1.0 else FOOT_LEFT


def offsets(bed: Bed, pieces: Sequence[int], ways: Mapping[int, tuple[Way, int]]) -> Floats:
    """How far each piece of the bed (n, 3) is drawn from its place: back along its way, farther the
    later its turn is.
    """
    low, high = bed.pieces.bounds
    size = float(np.linalg.norm(high[list(pieces)].max(axis=0) - low[list(pieces)].min(axis=0)))
    found = np.zeros((len(bed.pieces), 3))
    for piece, (along, turn) in ways.items():
        found[piece] = -np.array(along) * turn * APART * size
    return found


def picture(
    bed: Bed, pieces: Sequence[int], new: Collection[int], room: Box, shift: Floats | None = None,
    marked: bool = True, letters: Mapping[str, str] | None = None,
) -> Iterator[Item]:  # fmt: skip
    """The pieces as large as the room lets them be; what is not `new` in fine lines. What is bought
    is marked with the letter that its code has.
    """
    scene = bed_scene(bed, pieces, offsets=shift)
    called = _called(bed, new, letters or {}) if marked else {}
    gaze = gaze_for(bed, sorted(new) or pieces)
    view = seen(scene, gaze, hidden=False)
    places = list(_marks(view, scene.pieces.tolist(), called))
    places += _unseen(bed, pieces, gaze, called, shift, places)
    edge = room_for(places) + 1.0
    inner = Box(room.x0 + edge, room.y0 + edge, room.x1 - edge, room.y1 - edge)
    scale, at = fitted(view, inner)
    old = {f"piece/{name}" for name, piece in zip(view.names, scene.pieces.tolist(), strict=True)
           if piece not in new}  # fmt: skip
    yield from (_lighter(item, old) for item in on_paper(view, scale, at))
    spots = [Marked((x * scale + at[0], y * scale + at[1]), mark) for (x, y), mark in places]
    box = Box(*(side * scale + at[n % 2] for n, side in enumerate(view.box)))
    yield from balloons(spots, box)


def box_of(bed: Bed, pieces: Sequence[int], gaze: Gaze, shift: Floats) -> Box:
    """About what pieces that are moved take up on a view, mm: by the boxes around them."""
    low, high = (bound[list(pieces)] + shift[list(pieces)] for bound in bed.pieces.bounds)
    ends = np.stack([low, high])
    corners = np.stack([ends[[i, j, k], :, [0, 1, 2]].T for i in (0, 1) for j in (0, 1)
                        for k in (0, 1)])  # fmt: skip
    flat = gaze.flat(corners.reshape(-1, 3))
    (x0, y0), (x1, y1) = (flat.min(axis=0).tolist(), flat.max(axis=0).tolist())
    return Box(x0, y0, x1, y1)


def scale_in(room: Box, bed: Bed, pieces: Sequence[int], gaze: Gaze, shift: Floats) -> Share:
    """At about which scale pieces that are moved fill a room."""
    return scale_of(box_of(bed, pieces, gaze, shift), room)


def scale_of(box: Box, room: Box) -> Share:
    """At which scale a box fills a room, one way at least."""
    wide, high = max(box.x1 - box.x0, 1.0), max(box.y1 - box.y0, 1.0)
    return min((room.x1 - room.x0) / wide, (room.y1 - room.y0) / high)


def fitted(view: View, room: Box) -> tuple[Share, Point]:
    """The scale at which a view fills a room, and where its origin lies then."""
    scale = scale_of(view.box, room)
    x, y = (view.box.x0 + view.box.x1) / 2, (view.box.y0 + view.box.y1) / 2
    middle_x, middle_y = (room.x0 + room.x1) / 2, (room.y0 + room.y1) / 2
    return scale, (middle_x - scale * x, middle_y - scale * y)


def _lighter(item: Item, old: Collection[str]) -> Item:
    if isinstance(item, Stroke) and item.about in old:
        return item._replace(pen="fine")
    return item


def _unseen(
    bed: Bed, pieces: Sequence[int], gaze: Gaze, called: Mapping[int, str], shift: Floats | None,
    seen_of: Sequence[Marked],
) -> Iterator[Marked]:  # fmt: skip
    """Where the first of each kind lies of which no edge is seen: of what is bought, as a bolt in
    its hole, its middle; of wood, as a panel in its grooves, a place that no other piece hides.
    """
    told = {each.mark for each in seen_of}
    low, high = bed.pieces.bounds
    if shift is not None:
        low, high = low + shift, high + shift
    for piece, word in called.items():
        if word in told:
            continue
        middle = (low[piece] + high[piece]) / 2
        if not bed.pieces.form(piece).hardware:
            others = [each for each in pieces if each != piece]
            spots = _inside(low[piece], high[piece])
            clear = spots[~_are_hidden(spots, gaze, low[others], high[others])]
            if not len(clear):
                continue
            middle = clear[0]
        told.add(word)
        x, y = gaze.flat(middle).tolist()
        yield Marked((x, y), word)


def _inside(low: Floats, high: Floats) -> Floats:
    """Places in a box, its middle first: (n, 3)."""
    shares = np.array([(a, b, c) for a in _SHARES for b in _SHARES for c in _SHARES])
    return np.asarray(low + shares * (high - low))


def _are_hidden(spots: Floats, gaze: Gaze, low: Floats, high: Floats) -> Bools:
    """Whether a line from each place (n, 3) to the eye meets any of some boxes (m, 3)."""
    way = np.where(np.abs(gaze.toward) < _LEVEL, _LEVEL, gaze.toward)
    ends = (np.stack([low, high])[:, None] - spots[:, None]) / way
    enter, leave = ends.min(axis=0).max(axis=2), ends.max(axis=0).min(axis=2)
    return np.asarray(((leave > enter) & (leave > 0.0)).any(axis=1))


def _called(bed: Bed, new: Collection[int], letters: Mapping[str, str]) -> dict[int, str]:
    """The mark of each new piece, or its letter where it is bought."""
    marks = {piece: mark.mark for mark in bed.marks for piece in mark.pieces if piece in new}
    bought = ((piece, bed.pieces.form(piece).hardware or "") for piece in new)
    return marks | {piece: letters[code] for piece, code in bought if code in letters}


def _marks(view: View, pieces: Sequence[int], marks: Mapping[int, str]) -> Iterator[Marked]:
    """One place for each new mark, on the longest edge that is seen of it; away from the places of
    other marks, so that no two leaders end in one dot.
    """
    edges: dict[str, list[tuple[Mm, Floats]]] = {}
    lengths = np.linalg.norm(view.visible[:, 1] - view.visible[:, 0], axis=1)
    for row, long, ends in zip(view.visible_piece.tolist(), lengths.tolist(), view.visible,
                               strict=True):  # fmt: skip
        if (mark := marks.get(pieces[row])) is not None:
            edges.setdefault(mark, []).append((round(long, 6), ends))
    near = NEAR * math.hypot(view.box.x1 - view.box.x0, view.box.y1 - view.box.y0)
    found: list[Marked] = []
    for mark, own in edges.items():
        spots = list(_spots(own))
        clear = (at for at in spots if all(math.dist(at, other.at) > near for other in found))
        found.append(Marked(next(clear, spots[0]), mark))
    yield from found


def _spots(edges: Sequence[tuple[Mm, Floats]]) -> Iterator[Point]:
    """Where a leader may end: the middle of the longest edges, then beside their middles."""
    longest = sorted(edges, key=lambda edge: -edge[0])[:MOST_EDGES]
    for share in (0.5, 0.35, 0.65):
        for _, (start, end) in longest:
            x, y = (start + share * (end - start)).tolist()
            yield (x, y)
