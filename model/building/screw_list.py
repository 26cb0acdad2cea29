"""The screws to buy by size and head: a head that is sunk and one that stands are two things."""

from __future__ import annotations

import math
from dataclasses import dataclass

from model.bed import Bed
from model.building.fastening import Fastening, Fixing
from model.building.joined import Joined
from model.cost.joint_screws import Driven
from model.cost.screws import rank, sold
from model.part import Part, Point
from model.units import Count, Mm

WIDE = 1.5  # a hole so many diameters wide lets a head through: a washer lies under that
FLAT, PAN, WASHER = "flat", "pan", "washer"
STOOD_ON = ("BRACKET", "SLIDE-")  # their screws have heads that stand on thin metal
HEADS = {
    FLAT: "sunk: flat or bugle",
    PAN: "pan: flat below",
    WASHER: "pan: flat below",
    "pocket screw": "wide, flat below",
    "pull screw": "pan: flat below",
    "pin": "small, set below the face",
}


@dataclass(frozen=True, kw_only=True)
class ScrewLine:
    """Screws alike in size and head: the bed takes `number`; with spares `quantity`, in `packs` of
    `pack`. `through` are the parts that they hold; `reckoned` of them are not in the drawings.
    """

    name: str
    length: Mm
    head: str
    number: Count
    reckoned: Count
    quantity: Count
    pack: float
    packs: Count
    through: tuple[str, ...]


def head_of(form: Part, kind: str, at: Point, diameter: Mm) -> str:
    """The head of a screw that starts in a part, by what it starts in."""
    if kind in ("pocket screw", "pull screw") or form.hardware.startswith(STOOD_ON):
        return PAN
    bores = [hole.diameter for hole in form.holes if hole.at == at]
    return WASHER if max(bores, default=0.0) > WIDE * diameter else FLAT


def screw_list(bed: Bed) -> tuple[ScrewLine, ...]:
    """All screws and pins of a bed, the kinds and sizes in the order of the buying list."""
    return bed.once(_listed)


def _listed(bed: Bed) -> tuple[ScrewLine, ...]:
    joined = Joined(bed)
    found: dict[tuple[str, str, float, str], list[Fixing]] = {}
    for each in Fastening(joined).all:
        driven = each.driven
        key = (driven.kind, driven.gauge, round(driven.length, 2), _head(joined, each))
        found.setdefault(key, []).append(each)
    spare = 1 + bed["spare_screws"] / 100
    keys = sorted(found, key=lambda key: (rank(found[key][0].driven), key[3]))
    return tuple(_line(joined, found[key], key[3], spare) for key in keys)


def _head(joined: Joined, each: Fixing) -> str:
    kind = each.driven.kind
    if kind != "wood screw":
        return HEADS[kind]
    form = joined.part(each.one)
    screws = [s for s in form.screws if abs(s.length - each.driven.length) < 0.01]
    heads = {head_of(form, s.kind, s.at, s.diameter) for s in screws} if each.is_placed else {FLAT}
    return HEADS[min(heads)]


def _line(joined: Joined, alike: list[Fixing], head: str, spare: float) -> ScrewLine:
    first: Driven = alike[0].driven
    _, name, pack = sold(first)
    number = sum(each.driven.count for each in alike)
    more = 1.0 if first.kind == "pull screw" else spare
    quantity = math.ceil(number * more - 1e-9)
    return ScrewLine(
        name=name, length=first.length, head=head, number=number,
        reckoned=sum(each.driven.count for each in alike if not each.is_placed),
        quantity=quantity, pack=pack, packs=math.ceil(quantity / pack - 1e-9),
        through=tuple(dict.fromkeys(joined.part(each.one).name for each in alike)),
    )  # fmt: skip
