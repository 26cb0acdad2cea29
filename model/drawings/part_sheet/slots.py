"""Cuts that are let in or run along a corner, in the trade's words: groove, rabbet, mortise."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Literal

from model.drawings.dimensioning.told import Told
from model.drawings.part_sheet.record import HAIR, Group, Spot, counted, steps
from model.part import Cut, Face, Point


def cut_groups(cuts: list[Cut], size: Point, told: Told) -> Iterator[Group]:
    """Cuts of one kind and size in one face, told together."""
    alike: dict[tuple[str, Face, tuple[int, ...], tuple[bool, ...]], list[Cut]] = {}
    for cut in cuts:
        extent = tuple(steps(b - a) for a, b in zip(cut.low, cut.high, strict=True))
        ends = tuple(side for k in (0, 1) for side in _at_sides(cut, k, size))
        alike.setdefault((cut.kind, cut.face, extent, ends), []).append(cut)
    for (kind, face, _, _), own in alike.items():
        spots = tuple(Spot(cut.low, cut.high) for cut in own)
        shape: Literal["slot", "step"] = "step" if _is_step(own[0], size) else "slot"
        words = counted(len(own), _cut_words(own[0], size, told))
        yield Group(shape, kind, face, words, spots)


def _at_sides(cut: Cut, axis: int, size: Point) -> tuple[bool, bool]:
    return cut.low[axis] <= HAIR, cut.high[axis] >= size[axis] - HAIR


def _is_step(cut: Cut, size: Point) -> bool:
    """Whether a cut lies along a corner: open to one side of another axis, and not to both."""
    others = (axis for axis in range(3) if axis != cut.face.axis)
    return any(sum(_at_sides(cut, axis, size)) == 1 for axis in others)


def _cut_words(cut: Cut, size: Point, told: Told) -> str:
    """`groove 10 wide, 12 deep, full length`, `mortise 175 × 9, 26.6 deep`."""
    run, across = _run_axes(cut, size)
    extent = [high - low for low, high in zip(cut.low, cut.high, strict=True)]
    long, wide, deep = (told.size(extent[axis]) for axis in (run, across, cut.face.axis))
    sides, is_step = _at_sides(cut, run, size), _is_step(cut, size)
    if not any(sides):
        return f"{cut.kind} {long} × {wide}, {deep} deep"
    said = f"{cut.kind} {wide} wide, {deep} deep"
    if cut.face.axis == 1 and across == 2 and sum(_at_sides(cut, 2, size)) == 1:
        # Told as seen on the broad side, whichever side it is sawn from.
        broad = Face.FACE if _at_sides(cut, 2, size)[1] else Face.BACK
        said = f"{cut.kind} {deep} wide on the {broad}, {wide} deep"
    if all(sides):
        return said if is_step else f"{said}, full {('length', 'width', 'thickness')[run]}"
    ends = (("near end", "far end"), ("lower edge", "upper edge"), ("back", "face"))[run]
    start = ends[0] if sides[0] else ends[1]
    return f"{said}, {long} long from the {start}"


def _run_axes(cut: Cut, size: Point) -> tuple[int, int]:
    """The axis that a cut runs along, and the one across it; the third is its depth."""
    others = [axis for axis in range(3) if axis != cut.face.axis]
    one, other = others
    if all(_at_sides(cut, one, size)) != all(_at_sides(cut, other, size)):
        return (one, other) if all(_at_sides(cut, one, size)) else (other, one)
    is_longer = cut.high[one] - cut.low[one] >= cut.high[other] - cut.low[other]
    return (one, other) if is_longer else (other, one)
