"""The wood of one part: the boxes that are left of a stock box when its cuts are taken away."""

from __future__ import annotations

from collections.abc import Iterable
from functools import lru_cache
from typing import cast

import numpy as np
import numpy.typing as npt

from model.errors import CannotBuild
from model.part import Cut, Point

Floats = npt.NDArray[np.float64]
Bools = npt.NDArray[np.bool_]
Corners = tuple[tuple[Point, Point], ...]
_Box = tuple[float, float, float, float, float, float]

SNAP = 6  # decimals: 1 nm, so that faces that touch are equal
_MANY = 8  # cuts: above this, cells and a greedy merge leave fewer boxes than cut by cut


def wood_boxes(size: Point, cuts: Iterable[Cut], name: str = "part", field: str = "") -> Floats:
    """Boxes that share no space and together fill a stock box less its cuts: (k, 2, 3), mm.

    Corners are snapped to 1 nm. Refused with a sentence that names the part: cuts that leave
    nothing, that part it in two, or that leave two parts of it meeting along a mere edge.
    """
    boxes, flaw = _wood(size, tuple((cut.low, cut.high) for cut in cuts))
    if flaw:
        raise CannotBuild(field or name, flaw.format(name=name))
    return boxes


@lru_cache(maxsize=4096)
def _wood(size: Point, cuts: Corners) -> tuple[Floats, str]:
    """The boxes, and a sentence on what is wrong with them ("" when nothing is)."""
    x, y, z = (round(side, SNAP) for side in size)
    if min(x, y, z) <= 0:
        return np.zeros((0, 2, 3)), "The {name} has no size: one of its sides is not above zero."
    stock = (0.0, 0.0, 0.0, x, y, z)
    snapped = [_within(stock, low, high) for low, high in cuts]
    real = [cut for cut in snapped if cut[0] < cut[3] and cut[1] < cut[4] and cut[2] < cut[5]]
    boxes = [stock]
    if len(real) > _MANY:
        boxes = _merged_cells(stock, real)
    else:
        for cut in real:
            boxes = _less(boxes, cut)
        boxes = _joined(boxes) if len(real) > 1 else boxes
    return np.array(boxes).reshape(-1, 2, 3), _flaw(boxes, stock, real) if real else ""


def _within(stock: _Box, low: Point, high: Point) -> _Box:
    """A cut snapped and clipped to the stock."""
    a, b, c = (max(round(x, SNAP), 0.0) for x in low)
    d, e, f = (min(round(x, SNAP), side) for x, side in zip(high, stock[3:], strict=True))
    return (a, b, c, d, e, f)


def _less(boxes: list[_Box], cut: _Box) -> list[_Box]:
    """Take one cut away. Thickness and width are split off first: wood stays in long boxes."""
    a, b, c, d, e, f = cut
    left: list[_Box] = []
    for box in boxes:
        x0, y0, z0, x1, y1, z1 = box
        if a >= x1 or d <= x0 or b >= y1 or e <= y0 or c >= z1 or f <= z0:
            left.append(box)
            continue
        if z0 < c:
            left.append((x0, y0, z0, x1, y1, c))
            z0 = c
        if f < z1:
            left.append((x0, y0, f, x1, y1, z1))
            z1 = f
        if y0 < b:
            left.append((x0, y0, z0, x1, b, z1))
            y0 = b
        if e < y1:
            left.append((x0, e, z0, x1, y1, z1))
            y1 = e
        if x0 < a:
            left.append((x0, y0, z0, a, y1, z1))
        if d < x1:
            left.append((d, y0, z0, x1, y1, z1))
    return left


def _joined(boxes: list[_Box]) -> list[_Box]:
    """Join boxes that continue each other, along thickness, then width, then length."""
    for axis in (2, 1, 0):
        p, q = (axis + 1) % 3, (axis + 2) % 3
        boxes.sort(key=lambda box: (box[p], box[q], box[p + 3], box[q + 3], box[axis]))
        kept = [boxes[0]] if boxes else []
        for box in boxes[1:]:
            last = kept[-1]
            goes_on = last[axis + 3] == box[axis]
            if goes_on and all(last[k] == box[k] for k in (p, q, p + 3, q + 3)):
                kept[-1] = cast(_Box, (*last[: axis + 3], box[axis + 3], *last[axis + 4 :]))
            else:
                kept.append(box)
        boxes = kept
    return boxes


def cells(size: Point, cuts: Corners) -> tuple[list[Floats], Bools]:
    """Grid lines on each axis, mm, and which cells between them hold wood, for stock less cuts."""
    far = np.round(np.asarray(size, float), SNAP)
    box = np.clip(np.round(np.reshape(np.asarray(cuts, float), (-1, 2, 3)), SNAP), 0, far)
    seen = [{0.0, float(far[a]), *box[:, :, a].ravel().tolist()} for a in range(3)]
    lines = [np.array(sorted(each)) for each in seen]
    wood = np.ones([len(line) - 1 for line in lines], bool)
    ends = [np.searchsorted(lines[a], box[:, :, a]).tolist() for a in range(3)]
    for (a, d), (b, e), (c, f) in zip(*ends, strict=True):
        wood[a:d, b:e, c:f] = False
    return lines, wood


def _merged_cells(stock: _Box, cuts: list[_Box]) -> list[_Box]:
    """Cells of wood, each grown as far as it goes along the length, then width and thickness."""
    lines, wood = cells(stock[3:], tuple((cut[:3], cut[3:]) for cut in cuts))
    x, y, z = (line.tolist() for line in lines)
    boxes: list[_Box] = []
    for a, b, c in np.argwhere(wood).tolist():
        if not wood[a, b, c]:
            continue
        d = a + _run(wood[a:, b, c])
        e = b + _run(np.all(wood[a:d, b:, c], axis=0))
        f = c + _run(np.all(wood[a:d, b:e, c:], axis=(0, 1)))
        wood[a:d, b:e, c:f] = False
        boxes.append((x[a], y[b], z[c], x[d], y[e], z[f]))
    return boxes


def _run(wood: Bools) -> int:
    """How many cells from the first on hold wood."""
    return int(np.append(wood, False).argmin())


def _flaw(boxes: list[_Box], stock: _Box, cuts: list[_Box]) -> str:
    """A sentence on wood that no maker could hold in one hand; "" for a sound part."""
    if not boxes:
        return "The cuts leave nothing of the {name}."
    reached, waiting, has_edges = {0}, [0], False
    while waiting:
        a, b, c, d, e, f = boxes[waiting.pop()]
        for k, (x0, y0, z0, x1, y1, z1) in enumerate(boxes):
            if x0 > d or x1 < a or y0 > e or y1 < b or z0 > f or z1 < c:
                continue
            flat = (x0 == d or x1 == a) + (y0 == e or y1 == b) + (z0 == f or z1 == c)
            if flat == 1 and k not in reached:
                reached.add(k)
                waiting.append(k)
            has_edges |= flat == 2
    if len(reached) < len(boxes):
        return "The cuts go right through the {name} and leave it in two pieces."
    if has_edges and _has_bare_edge(stock, cuts):
        return "The cuts of the {name} meet, so that parts of it hang together by a mere edge."
    return ""


def _has_bare_edge(stock: _Box, cuts: list[_Box]) -> bool:
    """Whether two cells of wood share an edge whose two other neighbours hold none."""
    _, wood = cells(stock[3:], tuple((cut[:3], cut[3:]) for cut in cuts))
    for axis in range(3):
        w = np.moveaxis(wood, axis, 0)
        one, other, beside, above = w[:, :-1, :-1], w[:, 1:, 1:], w[:, 1:, :-1], w[:, :-1, 1:]
        if np.any((one == other) & (beside == above) & (one != beside)):
            return True
    return False
