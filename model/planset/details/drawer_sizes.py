"""Which sizes of a drawer its page tells."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from model.bed import Bed
from model.building.joined import Joined
from model.cutting.record import Box
from model.drawings.dimensioning.runs import Side, axis_of
from model.drawings.moved import together
from model.drawings.views.gaze import Gaze
from model.drawings.views.view import View
from model.parts.pieces import Floats
from model.planset.details.drawer_kinds import Drawer
from model.planset.details.works import works
from model.planset.plate import Chain
from model.planset.standing import chain_along, whole
from model.units import Mm


def front(all_of: Joined, drawer: Drawer, view: View) -> Iterator[Chain]:
    """Front and box on each other, and where the pull goes."""
    bed = all_of.bed
    fronts = _outlines(bed, view.gaze, drawer.front)
    boxes = _outlines(bed, view.gaze, drawer.box)
    if not fronts:
        yield from _around(boxes)
        return
    front = together(fronts)
    both = [front, together(boxes)] if boxes else [front]
    sides: tuple[Side, ...] = ("below", "left")
    for side in sides:
        if boxes:
            yield from chain_along(both, side)
        yield whole(front, side)
    holes = [_flat(view.gaze, at) for at in _pull_holes(all_of, drawer)]
    others: tuple[Side, ...] = ("above", "right")
    for side in others:
        axis = axis_of(side)
        if holes:
            spots = [Box(*hole, *hole) for hole in holes]
            yield from chain_along(spots, side, ends=(front[axis], front[axis + 2]))


def side(bed: Bed, drawer: Drawer, view: View) -> Iterator[Chain]:
    """Length and height of the box, the thickness of the front, where the slide is fixed."""
    gaze = view.gaze
    box = together(_outlines(bed, gaze, drawer.box))
    fronts = _outlines(bed, gaze, drawer.front)
    yield from chain_along([box, together(fronts)] if fronts else [box], "below")
    yield from chain_along([box], "left")
    slides = _outlines(bed, gaze, drawer.slides)
    if slides:
        slide = together(slides)
        yield from chain_along([slide], "right", ends=(box.y0, box.y1))
        yield from chain_along([slide], "above", ends=(box.x0, box.x1))


def across(all_of: Joined, drawer: Drawer, view: View) -> Iterator[Chain]:
    """Sides and the clear width between them, the height of the bottom's groove."""
    bed, gaze = all_of.bed, view.gaze
    named = {
        name: _outlines(bed, gaze, [p for p in drawer.box if all_of.part(p).name == name])
        for name in ("box side", "box bottom", "box back")
    }
    box = together(_outlines(bed, gaze, drawer.box))
    yield from chain_along(named["box side"], "below")
    yield whole(together(named["box side"] or [box]), "below")
    if named["box bottom"]:
        yield from chain_along(named["box bottom"], "above")
        yield from chain_along(named["box bottom"], "left", ends=(box.y0, box.y1))
    yield whole(box, "left")
    backs = named["box back"]
    if backs and abs(backs[0].y1 - box.y1) + abs(backs[0].y0 - box.y0) > 0.5:
        yield from chain_along(backs, "right", ends=(box.y0, box.y1))


def _around(boxes: Sequence[Box]) -> Iterator[Chain]:
    if boxes:
        yield whole(together(boxes), "below")
        yield whole(together(boxes), "left")


def _outlines(bed: Bed, gaze: Gaze, pieces: Sequence[int]) -> list[Box]:
    """The outline of each piece on a view, mm of wood."""
    found = []
    for piece in pieces:
        (x0, y0), (x1, y1) = (gaze.flat(bound[piece]).tolist() for bound in bed.pieces.bounds)
        found.append(Box(min(x0, x1), min(y0, y1), max(x0, x1), max(y0, y1)))
    return found


def _pull_holes(all_of: Joined, drawer: Drawer) -> Iterator[Floats]:
    """The middles of the holes for pulls (3,)."""
    for piece in drawer.front:
        every = works(all_of, piece)
        for k, kind in enumerate(every.kinds):
            if kind in ("pull hole", "hand hole"):
                yield (every.low[k] + every.high[k]) / 2


def _flat(gaze: Gaze, at: Floats) -> tuple[Mm, Mm]:
    x, y = gaze.flat(at).tolist()
    return (x, y)
