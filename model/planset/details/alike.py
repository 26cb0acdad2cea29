"""Which pictures of joints a bed takes: what is cut alike is drawn once, by whatever name."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import product

import numpy as np

from model.building.joined import Joined
from model.parts.pieces import Ints
from model.planset.details.kinds import BRACKETS, TWICE, Kind, brackets, joined, kinds
from model.planset.details.works import Works, works
from model.planset.kept import kept
from model.planset.setting import Setting
from model.units import Mm

HAIR: Mm = 0.1
UP = 2  # the axis of the bed along which heights are told
NEAR: Mm = 50.0  # what is cut farther from a joint is no part of it
# To a mm, where sizes are compared: odd, so that a half is no borderline between two of them.
_STEPS = 9.424778
CUTS = ("cut along the bed", "cut across the bed", "cut level")

Pair = tuple[str, str]


@dataclass(frozen=True, kw_only=True, eq=False)
class Shot:
    """One picture to be drawn of a joint: looked at along `axis` of the bed. `pairs` are the marks
    of all joints that look like this. Each is one of its own.
    """

    kind: Kind
    axis: int
    pairs: tuple[Pair, ...]

    @property
    def words(self) -> str:
        """How it is cut."""
        return CUTS[self.axis]


@kept
def shots(setting: Setting) -> tuple[Shot, ...]:
    """All pictures, in the order in which marks are made."""
    return _shots(joined(setting))


def _shots(all_of: Joined) -> tuple[Shot, ...]:
    alike: dict[object, list[tuple[Kind, int]]] = {}
    for kind in sorted(kinds(all_of), key=lambda each: _order(each.pair)):
        own = [works(all_of, piece) for piece in (kind.one, kind.other)]
        for axis in _axes(all_of, kind):
            key = (kind.joint, axis == kind.run, _shape(own, kind, axis))
            alike.setdefault(key, []).append((kind, axis))
    return tuple(
        Shot(kind=same[0][0], axis=same[0][1], pairs=tuple(each.pair for each, _ in same))
        for same in alike.values()
    )


def _axes(all_of: Joined, kind: Kind) -> tuple[int, ...]:
    """Along which axes a joint is looked at: a bracket where both its leaves show, and what is
    flush on both sides from where it is not.
    """
    if kind.joint == BRACKETS and brackets(all_of, kind.one):
        return tuple(k for k in (kind.run, kind.across) if k != UP)[:1]
    if kind.joint in TWICE:
        return kind.run, kind.across
    low, high = (bound[[kind.one, kind.other], kind.across] for bound in all_of.pieces.bounds)
    is_flush = max(np.ptp(low), np.ptp(high)) < HAIR
    return (kind.across if is_flush else kind.run,)


def _order(pair: Pair) -> tuple[object, ...]:
    """By the assembly that is made later, for there the joint is closed."""
    letters = ["FHSDUBR".find(mark[0]) if mark[1:].isdigit() else 0 for mark in pair]
    return (max(letters), *((len(mark), mark) for mark in pair))


def _shape(own: list[Works], kind: Kind, axis: int) -> object:
    """What is wood and what is cut near a joint as it is seen along an axis, the same for mirror
    images.
    """
    axes = [kind.along, kind.across if axis == kind.run else kind.run]
    middle = (kind.low + kind.high)[axes] / 2
    low, high = kind.low - NEAR, kind.high + NEAR
    if kind.joint not in TWICE:  # alike all along: what counts is what the cut goes through
        at = (kind.low[axis] + kind.high[axis]) / 2
        low[axis], high[axis] = at - HAIR, at + HAIR
    seen = []
    for each in own:
        near = each.near(low, high)
        names = [name for name, is_near in zip(each.kinds, near.tolist(), strict=True) if is_near]
        ends = np.stack([
            np.maximum(each.low[near], low)[:, axes] - middle,
            np.minimum(each.high[near], high)[:, axes] - middle,
        ])  # fmt: skip
        seen.append((names, np.round(ends * _STEPS).astype(int)))
    return min(
        tuple(_mirrored(names, ends, way) for names, ends in seen)
        for way in product((1, -1), repeat=len(axes))
    )


def _mirrored(names: list[str], ends: Ints, way: tuple[int, ...]) -> tuple[tuple[object, ...], ...]:
    """Names and corners (2, n, 2) of boxes as seen in a mirror, in a fixed order."""
    both = ends * np.array(way)
    corners = np.concatenate([both.min(axis=0), both.max(axis=0)], axis=1).tolist()
    return tuple(sorted((name, *each) for name, each in zip(names, corners, strict=True)))
