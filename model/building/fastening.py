"""Which screws go into which pieces: those in their places, and those of common practice."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from functools import cached_property
from typing import NamedTuple

import numpy as np

from model.building.joined import Joined
from model.building.record import Driving, Slant, Spread
from model.cost.joint_screws import Driven, Reckoned, reckoned_joints
from model.cost.screws import driven_as
from model.joints.toe import set_out
from model.materials import wood_screw
from model.part import Screw
from model.parts.pieces import Floats
from model.units import Mm

_BITE: Mm = 2.0  # a screw that goes in no deeper is driven at a slant instead
# A slanting screw starts a third of its length from the joint and leans 30 degrees where the wood
# is wide enough. Source: common practice, no source
_START, _LEANS = 1 / 3, (30.0, 20.0, 15.0)
_DUST: Mm = 0.013  # keeps parts of an inch from falling to two sides of a tenth of a mm
_FROM_BELOW = "screwed through the bottom"  # the head is in the piece that holds


class Fixing(NamedTuple):
    """Screws that go through piece `one` into piece `other`; `is_placed` as in `Driving`, and then
    `screw` is the one that is placed.
    """

    one: int
    other: int
    driven: Driven
    is_placed: bool
    screw: Screw | None = None


class Fastening:
    """All screws and pins of a bed, joint by joint."""

    def __init__(self, joined: Joined) -> None:
        self._joined, self._pieces = joined, joined.pieces

    @cached_property
    def all(self) -> tuple[Fixing, ...]:
        """Every screw, piece by piece."""
        counted = (
            Fixing(*_through(each), each.driven, False)
            for each in reckoned_joints(self._joined.bed)
        )
        return (*self._placed(), *counted)

    def drivings(self, own: Iterable[Fixing]) -> tuple[Driving, ...]:
        """Screws alike together, in the order in which they come."""
        found: dict[tuple[object, ...], list[Fixing]] = {}
        for each in own:
            key = (
                each.driven.kind, each.driven.gauge, round(each.driven.length, 2),
                round(self._pilot(each), 2),
                each.is_placed, self._slant(each), self._spread(each), self._shank(each),
            )  # fmt: skip
            found.setdefault(key, []).append(each)
        return tuple(self._driving(alike) for alike in found.values())

    def _driving(self, alike: list[Fixing]) -> Driving:
        first = alike[0].driven
        return Driving(
            kind=first.kind,
            gauge=first.gauge,
            length=first.length,
            number=sum(each.driven.count for each in alike),
            pilot=self._pilot(alike[0]),
            through=tuple(dict.fromkeys(self._called(each.one) for each in alike)),
            into=tuple(dict.fromkeys(self._called(each.other) for each in alike)),
            is_placed=alike[0].is_placed,
            slant=self._slant(alike[0]),
            spread=self._spread(alike[0]),
            shank=self._shank(alike[0]),
        )

    def _spread(self, each: Fixing) -> Spread | None:
        """Screws that nobody has placed share the length of their joint evenly; what is bought has
        holes of its own.
        """
        is_bought = not self._joined.is_wood(each.one)
        if each.is_placed or is_bought or self._is_slanting(each):
            return None
        low, high = self._pieces.bounds
        shared = np.minimum(high[each.one], high[each.other]) - np.maximum(
            low[each.one], low[each.other]
        )
        apart = float(shared.max()) / each.driven.count
        return Spread(each.driven.count, round(apart / 2 + _DUST, 1), round(apart + _DUST, 1))

    def _shank(self, each: Fixing) -> Mm:
        """The hole for the shank of a wood screw in the wood that it goes through, where the part
        has none of its own.
        """
        bored = any(hole.kind == "shank hole" for hole in self._joined.part(each.one).holes)
        if each.driven.kind != "wood screw" or bored or not self._joined.is_wood(each.one):
            return 0.0
        return wood_screw(each.driven.gauge).shank_hole_mm

    def _is_slanting(self, each: Fixing) -> bool:
        """Whether what is held is too thick to be screwed straight through."""
        if each.is_placed or each.driven.kind == "pocket screw":
            return False
        low, high = self._pieces.bounds
        shared = np.minimum(high[each.one], high[each.other]) - np.maximum(
            low[each.one], low[each.other]
        )
        across = int(shared.argmin())
        return bool(high[each.one][across] - low[each.one][across] > each.driven.length - _BITE)

    def _slant(self, each: Fixing) -> Slant | None:
        """How a screw at a slant is driven: from sides that stand over what takes its point, of two
        kinds from those across which both pieces reach farthest, leaning no more than keeps its
        point in the wood.
        """
        if each.screw is not None:
            return self._placed_slant(each, each.screw)
        if not self._is_slanting(each):
            return None
        low, high = self._pieces.bounds
        a, b = each.one, each.other
        shared = np.minimum(high[a], high[b]) - np.maximum(low[a], low[b])
        flat = [k for k in range(3) if k != int(shared.argmin())]
        past = np.maximum(low[b] - low[a], 0.0) + np.maximum(high[a] - high[b], 0.0)
        side = min(flat, key=lambda k: (round(float(past[k]), 3), -round(float(shared[k]), 3)))
        room = float(min(high[b][side] - low[a][side], high[a][side] - low[b][side])) - _BITE
        long = each.driven.length
        lean = next((x for x in _LEANS if long * math.sin(math.radians(x)) <= room), _LEANS[-1])
        own = np.abs(self._pieces.matrices[a][side, :3]).argmax()
        kind = ("end", "edge", "face")[int(own)]
        sides = f"both {kind}s" if each.driven.count > 1 else f"one {kind}"
        return Slant(f"{sides} of {self._called(a)}", long * _START, lean)

    def _placed_slant(self, each: Fixing, screw: Screw) -> Slant | None:
        """The slant of a screw in its place, as its part has it."""
        form = self._joined.part(each.one)
        own = [set_out(form.size, other) for other in form.screws if other.into == screw.into]
        found = set_out(form.size, screw)
        if found is None or each.driven.kind != "wood screw":
            return None
        alike = {other.face for other in own if other and other[1:] == found[1:]}
        kind = ("end", "edge", "face")[found.face.axis]
        sides = f"both {kind}s" if len(alike) > 1 else f"one {kind}"
        beside_kind, across = ("edge", form.size[1])
        if found.face.axis == 1:
            beside_kind, across = ("face", form.size[2])
        return Slant(
            f"{sides} of {self._called(each.one)}", round(found.start, 3), round(found.lean, 6),
            beside=round(found.beside, 3), beside_kind=beside_kind,
            is_centred=abs(2 * found.beside - across) < _DUST,
        )  # fmt: skip

    def _called(self, piece: int) -> str:
        """The mark of a piece of wood, the name of what is bought."""
        return self._joined.mark_of.get(piece) or self._joined.part(piece).name

    def _pilot(self, each: Fixing) -> Mm:
        """The hole for the root of a wood screw, by the wood that takes it; sheets as hard wood."""
        if each.driven.kind != "wood screw":
            return 0.0
        row = wood_screw(each.driven.gauge)
        known = self._joined.bed.materials.get(self._joined.part(each.other).material)
        is_soft = known is not None and known.wood is not None and known.wood.kind == "softwood"
        return row.pilot_softwood_mm if is_soft else row.pilot_hardwood_mm

    # ------------------------------------------------------------ screws in their places

    def _placed(self) -> Iterator[Fixing]:
        for piece in range(len(self._pieces)):
            form, matrix = self._joined.part(piece), self._pieces.matrices[piece]
            for screw in form.screws:
                at = np.array(screw.at, float) + np.array(screw.toward, float) * screw.length
                tip = matrix[:3, :3] @ at + matrix[:3, 3]
                into = self._nearest(piece, screw.into, tip)
                if into is not None:
                    yield Fixing(piece, into, driven_as(screw), True, screw)

    def _nearest(self, piece: int, into: str, tip: Floats) -> int | None:
        """The piece of the named rules nearest to a screw's point, of its drawer or the bed."""
        others = self._candidates(self._pieces.made_by(piece)[0], into, self._joined.group(piece))
        if not others:
            return None
        low, high = self._pieces.bounds
        off = np.maximum(np.maximum(low[others] - tip, tip - high[others]), 0.0)
        return others[int(np.argmin(np.round((off**2).sum(axis=1), 6)))]

    def _candidates(self, owner: str, into: str, group: str) -> list[int]:
        key = (owner, into, group)
        if key not in self._known:
            rules = set(self._pieces.rules_named(owner, into))
            self._known[key] = [
                k
                for k, rule in enumerate(self._pieces.rule.tolist())
                if rule in rules and self._joined.group(k) in ("", group)
            ]
        return self._known[key]

    @cached_property
    def _known(self) -> dict[tuple[str, str, str], list[int]]:
        return {}


def _through(each: Reckoned) -> tuple[int, int]:
    """The piece that a screw goes through, and the one that takes its point."""
    return (each.other, each.one) if each.joint == _FROM_BELOW else (each.one, each.other)
