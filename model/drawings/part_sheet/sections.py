"""Where a part is cut across to be dimensioned, and what each section tells.

Every cut and hole that lies somewhere across the part is met by a section; the fewest are made
that meet all. Across, heights are measured from the lower edge, thicknesses from the face.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import NamedTuple

from model.drawings.part_sheet.record import HAIR, Group, PartWork, Spot, Stub
from model.part import Face, Point
from model.units import Mm

Marks = tuple[tuple[Mm, ...], ...]  # rows of places along one axis, each starting at its datum


class Need(NamedTuple):
    """Something to be seen across a part: `up` are heights from the lower edge, `deep` thicknesses
    from the back, `spans` the stretches of the length on which a section meets it.
    """

    title: str
    up: Marks
    deep: Marks
    spans: tuple[tuple[Mm, Mm], ...]
    groups: tuple[Group, ...] = ()

    @property
    def key(self) -> tuple[object, ...]:
        """Alike at both ends is told once."""
        return (self.title, _rounded(self.up), _rounded(self.deep))


class Cut(NamedTuple):
    """One section: where it is cut, and what it is to tell."""

    at: Mm
    needs: tuple[Need, ...]

    @property
    def title(self) -> str:
        """`mortise, groove`."""
        return ", ".join(dict.fromkeys(need.title for need in self.needs))


def cuts(work: PartWork, size: Point, is_slim: bool) -> tuple[Cut, ...]:
    """The sections of a part; one that `is_slim` on paper has its heights told here too."""
    needs = _merged([*_stub_needs(work.stubs, size), *_group_needs(work.groups, size, is_slim)])
    found: list[Cut] = []
    left = list(needs)
    while left:
        at = max(_stations(left), key=lambda x: (sum(_meets(need, x) for need in left), -x))
        found.append(Cut(at, tuple(need for need in left if _meets(need, at))))
        left = [need for need in left if not _meets(need, at)]
    return tuple(sorted(found, key=lambda cut: cut.at))


def _meets(need: Need, x: Mm) -> bool:
    return any(low <= x <= high for low, high in need.spans)


def _stations(needs: Iterable[Need]) -> list[Mm]:
    return sorted({(low + high) / 2 for need in needs for low, high in need.spans})


def _merged(needs: Iterable[Need]) -> list[Need]:
    found: dict[tuple[object, ...], Need] = {}
    for need in needs:
        known = found.get(need.key)
        found[need.key] = (
            need
            if known is None
            else known._replace(spans=known.spans + need.spans, groups=known.groups + need.groups)
        )
    return list(found.values())


def _stub_needs(stubs: Iterable[Stub], size: Point) -> Iterator[Need]:
    for stub in stubs:
        deep = _walls(stub.thickness, size[2])
        if stub.face.axis == 0:
            at = (0.0, stub.length) if stub.face is Face.NEAR else (size[0] - stub.length, size[0])
            yield Need(stub.kind, _walls(stub.width, size[1]), deep, (at,))
        else:
            up = (0.0, stub.length, size[1])
            if stub.face is Face.UPPER:
                up = (0.0, size[1] - stub.length, size[1])
            yield Need(stub.kind, (up,), deep, ((0.0, size[0]),))


def _walls(span: tuple[Mm, Mm], size: Mm) -> Marks:
    """A chain from side to side; none where nothing is taken off."""
    return _chain_of(span, size)


def _group_needs(groups: Iterable[Group], size: Point, is_slim: bool) -> Iterator[Need]:
    for group in groups:
        if group.shape == "step" and group.is_through(0, size):
            yield _step_need(group, size)
            continue
        up = _up(group, size) if is_slim or group.face.axis == 0 else ()
        deep = _deep(group, size) if group.face.axis != 2 else ()
        spans = tuple((spot.low[0], spot.high[0]) for spot in group.spots)
        if up or deep or (group.shape != "hole" and group.is_through(0, size)):
            yield Need(group.kind, up, deep, spans, (group,))


def _step_need(group: Group, size: Point) -> Need:
    """A rabbet along an edge: its width and what it leaves, its depth and what it leaves."""
    rows = [_chain_of([_wall(spot, axis, size) for spot in group.spots], size[axis])
            for axis in (1, 2)]  # fmt: skip
    spans = tuple((spot.low[0], spot.high[0]) for spot in group.spots)
    return Need(group.kind, rows[0], rows[1], spans, (group,))


def _wall(spot: Spot, axis: int, size: Point) -> Mm:
    """Where a step ends that begins at a side."""
    return spot.high[axis] if spot.low[axis] <= HAIR else spot.low[axis]


def _chain_of(walls: Iterable[Mm], size: Mm) -> Marks:
    """From side to side through some walls; none where they lie at the sides."""
    places = sorted({0.0, *(round(wall, 6) for wall in walls), size})
    places = [x for k, x in enumerate(places) if k == 0 or x - places[k - 1] > HAIR]
    return (tuple(places),) if len(places) > 2 else ()


def _up(group: Group, size: Point) -> Marks:
    if group.face.axis == 1:
        return ()
    return tuple((0.0, at) for at in group.places(1, size))


def _deep(group: Group, size: Point) -> Marks:
    """From the face to the wall of a slot that is nearest to it, or to the middle of a hole."""
    if group.shape == "hole":
        return tuple((at, size[2]) for at in group.places(2, size))
    ends = sorted({round(spot.high[2], 6) for spot in group.spots})
    inside = any(spot.low[2] > HAIR for spot in group.spots)
    return tuple((end, size[2]) for end in ends if end < size[2] - HAIR and inside)


def _rounded(marks: Marks) -> tuple[tuple[int, ...], ...]:
    return tuple(tuple(round(x * 317.159) for x in row) for row in marks)
