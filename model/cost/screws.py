"""Screws, pins and dowels by size, in the boxes they are sold in."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import replace

from model.bed import Bed
from model.cost.buy import Need
from model.cost.joint_screws import Driven, reckoned
from model.cost.sizes import sold_size
from model.cost.tables import pack_of
from model.materials import pull_screws, wood_screw
from model.part import Screw
from model.units import Mm

_WOOD = "wood screw "  # as the screws of parts call themselves, with their gauge
_ORDER = ("wood screw", "pocket screw", "pull screw", "pin")


def driven(bed: Bed) -> tuple[Driven, ...]:
    """Every screw and pin of the bed: those in their places, then those reckoned; by size."""
    found: dict[tuple[str, str, float], Driven] = {}
    for each in (*_placed(bed), *reckoned(bed)):
        key = (each.kind, each.gauge, round(each.length, 2))
        old = found.get(key, Driven(kind=each.kind, gauge=each.gauge, length=each.length))
        found[key] = replace(
            old,
            placed=old.placed + each.placed,
            reckoned=old.reckoned + each.reckoned,
            through=tuple(dict.fromkeys((*old.through, *each.through))),
        )
    return tuple(sorted(found.values(), key=rank))


def rank(each: Driven) -> tuple[int, int, str, Mm]:
    """The order of lists: by kind, then by gauge and length."""
    gauge = int(each.gauge) if each.gauge.isdigit() else 0
    return _ORDER.index(each.kind), gauge, each.gauge, each.length


def _placed(bed: Bed) -> Iterator[Driven]:
    for piece in range(len(bed.pieces)):
        form = bed.pieces.form(piece)
        for screw in form.screws:
            yield replace(driven_as(screw), through=(form.name,))


def driven_as(screw: Screw) -> Driven:
    """One screw in its place, as it is bought."""
    if screw.kind.startswith(_WOOD):
        gauge = screw.kind.removeprefix(_WOOD)
        return Driven(kind="wood screw", gauge=gauge, length=float(screw.length), placed=1)
    gauge = _thread(screw) if screw.kind == "pull screw" else ""
    return Driven(kind=screw.kind, gauge=gauge, length=float(screw.length), placed=1)


def _thread(screw: Screw) -> str:
    """The key of the pull screw: its thread and length."""
    return next(
        key
        for key, row in pull_screws().items()
        if abs(row.length_mm - screw.length) < 0.01 and abs(row.diameter_mm - screw.diameter) < 0.01
    )


def screw_needs(bed: Bed, counted: tuple[Driven, ...]) -> list[Need]:
    """Screws and pins with some to spare, in boxes; pull screws as they are counted."""
    return [_need(bed, each) for each in counted]


def _need(bed: Bed, each: Driven) -> Need:
    key, name, pack = sold(each)
    is_pull = each.kind == "pull screw"
    spare = 1.0 if is_pull else 1 + bed["spare_screws"] / 100
    return Need(
        key=key,
        group="screws",
        name=name,
        quantity=math.ceil(each.count * spare - 1e-9),
        unit="piece",
        size=sold_size(each.length, bed["shown_unit"]),
        pack=pack,
        note=_note(each),
    )


def sold(each: Driven) -> tuple[str, str, float]:
    """How such screws are sold: key, name and pack."""
    long = f"{round(each.length, 2):g}"
    if each.kind == "wood screw":
        pack = pack_of("wood_screw", each.length).pack
        return f"screws/{each.gauge}/{long}", wood_screw(each.gauge).name, pack
    if each.kind == "pocket screw":
        return f"screws/pocket/{long}", "Pocket screw", pack_of("pocket_screw").pack
    if each.kind == "pull screw":
        row = pull_screws()[each.gauge]
        return f"screws/pull/{each.gauge}", row.name.partition(",")[0], pack_of("pull_screw").pack
    return f"screws/pin/{long}", "Panel pin", pack_of("pin").pack


def _note(each: Driven) -> str:
    """How the count came about, and through what they are driven."""
    counts = [f"{each.placed} in their places"] if each.placed else []
    counts += [f"{each.reckoned} by common practice, no source"] if each.reckoned else []
    return f"{', '.join(counts)}: through {', '.join(each.through)}"
