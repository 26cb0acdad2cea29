"""How holes look in a long view: circles, dashed bores, and mouths of slanting ones."""

from __future__ import annotations

import math
from collections.abc import Iterator

from model.drawings.paper import Item, Pen, Point, Ring, Stroke
from model.drawings.part_sheet.faces import Look
from model.part import Hole, Part
from model.units import Mm, Share

LEAST: Mm = 0.45  # radius on paper: a smaller ring is a blot
_CORNERS = 24  # of the mouth of a slanting hole


def hole_ink(part: Part, look: Look, scale: Share) -> Iterator[Item]:
    """All holes of a part as they lie in a view, whose lower left corner is (0, 0)."""
    for hole in part.holes:
        yield from _one(hole, part, look, scale)


def _one(hole: Hole, part: Part, look: Look, scale: Share) -> Iterator[Item]:
    along_eye = hole.toward[look.toward]
    straight = abs(along_eye) > 1 - 1e-9
    if straight:
        yield from _round(hole, part, look, scale)
    elif abs(along_eye) < 1e-9 and max(map(abs, hole.toward)) > 1 - 1e-9:
        yield from _bore(hole, part, look, scale)
    else:
        yield from _slanted(hole, part, look, scale)


def _round(hole: Hole, part: Part, look: Look, scale: Share) -> Iterator[Item]:
    at = _on_paper(hole.at, part, look, scale)
    radius = hole.diameter / 2 * scale
    if not _is_seen(hole, part, look):
        yield Ring(at, max(radius, LEAST), "hidden" if radius > 2 else "fine")
        return
    yield Ring(at, max(radius, LEAST), "wide" if radius > 1.5 else "narrow")
    arm = max(radius, LEAST) + 0.7
    yield Stroke(((at[0] - arm, at[1]), (at[0] + arm, at[1])), "fine")
    yield Stroke(((at[0], at[1] - arm), (at[0], at[1] + arm)), "fine")


def _is_seen(hole: Hole, part: Part, look: Look) -> bool:
    """Whether its mouth, or its other end, lies in what the eye sees."""
    axis = look.toward
    end = hole.at[axis] + hole.depth * hole.toward[axis]
    near = part.size[axis] if look.is_high else 0.0
    looks_in = (hole.toward[axis] < 0) == look.is_high
    return looks_in or abs(end - near) < 1e-3


def _bore(hole: Hole, part: Part, look: Look, scale: Share) -> Iterator[Item]:
    """Two dashed lines and the floor between them."""
    start = _on_paper(hole.at, part, look, scale)
    end = _on_paper(_end(hole), part, look, scale)
    long = math.dist(start, end)
    half = hole.diameter / 2 * scale
    if long < 0.3:
        return
    across = (-(end[1] - start[1]) / long * half, (end[0] - start[0]) / long * half)
    pen: Pen = "hidden" if long > 6 else "fine"
    one = [(p[0] + across[0], p[1] + across[1]) for p in (start, end)]
    two = [(p[0] - across[0], p[1] - across[1]) for p in (end, start)]
    yield Stroke((*one, *two), pen)


def _slanted(hole: Hole, part: Part, look: Look, scale: Share) -> Iterator[Item]:
    start = _on_paper(hole.at, part, look, scale)
    end = _on_paper(_end(hole), part, look, scale)
    half = hole.diameter / 2 * scale
    pen: Pen = "narrow" if hole.kind == "pocket hole" else "fine"
    if hole.kind != "pocket hole" or abs(hole.toward[look.toward]) < 1e-9:
        yield Stroke((start, end), "centre" if math.dist(start, end) > 12 else "fine")
        return
    slope = abs(hole.toward[look.toward])
    wide = half / max(slope, 0.05)
    way = math.atan2(end[1] - start[1], end[0] - start[0])
    mouth = (
        _ellipse(start, wide, half, way, 2 * math.pi * k / _CORNERS) for k in range(_CORNERS + 1)
    )
    yield Stroke(tuple(mouth), pen)


def _ellipse(at: Point, wide: Mm, high: Mm, turned: float, angle: float) -> Point:
    x, y = wide * math.cos(angle), high * math.sin(angle)
    c, s = math.cos(turned), math.sin(turned)
    return (at[0] + c * x - s * y, at[1] + s * x + c * y)


def _end(hole: Hole) -> tuple[float, float, float]:
    x, y, z = (a + hole.depth * way for a, way in zip(hole.at, hole.toward, strict=True))
    return (x, y, z)


def _on_paper(point: tuple[float, float, float], part: Part, look: Look, scale: Share) -> Point:
    x, y = look.flat(point, part.size)
    return (x * scale, y * scale)
