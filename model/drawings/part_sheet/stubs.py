"""Tenons and tongues, as what their cheeks, shoulders and rabbets leave."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Literal

from model.drawings.part_sheet.record import HAIR, Stub
from model.part import Cut, Face, Point

KINDS = ("tenon cheek", "tenon shoulder", "tongue rabbet")


def stubs(cuts: list[Cut], size: Point) -> Iterator[Stub]:
    """One for each end or edge that cuts of these KINDS lie at."""
    by_face: dict[tuple[str, Face], list[Cut]] = {}
    for cut in cuts:
        kind = "tongue" if cut.kind == "tongue rabbet" else "tenon"
        by_face.setdefault((kind, _root(cut, size)), []).append(cut)
    for (kind, face), own in by_face.items():
        yield _stub(kind, face, own, size)


def _root(cut: Cut, size: Point) -> Face:
    """The end or edge that a cut makes a tenon or tongue of."""
    if cut.kind == "tongue rabbet" and cut.high[0] - cut.low[0] >= size[0] - HAIR:
        return Face.LOWER if cut.low[1] <= HAIR else Face.UPPER
    return Face.NEAR if cut.low[0] <= HAIR else Face.FAR


def _stub(kind: str, face: Face, cuts: list[Cut], size: Point) -> Stub:
    along = face.axis
    other = 1 - along
    width, thick = [0.0, size[other]], [0.0, size[2]]
    for cut in cuts:
        axis, ends = (2, thick) if cut.face.axis == 2 else (other, width)
        if cut.low[axis] <= HAIR:
            ends[0] = max(ends[0], cut.high[axis])
        else:
            ends[1] = min(ends[1], cut.low[axis])
    length = max(cut.high[along] - cut.low[along] for cut in cuts)
    named: Literal["tenon", "tongue"] = "tongue" if kind == "tongue" else "tenon"
    return Stub(named, face, length, (width[0], width[1]), (thick[0], thick[1]))
