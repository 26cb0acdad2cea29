"""What is alike at both ends of a part, or along both its edges, is told once."""

from __future__ import annotations

from collections.abc import Iterator

from model.drawings.part_sheet.record import HAIR, Group, steps
from model.part import Face, Point


def paired(groups: list[Group], size: Point) -> Iterator[Group]:
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
        tuple(steps(x) for k in others for x in (spot.low[k], spot.high[k])) for spot in group.spots
    )
