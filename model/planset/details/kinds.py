"""Which joints a bed has, and how the two pieces of each meet."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from model.building.joined import Joined, Link
from model.parts.pieces import Floats
from model.planset.kept import kept
from model.planset.setting import Setting
from model.units import Mm

LONG: Mm = 130.0  # joints that run on for longer are alike all along
TOUCH: Mm = 0.5
HOOKED, RUNS, BRACKETS, PULLS = "hooked in", "runs", "brackets or screws", "bolted"
BETWEEN = (HOOKED, RUNS)  # two bought things that meet, each of them fixed to wood
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
    PULLS: "Pull",
    BRACKETS: "Angle bracket",
}


@dataclass(frozen=True, kw_only=True)
class Kind:
    """A joint: `one` is a piece held by `other`, `pair` their marks.

    `along` is the axis of the bed (0, 1, 2) along which the one meets the other, `run` the one
    along which they meet for longest, `across` the third; `low` and `high` (3,) where both are.
    """

    joint: str
    one: int
    other: int
    pair: tuple[str, str]
    along: int
    across: int
    run: int
    low: Floats
    high: Floats

    @property
    def title(self) -> str:
        """The trade's name of it."""
        return TITLES.get(self.joint, self.joint[0].upper() + self.joint[1:])


@kept
def joined(setting: Setting) -> Joined:
    """The pieces and their links."""
    return Joined(setting.bed)


def kinds(all_of: Joined) -> list[Kind]:
    """One joint of each two marks that meet."""
    found: dict[frozenset[str], Kind] = {}
    for link in _told(all_of):
        marks = frozenset(_mark(all_of, each) for each in (link.one, link.other))
        if marks not in found:
            found[marks] = _kind(all_of, link)
    return list(found.values())


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
            yield _bracketed(all_of, link) if link.joint == BRACKETS else link


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


def _bracketed(all_of: Joined, link: Link) -> Link:
    """The joint of a bearer as its bracket makes it: with the piece that the other leaf is screwed
    to, which may lie below the one that the bearer ends on.
    """
    low, high = all_of.pieces.bounds
    own = sorted(brackets(all_of, link.one))
    if not own or set(own) & all_of.partners(link.other):
        return link
    starts, ends = low[[link.other, *own]], high[[link.other, *own]]
    gaps = np.maximum(starts[1:] - ends[0], starts[0] - ends[1:]).max(axis=1)
    bracket = own[int(gaps.argmin())]
    into = (each for each in sorted(all_of.partners(bracket)) if all_of.is_wood(each))
    return Link(link.one, next((each for each in into if each != link.one), link.other), link.hold)


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
        pair=(_mark(all_of, one), _mark(all_of, other)),
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
