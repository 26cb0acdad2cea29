"""What is cut and drilled into one part, gathered as a maker does it and told in his words."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from typing import Literal, NamedTuple

from model.drawings.dimensioning.told import Told
from model.part import Cut, Face, Hole, Part, Point
from model.shop.order.bits import bit
from model.units import Mm

HAIR: Mm = 1e-4
_END_WORK = ("tenon cheek", "tenon shoulder", "tongue rabbet")

Span = tuple[Mm, Mm]


class Spot(NamedTuple):
    """Where one of several alike cuts or holes lies: the box that it fills, in the part's axes."""

    low: Point
    high: Point

    @property
    def middle(self) -> Point:
        x, y, z = ((a + b) / 2 for a, b in zip(self.low, self.high, strict=True))
        return (x, y, z)

    def extent(self, axis: int) -> Mm:
        return self.high[axis] - self.low[axis]


class Group(NamedTuple):
    """Alike cuts or holes in one face; `words` tell kind and sizes, `count` how many there are.

    `shape`: a `slot` is let in between walls, a `step` runs along a corner, a `hole` is round. The
    places of holes are their centres, of slots their near walls. `spots` lie where they begin at
    the face.
    """

    shape: Literal["slot", "step", "hole"]
    kind: str
    face: Face
    words: str
    spots: tuple[Spot, ...]

    def places(self, axis: int, size: Point) -> list[Mm]:
        """From the low side of an axis to each of them; none where they begin at a side of it."""
        found = set()
        for spot in self.spots:
            low, high = spot.low[axis], spot.high[axis]
            if self.shape == "hole":
                found.add(round((low + high) / 2, 6))
            elif low > HAIR and high < size[axis] - HAIR:
                found.add(round(low, 6))
        return sorted(found)

    def is_through(self, axis: int, size: Point) -> bool:
        """Whether they run from side to side."""
        spot = self.spots[0]
        return spot.low[axis] <= HAIR and spot.high[axis] >= size[axis] - HAIR


class Stub(NamedTuple):
    """What cheeks and shoulders leave of an end or an edge: a tenon or a tongue."""

    kind: Literal["tenon", "tongue"]
    face: Face
    length: Mm
    width: Span  # on the width of the part, or its length for a tongue along an edge
    thickness: Span


class PartWork(NamedTuple):
    """All of it."""

    groups: tuple[Group, ...]
    stubs: tuple[Stub, ...]


def part_work(part: Part, told: Told) -> PartWork:
    """The cuts and holes of a part as it is cut."""
    cuts = [_clipped(cut, part.size) for cut in part.cuts]
    plain = [cut for cut in cuts if cut.kind not in _END_WORK]
    groups = [*_cut_groups(plain, part.size, told), *_hole_groups(part, told)]
    stubs = _stubs([c for c in cuts if c.kind in _END_WORK], part.size)
    return PartWork(tuple(_paired(groups, part.size)), tuple(stubs))


def _clipped(cut: Cut, size: Point) -> Cut:
    low = tuple(max(0.0, float(x)) for x in cut.low)
    high = tuple(min(float(side), float(x)) for side, x in zip(size, cut.high, strict=True))
    return cut._replace(low=low, high=high)  # type: ignore[arg-type]


def _steps(mm: Mm) -> int:
    """Sizes are alike within about 3 µm; the odd factor keeps 1/64 in off the edge of a step."""
    return round(mm * 317.159)


# ---------------------------------------------------------------- alike at both ends or edges


def _paired(groups: list[Group], size: Point) -> Iterator[Group]:
    """What is alike at both ends, or along both edges, is told once: `…, both ends`."""
    waiting = list(groups)
    while waiting:
        group = waiting.pop(0)
        side = _side(group, size)
        if side is None:
            yield group
            continue
        other = next((each for each in waiting if _is_pair(group, each, size)), None)
        if other is None:
            yield group._replace(words=f"{group.words}, {side}")
            continue
        waiting.remove(other)
        words = f"{group.words}, both {('ends', 'edges')[side.axis]}"
        yield group._replace(words=words, spots=group.spots + other.spots)


def _side(group: Group, size: Point) -> Face | None:
    """The end or edge that a group lies at, where that has to be said."""
    low = group.spots[0].low
    if group.face.axis == 0 or (group.face.axis == 1 and group.is_through(0, size)):
        return group.face
    if group.shape != "step":
        return None
    if group.is_through(1, size):
        return Face.NEAR if low[0] <= HAIR else Face.FAR
    if group.is_through(0, size) and group.face.axis == 2:
        return Face.LOWER if low[1] <= HAIR else Face.UPPER
    return None


def _is_pair(one: Group, other: Group, size: Point) -> bool:
    """Whether the two lie alike at opposite sides of the part."""
    mine, its = _side(one, size), _side(other, size)
    if mine is None or its is None or mine is its or mine.axis != its.axis:
        return False
    if (one.words, one.shape) != (other.words, other.shape):
        return False
    return _lie(one, mine.axis) == _lie(other, mine.axis)


def _lie(group: Group, axis: int) -> list[tuple[int, ...]]:
    """Where they lie on the other two axes."""
    others = [k for k in range(3) if k != axis]
    return sorted(
        tuple(_steps(x) for k in others for x in (spot.low[k], spot.high[k]))
        for spot in group.spots
    )


# ---------------------------------------------------------------- tenons and tongues


def _stubs(cuts: list[Cut], size: Point) -> Iterator[Stub]:
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


# ---------------------------------------------------------------- cuts


def _cut_groups(cuts: list[Cut], size: Point, told: Told) -> Iterator[Group]:
    alike: dict[tuple[str, Face, tuple[int, ...], tuple[bool, ...]], list[Cut]] = {}
    for cut in cuts:
        extent = tuple(_steps(b - a) for a, b in zip(cut.low, cut.high, strict=True))
        ends = tuple(side for k in (0, 1) for side in _at_sides(cut, k, size))
        alike.setdefault((cut.kind, cut.face, extent, ends), []).append(cut)
    for (kind, face, _, _), own in alike.items():
        spots = tuple(Spot(cut.low, cut.high) for cut in own)
        shape: Literal["slot", "step"] = "step" if _is_step(own[0], size) else "slot"
        words = _counted(len(own), _cut_words(own[0], size, told))
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
    sides = _at_sides(cut, run, size)
    if all(sides):
        full = "" if _is_step(cut, size) else f", full {('length', 'width', 'thickness')[run]}"
        return f"{cut.kind} {wide} wide, {deep} deep{full}"
    if not any(sides):
        return f"{cut.kind} {long} × {wide}, {deep} deep"
    ends = (("near end", "far end"), ("lower edge", "upper edge"), ("back", "face"))[run]
    start = ends[0] if sides[0] else ends[1]
    return f"{cut.kind} {wide} wide, {deep} deep, {long} long from the {start}"


def _run_axes(cut: Cut, size: Point) -> tuple[int, int]:
    """The axis that a cut runs along, and the one across it; the third is its depth."""
    others = [axis for axis in range(3) if axis != cut.face.axis]
    one, other = others
    if all(_at_sides(cut, one, size)) != all(_at_sides(cut, other, size)):
        return (one, other) if all(_at_sides(cut, one, size)) else (other, one)
    is_longer = cut.high[one] - cut.low[one] >= cut.high[other] - cut.low[other]
    return (one, other) if is_longer else (other, one)


# ---------------------------------------------------------------- holes


def _hole_groups(part: Part, told: Told) -> Iterator[Group]:
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
        yield Group("hole", all_of_them[0][0].kind, face, _counted(len(spots), words), spots)


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
    drill = bit_words(hole, told)
    slant = max(abs(way) for way in hole.toward)
    angle = ""
    if slant < 1 - 1e-9 and hole is own[0]:
        degrees = math.degrees(math.asin(min(1.0, abs(hole.toward[hole.face.axis]))))
        angle = f" at {round(degrees, 1):g}° to the {hole.face}"
    if _is_through(hole, part.size):
        through = "out of the end" if slant < 1 - 1e-9 else "through"
        return f"{hole.kind} ⌀ {drill}{angle} {through}"
    return f"{hole.kind} ⌀ {drill}{angle}, {told.size(hole.depth)} deep"


def bit_words(hole: Hole, told: Told) -> str:
    """The bit as it is sold: `4.5`, `11/64"`, and `10 mm` for a metric one in a shop of inches."""
    words = bit(hole.kind, hole.diameter, told.unit).partition(" (")[0]
    return words.removesuffix(" mm") if told.unit == "mm" else words


def _is_through(hole: Hole, size: Point) -> bool:
    axis = max(range(3), key=lambda k: abs(hole.toward[k]))
    end = hole.at[axis] + hole.depth * hole.toward[axis]
    return end <= HAIR or end >= size[axis] - HAIR


def _counted(count: int, words: str) -> str:
    return f"{count} × {words}" if count > 1 else words


def faces_of(groups: Iterable[Group]) -> set[Face]:
    """The faces that they lie in."""
    return {group.face for group in groups}
