"""Holes, one note for all that lie on one axis, with the bits as they are sold."""

from __future__ import annotations

import math
from collections.abc import Iterator

from model.drawings.dimensioning.told import Told
from model.drawings.part_sheet.record import HAIR, Group, Spot, counted
from model.part import Face, Hole, Part, Point
from model.shop.order.bits import bit
from model.units import Degrees


def hole_groups(part: Part, told: Told) -> Iterator[Group]:
    """Holes on one axis (a counterbore and its bolt hole) are one; alike ones are told together."""
    bores: list[list[Hole]] = []
    for hole in part.holes:
        own = next((each for each in bores if _is_on_axis(hole, each[0])), None)
        if own is None:
            bores.append([hole])
        else:
            own.append(hole)
    alike: dict[tuple[Face, str], list[list[Hole]]] = {}
    for own in bores:
        own.sort(key=lambda hole: -hole.diameter)
        alike.setdefault((own[0].face, _hole_words(own, part, told)), []).append(own)
    for (face, words), all_of_them in alike.items():
        spots = tuple(_mouth(own[0], part.size) for own in all_of_them)
        yield Group("hole", all_of_them[0][0].kind, face, counted(len(spots), words), spots)


def _is_on_axis(one: Hole, other: Hole) -> bool:
    """Whether two holes in a face lie on one axis and run the same way."""
    if one.face is not other.face or math.dist(one.toward, other.toward) > 1e-6:
        return False
    ways = zip(one.at, other.at, other.toward, strict=True)
    along = sum((a - b) * way for a, b, way in ways)
    foot = [b + along * way for b, way in zip(other.at, other.toward, strict=True)]
    return math.dist(one.at, foot) < 0.01


def _mouth(hole: Hole, size: Point) -> Spot:
    """Where a hole begins, as a square as wide as it is, from its face on."""
    axis, half = hole.face.axis, hole.diameter / 2
    low, high = [at - half for at in hole.at], [at + half for at in hole.at]
    low[axis], high[axis] = sorted((hole.at[axis], hole.at[axis] + hole.depth * hole.toward[axis]))
    return Spot((low[0], low[1], low[2]), (high[0], high[1], high[2]))


def _hole_words(own: list[Hole], part: Part, told: Told) -> str:
    return ", ".join(_one_hole(hole, own, part, told) for hole in own)


def _one_hole(hole: Hole, own: list[Hole], part: Part, told: Told) -> str:
    """`bolt hole ⌀ 7 through`, `pilot hole ⌀ 3, 35.6 deep`."""
    is_slanted = max(abs(way) for way in hole.toward) < 1 - 1e-9
    bore = f"{hole.kind} ⌀ {bit_words(hole, told)}"
    if is_slanted and hole is own[0]:
        bore += f" at {_degrees(hole):g}° to the {hole.face}"
    if _is_through(hole, part.size):
        return f"{bore} {'out of the end' if is_slanted else 'through'}"
    below = "" if _is_at_face(own[0], part.size) else " from the bottom of its recess"
    return f"{bore}, {told.size(hole.depth)} deep{below}"


def _degrees(hole: Hole) -> Degrees:
    return round(math.degrees(math.asin(min(1.0, abs(hole.toward[hole.face.axis])))), 1)


def _is_at_face(hole: Hole, size: Point) -> bool:
    """Whether it begins at the face of the stock, and not at the floor of a recess."""
    axis = hole.face.axis
    return abs(hole.at[axis] - (size[axis] if hole.face.is_high else 0.0)) < HAIR


def bit_words(hole: Hole, told: Told) -> str:
    """The bit as it is sold: `4.5`, `11/64"`, and `10 mm` for a metric one in a shop of inches."""
    words = bit(hole.kind, hole.diameter, told.unit).partition(" (")[0]
    return words.removesuffix(" mm") if told.unit == "mm" else words


def _is_through(hole: Hole, size: Point) -> bool:
    axis = max(range(3), key=lambda k: abs(hole.toward[k]))
    end = hole.at[axis] + hole.depth * hole.toward[axis]
    return end <= HAIR or end >= size[axis] - HAIR
