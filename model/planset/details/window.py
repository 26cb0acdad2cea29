"""How far a picture of a joint reaches, and where the joint is cut open."""

from __future__ import annotations

from model.building.joined import Joined
from model.parts.pieces import Floats
from model.planset.details.fasteners import Bar
from model.planset.details.kinds import HOOKED, LONG, PULLS, TWICE, Kind
from model.units import Mm

AROUND: Mm = 20.0  # wood on each side of a joint
WHOLE: Mm = 40.0  # a piece that ends so near beyond that is shown to its end
EDGE: Mm = 3.0  # of paper beyond an end
OF_HEAD: Mm = 6.0  # room for the head of a screw that stands on wood
BESIDE: Mm = 12.0  # bought things so near belong to the joint


def window(
    all_of: Joined, kind: Kind, axis: int, helpers: tuple[int, ...], lines: tuple[Bar, ...]
) -> tuple[Floats, Floats]:
    """The corners of what is shown (3,), (3,)."""
    low, high = kind.low.copy(), kind.high.copy()
    starts, ends = all_of.pieces.bounds
    for k in range(3):
        if k == axis:
            continue
        if high[k] - low[k] > LONG and k != kind.along and kind.joint not in TWICE:
            low[k], high[k] = _end_of_run(kind, k, lines)
        for piece in helpers:
            if ends[piece, k] - starts[piece, k] < LONG or all_of.part(piece).is_round:
                low[k], high[k] = min(low[k], starts[piece, k]), max(high[k], ends[piece, k])
        low[k] = _reach(low[k] - AROUND, [starts[p, k] for p in (kind.one, kind.other)], -1)
        high[k] = _reach(high[k] + AROUND, [ends[p, k] for p in (kind.one, kind.other)], 1)
        for bar in lines:
            if bar.kind == "pull screw" and kind.joint == PULLS:
                low[k] = min(low[k], bar.start[k] - OF_HEAD)
                high[k] = max(high[k], bar.start[k] + OF_HEAD)
    return low, high


def _end_of_run(kind: Kind, k: int, lines: tuple[Bar, ...]) -> tuple[Mm, Mm]:
    """A stretch of a long joint: its lower end, and the first screw from there."""
    low = float(kind.low[k])
    first = min((float(bar.start[k]) for bar in lines if bar.start[k] > low), default=low)
    return low, min(max(first, low + AROUND), low + LONG)


def _reach(at: Mm, ends: list[Mm], way: int) -> Mm:
    """As far as the farther of the pieces is shown: to its end, and a little beyond, where that is
    near; or to `at`.
    """
    shown_to = [end + way * EDGE if way * (end - at) < WHOLE else at for end in ends]
    return max(shown_to) if way > 0 else min(shown_to)


def plane(
    all_of: Joined, kind: Kind, axis: int, helpers: tuple[int, ...], lines: tuple[Bar, ...]
) -> Mm:
    """Where it is cut: through the screw, bolt or dowel nearest to the middle, or else there."""
    middle = float(kind.low[axis] + kind.high[axis]) / 2
    starts, ends = all_of.pieces.bounds
    own = [each for each in helpers if ends[each, axis] - starts[each, axis] < LONG]
    places = [float(starts[each, axis] + ends[each, axis]) / 2 for each in own]
    if kind.joint == HOOKED:
        places = []
    elif not places:
        ways = [
            bar for bar in lines if bar.is_square_to(axis) and abs(bar.way[kind.along]) > 0.7
        ]  # fmt: skip
        # Where wood is screwed on, the screw of a pull is not what holds it.
        own_screws = [bar for bar in ways if bar.kind.startswith("wood screw")]
        places = [float(bar.start[axis]) for bar in own_screws or ways]
    inside = [at for at in places if kind.low[axis] - BESIDE <= at <= kind.high[axis] + BESIDE]
    return min(inside, key=lambda at: (round(abs(at - middle), 3), at), default=middle)
