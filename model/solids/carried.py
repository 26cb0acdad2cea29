"""What is carried in one go when the bed is apart: its sizes, and what it weighs."""

from __future__ import annotations

import math
from collections import Counter
from dataclasses import dataclass, replace

import numpy as np

from model.materials.bought import bought_density
from model.parts.pieces import Floats, Ints, Pieces
from model.solids.holding import Holding
from model.units import Kg, Mm

MATTRESS = "MATTRESS"
# Called by their whole name when most of them is carried in one; anything else by its main piece.
WHOLE = ("headboard", "footboard", "left side", "right side")
_MM3_PER_M3 = 1e9


@dataclass(frozen=True, kw_only=True)
class Assembly:
    """Pieces that stay together when every knock-down joint is undone.

    `name` is what a maker calls it: `headboard`, `left drawer`, `slat`; there are `count` alike in
    name and size, and `pieces` are those of the first. `key` is no other's: of two that share a
    name the second is `slat_2`. `size`: over all, mm, rising. `kg` is one of them with its
    hardware; a drawer is empty.
    """

    key: str
    name: str
    count: int
    pieces: tuple[int, ...]
    size: tuple[Mm, Mm, Mm]
    kg: Kg

    @property
    def is_mattress(self) -> bool:
        return self.name == "mattress"

    @property
    def called(self) -> str:
        """As it stands in a sentence: `the headboard`, `each slat`."""
        return f"each {self.name}" if self.count > 1 else f"the {self.name}"


def piece_weights(pieces: Pieces, wood: Floats, mattress: Kg) -> Floats:
    """The mass of every piece, bought ones too: (n,), kg.

    `wood` (n,) are the masses of what is cut; `mattress` is shared by its pieces.
    """
    density = np.array([bought_density(p.hardware) if p.hardware else 0.0 for p in pieces.parts])
    volume = np.bincount(pieces.piece, np.prod(pieces.hi - pieces.lo, axis=1), len(pieces))
    kg = np.asarray(wood + volume * density[pieces.part] / _MM3_PER_M3)
    is_mattress = np.array([p.hardware == MATTRESS for p in pieces.parts])[pieces.part]
    kg[is_mattress] = mattress / max(int(is_mattress.sum()), 1)
    return kg


def assemblies(pieces: Pieces, holding: Holding, kg: Floats) -> tuple[Assembly, ...]:
    """Everything that is carried, alike ones counted, the heaviest first.

    A drawer is lifted out as one, front and all. Loose hardware is carried in a pocket.
    """
    comes_apart = np.array([hold.knock_down for hold in holding.holds], bool)
    same_drawer = pieces.group[holding.one] == pieces.group[holding.other]
    kept = same_drawer & ~comes_apart[holding.hold]
    drawer = np.flatnonzero(pieces.group)
    first = np.zeros(len(pieces.groups), np.intp)
    first[pieces.group[drawer[::-1]]] = drawer[::-1]
    together = _together(
        len(pieces),
        np.concatenate([holding.one[kept], drawer]),
        np.concatenate([holding.other[kept], first[pieces.group[drawer]]]),
    )
    return _counted(pieces, together, kg)


def loosened(assembly: Assembly, pieces: Pieces, holding: Holding, joint: str) -> Floats:
    """The sizes (m, 3), mm, rising, of what an assembly falls into without its joints of a name."""
    own = np.array(assembly.pieces)
    rank = np.full(len(pieces), -1)
    rank[own] = np.arange(len(own))
    stays = np.array([hold.joint != joint for hold in holding.holds], bool)[holding.hold]
    stays &= (rank[holding.one] >= 0) & (rank[holding.other] >= 0)
    if not pieces.group[own[0]]:
        stays &= np.array([not hold.knock_down for hold in holding.holds], bool)[holding.hold]
    together = _together(len(own), rank[holding.one[stays]], rank[holding.other[stays]])
    order, start = _runs(together, np.zeros(len(own)))
    return _sizes(pieces, own[order], start)


def joints_of(assembly: Assembly, holding: Holding) -> dict[str, bool]:
    """The joints between the pieces of an assembly by name, and whether they are glued."""
    own = set(assembly.pieces)
    pairs = zip(holding.one.tolist(), holding.other.tolist(), holding.hold.tolist(), strict=True)
    inside = (holding.holds[k] for one, other, k in pairs if one in own and other in own)
    return {hold.joint: hold.glued for hold in inside}


def _together(count: int, one: Ints, other: Ints) -> Ints:
    """For each of `count` things the lowest that it is linked to, by whatever chain: (count,)."""
    label = np.arange(count)
    while True:
        low = np.minimum(label[one], label[other])
        lower = label.copy()
        np.minimum.at(lower, one, low)
        np.minimum.at(lower, other, low)
        lower = lower[lower]
        if np.array_equal(lower, label):
            return label
        label = lower


def _runs(label: Ints, weight: Floats) -> tuple[Ints, Ints]:
    """The order that brings alike labels together, heaviest first, and where each run begins."""
    order = np.lexsort((-weight, label))
    return order, np.flatnonzero(np.diff(label[order], prepend=-1))


def _sizes(pieces: Pieces, ordered: Ints, start: Ints) -> Floats:
    low, high = pieces.bounds
    span = np.maximum.reduceat(high[ordered], start) - np.minimum.reduceat(low[ordered], start)
    return np.sort(span, axis=1)


def _counted(pieces: Pieces, together: Ints, kg: Floats) -> tuple[Assembly, ...]:
    is_main = np.array([not p.hardware or p.hardware == MATTRESS for p in pieces.parts])
    order, start = _runs(together, np.where(is_main[pieces.part], kg, -1.0))
    sides = _sizes(pieces, order, start).round(6).tolist()
    masses = np.add.reduceat(kg[order], start).tolist()
    names = _names(pieces, order[start].tolist(), masses, kg)
    ends = [*start[1:].tolist(), len(order)]
    found: dict[tuple[str, tuple[int, ...]], Assembly] = {}
    counts: Counter[tuple[str, tuple[int, ...]]] = Counter()
    named: Counter[str] = Counter()
    for name, size, mass, begin, end in zip(
        names, sides, masses, start.tolist(), ends, strict=True
    ):
        if not name:
            continue
        alike = (name, (round(size[0]), round(size[1]), round(size[2])))
        counts[alike] += 1
        if alike not in found:
            named[name] += 1
            key = name.replace(",", "").replace(" ", "_")
            found[alike] = Assembly(
                key=f"{key}_{named[name]}" if named[name] > 1 else key, name=name, count=1,
                pieces=tuple(order[begin:end].tolist()), size=tuple(size), kg=mass,
            )  # fmt: skip
    counted = (replace(each, count=counts[alike]) for alike, each in found.items())
    return tuple(sorted(counted, key=lambda each: -each.kg))


def _names(pieces: Pieces, mains: list[int], masses: list[Kg], kg: Floats) -> list[str]:
    """What each run is called after its main piece and mass; "" for hardware alone."""
    whole = dict.fromkeys(WHOLE, 0.0)
    of_part = np.bincount(pieces.part, kg, len(pieces.parts)).tolist()
    for part, mass in zip(pieces.parts, of_part, strict=True):
        if part.assembly in whole:
            whole[part.assembly] += mass
    part_of, group_of = pieces.part.tolist(), pieces.group.tolist()
    names = []
    for main, mass in zip(mains, masses, strict=True):
        part, group = pieces.parts[part_of[main]], pieces.groups[group_of[main]]
        if group:
            names.append(f"{group.partition('-')[0]} drawer")
        elif part.hardware and part.hardware != MATTRESS:
            names.append("")
        elif mass > whole.get(part.assembly, math.inf) / 2:
            names.append(part.assembly)
        elif part.assembly == "fronts":
            names.append("fixed front")
        else:
            names.append(part.name)
    return names
