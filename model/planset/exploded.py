"""A picture of some pieces by themselves, taken apart along the ways they come, marks around it."""

from __future__ import annotations

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
from model.parts.pieces import Floats
from model.units import Mm, Share

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
    marked: bool = True,
) -> Iterator[Item]:  # fmt: skip
    """The pieces as large as the room lets them be; what is not `new` in fine lines."""
    scene = bed_scene(bed, pieces, offsets=shift)
    view = seen(scene, gaze_for(bed, sorted(new) or pieces), hidden=False)
    places = list(_marks(bed, view, scene.pieces.tolist(), set(new))) if marked else []
    edge = room_for(places) + 1.0
    inner = Box(room.x0 + edge, room.y0 + edge, room.x1 - edge, room.y1 - edge)
    scale, at = fitted(view, inner)
    old = {f"piece/{name}" for name, piece in zip(view.names, scene.pieces.tolist(), strict=True)
           if piece not in new}  # fmt: skip
    yield from (_lighter(item, old) for item in on_paper(view, scale, at))
    spots = [Marked((x * scale + at[0], y * scale + at[1]), mark) for (x, y), mark in places]
    box = Box(*(side * scale + at[n % 2] for n, side in enumerate(view.box)))
    yield from balloons(spots, box)


def fitted(view: View, room: Box) -> tuple[Share, Point]:
    """The scale at which a view fills a room, and where its origin lies then."""
    wide, high = view.box.x1 - view.box.x0, view.box.y1 - view.box.y0
    scale = min((room.x1 - room.x0) / max(wide, 1.0), (room.y1 - room.y0) / max(high, 1.0))
    x, y = (view.box.x0 + view.box.x1) / 2, (view.box.y0 + view.box.y1) / 2
    middle_x, middle_y = (room.x0 + room.x1) / 2, (room.y0 + room.y1) / 2
    return scale, (middle_x - scale * x, middle_y - scale * y)


def _lighter(item: Item, old: Collection[str]) -> Item:
    if isinstance(item, Stroke) and item.about in old:
        return item._replace(pen="fine")
    return item


def _marks(bed: Bed, view: View, pieces: Sequence[int], new: Collection[int]) -> Iterator[Marked]:
    """One place for each new mark: the middle of the longest edge that is seen of it."""
    marks = {piece: mark.mark for mark in bed.marks for piece in mark.pieces}
    best: dict[str, tuple[Mm, Point]] = {}
    lengths = np.linalg.norm(view.visible[:, 1] - view.visible[:, 0], axis=1)
    for row, long, ends in zip(
        view.visible_piece.tolist(), lengths.tolist(), view.visible, strict=True
    ):
        piece = pieces[row]
        mark = marks.get(piece)
        if mark is None or piece not in new:
            continue
        x, y = ends.mean(axis=0).tolist()
        if mark not in best or long > best[mark][0] + 1e-6:
            best[mark] = (long, (x, y))
    yield from (Marked(at, mark) for mark, (_, at) in best.items())
