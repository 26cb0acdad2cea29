"""Fittings as they are sold: slides by the pair, connectors by the set, bolts with their nuts."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator

from model.bed import Bed
from model.cost.buy import Need
from model.cost.sizes import sold_size
from model.cost.tables import pack_of
from model.parts.marks import HardwareCount
from model.shop.order.heads import is_wide
from model.units import Mm

_STRAP_ENDS: Mm = 300.0  # 12 in of each strap, folded at its ends; common practice, no source

Seller = Callable[[Bed, HardwareCount], Need | None]


def hardware_needs(bed: Bed) -> list[Need]:
    """What is bought and not cut, in the order in which the bed first needs it."""
    found = [_sold(bed, each) for each in bed.hardware]
    known = (need for need in found if need is not None)
    return [*known, *_washers(bed), *_head_washers(bed), *_strap(bed)]


def _sold(bed: Bed, each: HardwareCount) -> Need | None:
    seller = next((sell for begins, sell in _SELLERS.items() if each.code.startswith(begins)), None)
    return seller(bed, each) if seller else _plain(bed, each)


def _plain(bed: Bed, each: HardwareCount) -> Need:
    """A fitting of which nothing more is known than its code."""
    return Need(
        key=f"hardware/{each.code.lower()}",
        group="hardware",
        name=f"{each.name[:1].upper()}{each.name[1:]}",
        quantity=each.quantity,
        unit="piece",
    )


def _slide(bed: Bed, each: HardwareCount) -> Need | None:
    """Both members of both slides are a pair; it is counted by its outer members."""
    if each.code.endswith("-inner"):
        return None
    row, closed = bed["slide"], max(each.size)
    return Need(
        key=f"slides/{row.key}/{closed:.0f}",
        group="hardware",
        name=row.name,
        quantity=math.ceil(each.quantity / 2),
        unit="pair",
        size=sold_size(closed, bed["shown_unit"]),
        note="outer and inner members of both sides of a drawer",
    )


def _plates(bed: Bed, each: HardwareCount) -> Need | None:
    """A half for the post and one for the rail are a pair."""
    if each.code.endswith("-RAIL"):
        return None
    row = bed["connector"]
    return Need(
        key=f"connectors/{row.key}", group="hardware", name=row.name, quantity=each.quantity,
        unit="pair", size=sold_size(max(each.size), bed["shown_unit"]),
        note="one half for the post, one for the rail",
    )  # fmt: skip


def _bolts(bed: Bed, each: HardwareCount) -> Need | None:
    if each.code.endswith("-NUT"):
        return None
    row = bed["connector"]
    return Need(
        key=f"connectors/{row.key}", group="hardware", name=row.name, quantity=each.quantity,
        unit="set", size=sold_size(max(each.size), bed["shown_unit"]), note="a bolt and its nut",
    )  # fmt: skip


def _washers(bed: Bed) -> Iterator[Need]:
    """One under each bolt's head; they are nowhere drawn."""
    bolts = sum(each.quantity for each in bed.hardware if each.code in ("CROSS-BOLT", "BED-BOLT"))
    if bolts:
        diameter = bed["connector"].bolt_diameter_mm
        yield Need(
            key=f"washers/{round(diameter, 2):g}", group="hardware",
            name="Washer, to lock", quantity=bolts, unit="piece",
            size=sold_size(diameter, bed["shown_unit"]), pack=pack_of("washer").pack,
            note="one under each bolt's head: common practice, no source",
        )  # fmt: skip


def _head_washers(bed: Bed) -> Iterator[Need]:
    """One under each head of a screw whose hole is drilled wide, so that what it holds is set."""
    screws = sum(
        mark.quantity
        for mark in bed.marks
        for hole in mark.part.holes
        if is_wide(hole)
    )  # fmt: skip
    if screws:
        yield Need(
            key="washers/flat", group="hardware", name="Washer, flat", quantity=screws,
            unit="piece", size="for the screws of the fronts", pack=pack_of("washer").pack,
            note="one under each screw's head in a wide hole",
        )  # fmt: skip


def _strap(bed: Bed) -> Iterator[Need]:
    """Slats that are not screwed down hang on two straps, a foot longer than the deck."""
    slats = [mark for mark in bed.marks if mark.name == "slat"]
    if not slats or bed["slat_fixing"] != "strap":
        return
    low, high = (
        bound[[k for mark in slats for k in mark.pieces], 1] for bound in bed.pieces.bounds
    )
    metres = 2 * (float(high.max() - low.min()) + _STRAP_ENDS) / 1000.0
    yield Need(
        key="strap/slats", group="hardware", name="Strap for slats, woven, 20 mm wide or more",
        quantity=math.ceil(metres * 10 - 1e-9) / 10, unit="metre", pack=1.0,
        note="two along the deck, with ends to fold: common practice, no source",
    )  # fmt: skip


def _bracket(bed: Bed, each: HardwareCount) -> Need:
    leaf = bed["bracket_leaf"]
    return Need(
        key=f"brackets/{round(leaf, 1):g}", group="hardware", name="Angle bracket",
        quantity=each.quantity, unit="piece", size=sold_size(leaf, bed["shown_unit"]),
        note="one leaf under the bearer, one against the frame",
    )  # fmt: skip


def _glide(bed: Bed, each: HardwareCount) -> Need:
    """Sold by their width; their height is what the bed stands on."""
    high, wide = min(each.size), max(each.size)
    unit = bed["shown_unit"]
    return Need(
        key=f"glides/{wide:g}x{round(high, 1):g}", group="hardware", name="Glide",
        quantity=each.quantity, unit="piece", pack=pack_of("glide").pack,
        size=f"{sold_size(wide, unit)} wide, {sold_size(high, unit)} high",
    )  # fmt: skip


def _button(bed: Bed, each: HardwareCount) -> Need:
    return Need(
        key="glides/button", group="hardware", name="Glide button", quantity=each.quantity,
        unit="piece", pack=pack_of("button").pack,
    )  # fmt: skip


def _pull(bed: Bed, each: HardwareCount) -> Need:
    row = bed["pull"]
    return Need(
        key=f"pulls/{row.key}", group="hardware", name=row.name, quantity=each.quantity,
        unit="piece", note="its screws are listed apart, by the thickness they pass",
    )  # fmt: skip


def _dowel(bed: Bed, each: HardwareCount) -> Need:
    size = each.code.removeprefix("DOWEL-").lower()
    return Need(
        key=f"dowels/{size}", group="hardware", name="Dowel, fluted hardwood",
        quantity=math.ceil(each.quantity * (1 + bed["spare_screws"] / 100) - 1e-9), unit="piece",
        size=f"{size.replace('x', ' x ')} mm", pack=pack_of("dowel").pack,
        note=f"{each.quantity} in their places",
    )  # fmt: skip


_SELLERS: dict[str, Seller] = {
    "SLIDE-": _slide,
    "HOOK-PLATE": _plates,
    "KEYHOLE-PLATE": _plates,
    "CROSS-BOLT": _bolts,
    "BED-BOLT": _bolts,
    "BRACKET": _bracket,
    "GLIDE-BUTTON": _button,
    "GLIDE": _glide,
    "PULL-": _pull,
    "DOWEL-": _dowel,
}
