"""Where pieces stand on a view, and the chains of sizes that follow from them."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from itertools import pairwise

from model.bed import Bed
from model.cutting.record import Box
from model.drawings.dimensioning.runs import Side, axis_of, steps_words
from model.drawings.dimensioning.told import Told
from model.drawings.moved import together
from model.drawings.paper import Point
from model.drawings.views.gaze import Gaze
from model.part import Part
from model.planset.plate import Chain
from model.units import Mm

SAME: Mm = 1e-3
FEW = 5  # equal steps that are told one by one


def boxes_of(bed: Bed, gaze: Gaze, wanted: Callable[[Part], bool]) -> list[Box]:
    """The outlines of some pieces on a view square to the bed's axes, mm of wood."""
    pieces = bed.pieces
    return [_outline(bed, gaze, n) for n in range(len(pieces)) if wanted(pieces.form(n))]


def outlines(bed: Bed, gaze: Gaze, wanted: Callable[[Part], bool]) -> dict[str, Box]:
    """One outline around the wanted pieces of each drawer, by its name (`left-1`)."""
    pieces = bed.pieces
    found: dict[str, list[Box]] = {}
    for n in range(len(pieces)):
        group = pieces.groups[pieces.group[n]]
        if group and wanted(pieces.form(n)):
            found.setdefault(group, []).append(_outline(bed, gaze, n))
    return {group: together(boxes) for group, boxes in found.items()}


def _outline(bed: Bed, gaze: Gaze, piece: int) -> Box:
    (x0, y0), (x1, y1) = (gaze.flat(bound[piece]).tolist() for bound in bed.pieces.bounds)
    return Box(min(x0, x1), min(y0, y1), max(x0, x1), max(y0, y1))


def named(assembly: str, *names: str) -> Callable[[Part], bool]:
    """Pieces of wood of an assembly with one of these names; any name where none is given."""
    return lambda part: (
        part.assembly == assembly and not part.hardware and (not names or part.name in names)
    )


def chain_along(
    boxes: Sequence[Box], side: Side, level: int = 0, ends: Iterable[Mm] = ()
) -> Iterator[Chain]:
    """One chain through the edges of all boxes, and through further `ends`; none for less than one
    span.
    """
    axis = axis_of(side)
    found = sorted({round(box[at], 6) for box in boxes for at in (axis, axis + 2)} | set(ends))
    places = [at for at, before in zip(found, [None, *found], strict=False)
              if before is None or at - before > SAME]  # fmt: skip
    if len(places) > 1:
        yield Chain(side, tuple(_point(boxes, side, at) for at in places), level)


def whole(box: Box, side: Side) -> Chain:
    """The whole of a box, to stand farthest out."""
    axis = axis_of(side)
    return Chain(side, tuple(_point([box], side, box[at]) for at in (axis, axis + 2)), level=1)


def row_of(boxes: Sequence[Box], side: Side, told: Told, low: Mm, high: Mm) -> Iterator[Chain]:
    """A row of alike pieces between two ends, as slats in their well: the first gap and piece, all
    steps in one, the last piece and gap.
    """
    axis = axis_of(side)
    spans = sorted({(box[axis], box[axis + 2]) for box in boxes})
    starts = [start for start, _ in spans]
    steps = [b - a for a, b in pairwise(starts)]
    if len(spans) <= FEW or max(steps) - min(steps) > SAME:
        yield from chain_along(boxes, side, ends=(low, high))
        return
    first, last = spans[0], spans[-1]
    pitch = sum(steps) / len(steps)
    gap = pitch - (first[1] - first[0])
    words = [
        *(told.size(b - a) for a, b in ((low, first[0]), first)),
        f"{len(spans)} in all, gaps {told.size(gap)}: "
        f"{steps_words(len(steps), sum(steps), told.size(sum(steps)), told)}",
        *(told.size(b - a) for a, b in (last, (last[1], high))),
    ]
    yield from (
        Chain(side, (_point(boxes, side, a), _point(boxes, side, b)), words=(said,))
        for (a, b), said in zip(
            ((low, first[0]), first, (first[0], last[0]), last, (last[1], high)), words, strict=True
        )
        if b - a > SAME
    )


def _point(boxes: Sequence[Box], side: Side, at: Mm) -> Point:
    """Where a leading line ends: at the edge of the nearest box that has an edge there."""
    axis = axis_of(side)
    near = [box for box in boxes if min(abs(box[axis] - at), abs(box[axis + 2] - at)) <= SAME]
    chosen = near or boxes
    if side in ("below", "left"):
        edge = min(box[1 - axis] for box in chosen)
    else:
        edge = max(box[3 - axis] for box in chosen)
    return (at, edge) if axis == 0 else (edge, at)
