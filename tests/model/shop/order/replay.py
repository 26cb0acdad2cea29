"""A shop that does what the work order says and nothing else: what comes off its bench?

It reads figures, faces and places of the batches; of the parts it knows only their rough sizes.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field

from model.part import Cut, Face, Hole, Point
from model.shop.cut_list import CutPiece
from model.shop.order.record import Batch, Spot, WorkOrder

BORE_ANGLE = {Face.FACE: -1.0, Face.BACK: 1.0}


@dataclass
class Workpiece:
    """A part on its way: size, and what has been cut into it."""

    size: list[float]
    cuts: list[Cut] = field(default_factory=list)
    holes: list[Hole] = field(default_factory=list)
    taper: tuple[float, float] = (0.0, 0.0)
    eased: float = 0.0
    is_sanded: bool = False
    layers: list[float] = field(default_factory=list)


def bench(order: WorkOrder, pieces: Iterable[CutPiece]) -> dict[str, Workpiece]:
    """Every mark as it leaves the shop. Sheet parts are as the saw left them."""
    sawn = {p.name: Workpiece([p.rough.length, p.rough.width, p.rough.thickness]) for p in pieces}
    of = {piece.name: piece for piece in pieces}
    for batch in order.batches:
        for line in batch.lines:
            if batch.way != "saw":
                do(batch, line.mark, line.spots, sawn, of)
    return {mark: sawn[mark] for mark in {piece.mark for piece in pieces}}


def do(
    batch: Batch,
    name: str,
    spots: Sequence[Spot],
    sawn: dict[str, Workpiece],
    of: dict[str, CutPiece],
) -> None:
    if batch.way == "glue":
        return glue(batch, name, sawn, of)
    part = sawn[name]
    if batch.way == "plane":
        shrink(part, 2, batch.figure("thickness"))
    elif batch.way == "width":
        shrink(part, 1, batch.figure("width"))
    elif batch.way == "length":
        shrink(part, 0, batch.figure("length"))
    elif batch.way == "taper":
        part.taper = batch.figure("depth"), batch.figure("length")
    elif batch.way == "ease":
        part.eased = batch.figure("radius")
    elif batch.way == "sand":
        part.is_sanded = True
    elif batch.way == "slot":
        part.cuts += [slot(batch, spot, part.size) for spot in spots]
    elif batch.way == "hole":
        part.holes += [hole(batch, spot, part.size) for spot in spots]
    elif batch.way == "pocket":
        part.holes += [each for spot in spots for each in pocket(batch, spot, part.size)]
    return None


def shrink(part: Workpiece, axis: int, to: float) -> None:
    assert to <= part.size[axis] + 1e-6, "a machine only takes wood away"
    part.size[axis] = to


def glue(batch: Batch, name: str, sawn: dict[str, Workpiece], of: dict[str, CutPiece]) -> None:
    """Strips or layers become one: the board that they are named after carries on as the part."""
    piece = of[f"{name}/1"]
    one = sawn.get(name) or Workpiece(list(sawn[piece.name].size))
    if batch.has("width"):
        assert math.isclose(one.size[1] * piece.strips, batch.figure("width"), abs_tol=1e-6)
        one.size[1] = batch.figure("width")
    else:
        assert math.isclose(one.size[2] * piece.layers, batch.figure("thickness"), abs_tol=1e-3)
        one.size[2] = batch.figure("thickness")
    sawn[name] = one


def span(face: Face, near: float, far: float, side: float) -> tuple[float, float]:
    """Two distances from a face, as places along its axis."""
    return (side - far, side - near) if face.is_high else (near, far)


def slot(batch: Batch, spot: Spot, size: Sequence[float]) -> Cut:
    low, high = [0.0] * 3, [0.0] * 3
    fence = batch.figure("fence")
    for face, near, far in (
        (spot.face, 0.0, batch.figure("depth")),
        (spot.against, fence, fence + batch.figure("width")),
        (spot.end, spot.start, spot.stop),
    ):
        low[face.axis], high[face.axis] = span(face, near, far, size[face.axis])
    return Cut("", spot.face, point(low), point(high))


def hole(batch: Batch, spot: Spot, size: Sequence[float]) -> Hole:
    at, toward = [0.0] * 3, [0.0] * 3
    into = spot.face.axis
    at[into] = size[into] if spot.face.is_high else 0.0
    toward[into] = -1.0 if spot.face.is_high else 1.0
    at[spot.against.axis] = span(spot.against, batch.figure("fence"), 0.0, size[spot.against.axis])[
        1 if spot.against.is_high else 0
    ]
    at[spot.end.axis] = span(spot.end, spot.start, 0.0, size[spot.end.axis])[
        1 if spot.end.is_high else 0
    ]
    depth = batch.figure("depth") if batch.has("depth") else size[into]
    return Hole("", spot.face, point(at), point(toward), batch.figure("diameter"), depth)


def pocket(batch: Batch, spot: Spot, size: Sequence[float]) -> list[Hole]:
    assert math.isclose(batch.figure("stock"), size[2], abs_tol=1e-3), "the jig is set to the stock"
    angle = math.radians(batch.figure("angle"))
    at = [0.0, 0.0, size[2] if spot.face.is_high else 0.0]
    is_far = spot.against is Face.FAR
    at[0] = size[0] - batch.figure("from end") if is_far else batch.figure("from end")
    at[1] = size[1] - spot.start if spot.end.is_high else spot.start
    toward = (
        math.cos(angle) * (1 if is_far else -1),
        0.0,
        math.sin(angle) * BORE_ANGLE[spot.face],
    )
    deep = batch.figure("depth")
    seat = [a + deep * way for a, way in zip(at, toward, strict=True)]
    bore = Hole("", spot.face, point(at), toward, batch.figure("diameter"), deep)
    shank = Hole("", spot.face, point(seat), toward, batch.figure("pilot"), batch.figure("reach"))
    return [bore, shank]


def point(values: Sequence[float]) -> Point:
    return (values[0], values[1], values[2])
