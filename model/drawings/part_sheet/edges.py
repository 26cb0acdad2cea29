"""Visible and hidden edges of one part, and its cross-sections, exact from its cells of wood.

A part is a box less boxes: cut along every wall it is a grid of cells. Two columns of cells side by
side have an edge between them where the wood in them differs; it is seen where the nearest wood
does. (Scenes of many pieces, seen from any direction, are `model.drawings.views`.)
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterator
from typing import NamedTuple

import numpy as np

from model.cutting.record import Box
from model.drawings.part_sheet.faces import Look
from model.part import Hole, Part, Point
from model.parts.pieces import Bools
from model.parts.wood import cells
from model.units import Mm

Line = tuple[Mm, Mm, Mm, Mm]  # x0, y0, x1, y1, level or upright, mm of wood
Corners = tuple[Point, Point]


class Cells(NamedTuple):
    """Grid lines on each axis, mm, and which cells between them hold wood."""

    lines: tuple[list[float], ...]
    wood: Bools


class Edges(NamedTuple):
    """Lines of a view, from its lower left corner."""

    seen: tuple[Line, ...]
    hidden: tuple[Line, ...]


class Section(NamedTuple):
    """A part cut across: boxes of cut wood, their outline, and edges that are seen beyond."""

    wood: tuple[Box, ...]
    outline: tuple[Line, ...]
    beyond: tuple[Line, ...]


def cells_of(part: Part, more: tuple[Corners, ...] = ()) -> Cells:
    """The wood of a part, less `more` boxes."""
    lines, wood = cells(part.size, (*((cut.low, cut.high) for cut in part.cuts), *more))
    return Cells(tuple(line.tolist() for line in lines), wood)


def square_holes(part: Part) -> tuple[Corners, ...]:
    """The holes across the length, as the boxes that a section along their axis shows."""
    return tuple(_square(hole) for hole in part.holes if abs(hole.toward[0]) < 1e-9)


def _square(hole: Hole) -> Corners:
    half = hole.diameter / 2
    end = [at + hole.depth * way for at, way in zip(hole.at, hole.toward, strict=True)]
    axis = 1 if abs(hole.toward[1]) > 0.5 else 2
    aside = [0.0 if k == axis else half for k in range(3)]
    ends = list(zip(hole.at, end, aside, strict=True))
    low = [min(a, b) - more for a, b, more in ends]
    high = [max(a, b) + more for a, b, more in ends]
    return (low[0], low[1], low[2]), (high[0], high[1], high[2])


def edges(found: Cells, look: Look, size: Point) -> Edges:
    """What is seen, and what lies behind, in a long view."""
    wood = np.moveaxis(found.wood, (0, look.up, look.toward), (0, 1, 2))
    seen, hidden = _differences(wood[:, :, ::-1] if look.is_high else wood)
    xs, ys = found.lines[0], found.lines[look.up]
    lines = (list(_merged(*seen, xs, ys)), list(_merged(*hidden, xs, ys)))
    if look.up_sign < 0:
        high = size[look.up]
        lines = tuple([(a, high - d, c, high - b) for a, b, c, d in some] for some in lines)  # type: ignore[assignment]
    if look.is_turned:
        long = size[0]
        lines = tuple([(long - c, b, long - a, d) for a, b, c, d in some] for some in lines)  # type: ignore[assignment]
    return Edges(tuple(lines[0]), tuple(lines[1]))


def section(found: Cells, at: Mm) -> Section:
    """Cut across the length at `at`, seen from the near end: thickness to the right, width up."""
    lines, k = found.lines, _cell(found.lines[0], at)
    return _cut_through(np.transpose(found.wood[k:], (2, 1, 0)), lines[2], lines[1])


def lengthwise(found: Cells, at: Mm) -> Section:
    """Cut along the length at `at` of the width, seen from the lower edge: the face is up."""
    lines, k = found.lines, _cell(found.lines[1], at)
    return _cut_through(np.transpose(found.wood[:, k:], (0, 2, 1)), lines[0], lines[2])


def _cell(lines: list[float], at: Mm) -> int:
    """The cell that a place lies in."""
    return min(bisect_right(lines, at), len(lines) - 1) - 1


def _cut_through(wood: Bools, xs: list[float], ys: list[float]) -> Section:
    """Of wood (right, up, away from the eye), of which the nearest layer is cut."""
    outline, _ = _differences(wood[:, :, :1])
    behind, _ = _differences(wood)
    lines = tuple(_merged(*outline, xs, ys))
    beyond = tuple(line for line in _merged(*behind, xs, ys) if line not in lines)
    return Section(tuple(_boxes(wood[:, :, 0], xs, ys)), lines, beyond)


Pairs = tuple[Bools, Bools]  # upright edges between columns, level edges between rows


def _differences(wood: Bools) -> tuple[Pairs, Pairs]:
    """Where columns of wood (right, up, away from the eye) differ: seen, and only behind."""
    padded = np.zeros((wood.shape[0] + 2, wood.shape[1] + 2, wood.shape[2]), bool)
    padded[1:-1, 1:-1] = wood
    depth = padded.shape[2]
    first = np.where(padded.any(axis=2), padded.argmax(axis=2), depth)
    seen = (first[1:] != first[:-1], first[:, 1:] != first[:, :-1])
    other = ((padded[1:] != padded[:-1]).any(axis=2), (padded[:, 1:] != padded[:, :-1]).any(axis=2))
    hidden = (other[0] & ~seen[0], other[1] & ~seen[1])
    return (
        (seen[0][:, 1:-1], seen[1][1:-1, :]),
        (hidden[0][:, 1:-1], hidden[1][1:-1, :]),
    )


def _merged(upright: Bools, level: Bools, xs: list[float], ys: list[float]) -> Iterator[Line]:
    """Edges of cells joined to lines."""
    for k, x in enumerate(xs):
        for a, b in _runs(upright[k]):
            yield (x, ys[a], x, ys[b])
    for k, y in enumerate(ys):
        for a, b in _runs(level[:, k]):
            yield (xs[a], y, xs[b], y)


def _runs(row: Bools) -> list[tuple[int, int]]:
    """First and last + 1 of each row of cells that are set."""
    found: list[tuple[int, int]] = []
    start = -1
    for k, is_set in enumerate(row.tolist()):
        if is_set and start < 0:
            start = k
        elif not is_set and start >= 0:
            found.append((start, k))
            start = -1
    return [*found, (start, len(row))] if start >= 0 else found


def _boxes(cut: Bools, xs: list[float], ys: list[float]) -> Iterator[Box]:
    """Cells of wood as boxes, row by row; rows that continue each other are one."""
    open_boxes: dict[tuple[int, int], int] = {}
    for k in range(len(ys)):
        here = set(_runs(cut[:, k])) if k < len(ys) - 1 else set()
        for run in sorted(set(open_boxes) - here):
            yield Box(xs[run[0]], ys[open_boxes.pop(run)], xs[run[1]], ys[k])
        for run in here:
            open_boxes.setdefault(run, k)
