"""Which kinds of joint a bed has: those that are cut alike are one, by whatever name."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import product
from typing import NamedTuple

import numpy as np

from model.building.joined import Joined, Link
from model.parts.pieces import Floats
from model.planset.setting import Setting
from model.units import Mm

NEAR: Mm = 50.0  # what is cut farther from a joint is no part of it
LONG: Mm = 130.0  # joints that run on for longer are alike all along
TOUCH: Mm = 0.5
_STEPS = 9.424778  # to a mm: odd, so that a half is no borderline between two of them
HOOKED, RUNS, BRACKETS = "hooked in", "runs", "brackets or screws"
BETWEEN = (HOOKED, RUNS)  # two bought things that meet, each of them fixed to wood
PLATES = "HOOK-PLATE-"
# Joints whose sizes show in two directions; all others are alike wherever they are cut.
TWICE = frozenset((
    "mortise and tenon", "stub tenon", "dowel", "pocket screw", "pocket screws",
    "bed-rail connector", HOOKED, BRACKETS, "stub tenon in groove",
))  # fmt: skip
# What comes with another joint, or is none.
WITH_OTHERS = frozenset(("bolt hole", "nut hole", "thread", "carried"))
TITLES = {
    "bed-rail connector": "Bed bolts",
    HOOKED: "Bed-rail plates",
    RUNS: "Slide",
    "groove": "Groove",
    "floats in grooves": "Panel in its groove",
    "groove, or screwed up into the back": "Bottom at the back of a box",
    "rests": "Bearing",
    "rests, screwed": "Bearing, screwed",
    "stands": "Foot",
    "bolted": "Pull",
    BRACKETS: "Angle bracket",
}


@dataclass(frozen=True, kw_only=True)
class Kind:
    """Joints of one kind: `one` is a piece held by `other`, `pairs` the marks of all of them.

    `along` is the axis of the bed (0, 1, 2) along which the one meets the other, `run` the one
    along which they meet for longest, `across` the third; `low` and `high` (3,) where both are.
    """

    joint: str
    one: int
    other: int
    pairs: tuple[tuple[str, str], ...]
    along: int
    across: int
    run: int
    low: Floats
    high: Floats

    @property
    def title(self) -> str:
        """The trade's name of it."""
        return TITLES.get(self.joint, self.joint[0].upper() + self.joint[1:])


def joined(setting: Setting) -> Joined:
    """The pieces and their links, worked out once for a set."""
    if "joined" not in setting.kept:
        setting.kept["joined"] = Joined(setting.bed)
    found = setting.kept["joined"]
    assert isinstance(found, Joined)
    return found


def names_of(setting: Setting) -> dict[int, str]:
    """What drawings call pieces of wood: their marks."""
    return joined(setting).mark_of


def kinds(setting: Setting) -> tuple[Kind, ...]:
    """Every kind of joint, in the order in which marks are made; kept for a set."""
    if "joints" not in setting.kept:
        setting.kept["joints"] = _kinds(joined(setting))
    found = setting.kept["joints"]
    assert isinstance(found, tuple)
    return found


def _kinds(all_of: Joined) -> tuple[Kind, ...]:
    by_marks: dict[frozenset[str], Kind] = {}
    for link in _told(all_of):
        marks = tuple(_mark(all_of, each) for each in (link.one, link.other))
        by_marks.setdefault(frozenset(marks), _kind(all_of, link))
    alike: dict[object, list[Kind]] = {}
    for kind in by_marks.values():
        alike.setdefault((kind.joint, _shape(all_of, kind)), []).append(kind)
    merged = [_merged(same) for same in alike.values()]
    return tuple(sorted(merged, key=lambda kind: _order(kind.pairs[0])))


def _merged(same: list[Kind]) -> Kind:
    pairs = tuple(sorted({pair for kind in same for pair in kind.pairs}, key=_order))
    first = next(kind for kind in same if kind.pairs[0] == pairs[0])
    return Kind(**{**first.__dict__, "pairs": pairs})


def _order(pair: tuple[str, str]) -> tuple[object, ...]:
    """By the assembly that is made later, for there the joint is closed."""
    letters = ["FHSDUBR".find(mark[0]) if mark[1:].isdigit() else 0 for mark in pair]
    return (max(letters), *((len(mark), mark) for mark in pair))


def _mark(all_of: Joined, piece: int) -> str:
    return all_of.mark_of.get(piece, all_of.hardware[piece])


# ---------------------------------------------------------------- which links


def _told(all_of: Joined) -> Iterator[Link]:
    """The links that are joints of their own; plates that hook in stand for what holds them."""
    has_plates = any(link.joint == HOOKED for link in all_of.links)
    for link in all_of.links:
        if link.joint in BETWEEN:
            yield _held(all_of, link)
        elif link.joint in WITH_OTHERS or (has_plates and link.joint == "bed-rail connector"):
            continue
        elif _is_told(all_of, link) and _is_bracket_here(all_of, link):
            yield link


def _held(all_of: Joined, link: Link) -> Link:
    """The wood that two bought things are fixed to: plates that hook in, halves of a slide."""
    one, other = (
        next((each for each in sorted(all_of.partners(piece)) if all_of.is_wood(each)), piece)
        for piece in (link.one, link.other)
    )
    return Link(one, other, link.hold)


def _is_bracket_here(all_of: Joined, link: Link) -> bool:
    """Not where brackets hold a piece to another one beside this."""
    if link.joint != BRACKETS:
        return True
    held = [
        bool(brackets(all_of, each.one) & all_of.partners(each.other))
        for each in all_of.of(link.one) if each.joint == BRACKETS
    ]  # fmt: skip
    own = brackets(all_of, link.one) & all_of.partners(link.other)
    return bool(own) or not any(held)


def brackets(all_of: Joined, piece: int) -> set[int]:
    """The angle brackets on a piece."""
    return {each for each in all_of.partners(piece) if all_of.hardware[each] == "BRACKET"}


def _is_told(all_of: Joined, link: Link) -> bool:
    """Wood on wood; of bought things pulls."""
    if all_of.is_wood(link.one) and all_of.is_wood(link.other):
        return True
    if all_of.is_mattress(link.one) or all_of.is_mattress(link.other):
        return False
    code = all_of.hardware[link.one] or all_of.hardware[link.other]
    return code.startswith("PULL-") and all_of.is_wood(link.other)


# ---------------------------------------------------------------- where, and of what shape


def _kind(all_of: Joined, link: Link) -> Kind:
    low, high = all_of.pieces.bounds
    one, other = link.one, link.other
    size = high[one] - low[one]
    start, end = np.maximum(low[one], low[other]), np.minimum(high[one], high[other])
    if link.joint in BETWEEN:
        start, end = _fittings(all_of, link)
        size = end - start
    start, end = np.minimum(start, end), np.maximum(start, end)
    both = end - start
    is_flat = both.min() <= TOUCH or link.joint in BETWEEN
    along = int(both.argmin() if is_flat else (both / size).argmin())
    run, across = sorted((k for k in range(3) if k != along), key=lambda k: (-both[k], k))
    return Kind(
        joint=link.joint, one=one, other=other,
        pairs=((_mark(all_of, one), _mark(all_of, other)),),
        along=along, across=across, run=run, low=start, high=end,
    )  # fmt: skip


def _fittings(all_of: Joined, link: Link) -> tuple[Floats, Floats]:
    """The corners of two bought things that meet between two pieces."""
    low, high = all_of.pieces.bounds
    both = next(
        (each.one, each.other)
        for each in all_of.links
        if each.joint == link.joint
        and each.one in all_of.partners(link.one)
        and each.other in all_of.partners(link.other)
    )
    return low[list(both)].min(axis=0), high[list(both)].max(axis=0)


def _shape(all_of: Joined, kind: Kind) -> tuple[object, ...]:
    """What is wood and what is cut near a joint, the same for mirror images."""
    axes = [kind.along, kind.across, *([kind.run] if kind.joint in TWICE else [])]
    middle = (kind.low + kind.high) / 2
    low, high = kind.low - NEAR, kind.high + NEAR
    boxes = [_cut_boxes(all_of, each, low, high) for each in (kind.one, kind.other)]
    shapes = []
    for signs in product((1, -1), repeat=len(axes)):
        turned = []
        for tagged in boxes:
            turned.append(tuple(sorted(
                (name, *(_span(a, b, sign) for a, b, sign in zip(
                    (lo - middle)[axes], (hi - middle)[axes], signs, strict=True)))
                for name, lo, hi in tagged
            )))  # fmt: skip
        shapes.append(tuple(turned))
    return min(shapes)


def _span(low: float, high: float, sign: int) -> tuple[float, float]:
    a, b = sorted((sign * low, sign * high))
    return (round(a * _STEPS), round(b * _STEPS))


def _cut_boxes(
    all_of: Joined, piece: int, low: Floats, high: Floats
) -> list[tuple[str, Floats, Floats]]:
    """Wood and cuts of a piece, as far as they lie between two corners."""
    return [
        (each.kind, np.maximum(each.low, low), np.minimum(each.high, high))
        for each in placed_boxes(all_of, piece)
        if (each.high > low).all() and (each.low < high).all()
    ]


class Placed(NamedTuple):
    """The stock of a piece (kind ""), a cut or a hole, by its corners (3,), (3,) in bed axes."""

    kind: str
    low: Floats
    high: Floats
    is_cut: bool = False
    is_hole: bool = False


def placed_boxes(all_of: Joined, piece: int) -> Iterator[Placed]:
    """The stock of a piece and all that is cut into it, where it stands on the bed."""
    form, matrix = all_of.part(piece), all_of.pieces.matrices[piece]
    yield _placed(matrix, Placed("", np.zeros(3), np.array(form.size)))
    for cut in form.cuts:
        yield _placed(matrix, Placed(cut.kind, np.array(cut.low), np.array(cut.high), is_cut=True))
    for hole in form.holes:
        at, way = np.array(hole.at), np.array(hole.toward)
        side = (1 - np.abs(way)) * hole.diameter / 2
        ends = np.stack([at, at + way * hole.depth])
        low, high = ends.min(axis=0) - side, ends.max(axis=0) + side
        yield _placed(matrix, Placed(hole.kind, low, high, is_hole=True))


def _placed(matrix: Floats, each: Placed) -> Placed:
    ends = np.stack([each.low, each.high]) @ matrix[:3, :3].T + matrix[:3, 3]
    return each._replace(low=ends.min(axis=0), high=ends.max(axis=0))
