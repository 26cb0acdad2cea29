"""Does every screw end inside the wood? One finding for all alike screws of a part."""

from __future__ import annotations

from collections.abc import Iterable

from model.checks.record import Finding, Verdict, at_least
from model.solids.screwing import ScrewPoint

BESIDE = "common practice, no source"
# What a maker turns first where a screw comes through, by the rule that makes the screwed part.
REMEDIES = {
    "cleat": ("cleat_screw", "cleat_stock", "frame_stock", "top_rail_width", "rail_width"),
    "slats": ("slat_stock", "cleat_width"),
    "slide_movers": ("box_stock",),
    **dict.fromkeys(
        ("near_brackets", "far_brackets", "bearers"),
        ("bearer_stock", "bearer_height", "frame_stock"),
    ),
}


def screw_findings(points: Iterable[ScrewPoint]) -> tuple[Finding, ...]:
    """The worst of the alike screws of every part: wood in front of the point against what must
    remain.
    """
    worst: dict[tuple[str, str], ScrewPoint] = {}
    for point in points:
        key = (point.rules[0], point.screw.kind)
        if key not in worst or _room(point) < _room(worst[key]):
            worst[key] = point
    return tuple(_finding(point) for point in worst.values())


def _room(point: ScrewPoint) -> float:
    return point.cover if point.into >= 0 and point.has_walls else -1.0


def _finding(point: ScrewPoint) -> Finding:
    found = at_least(_room(point), point.screw.cover)
    owner, _, made_by = point.rules[0].rpartition(".")
    return Finding(
        id=f"{owner}.screws_inside.{made_by}.{point.screw.kind.replace(' ', '_')}".lstrip("."),
        group="fit",
        title=f"{_called(point.screw.kind)} of the {point.name} stay inside",
        value=found.value, limit=found.limit, margin=found.margin,
        verdict=found.verdict if point.into >= 0 else Verdict.FAILS,
        reason=point.sentence(), source=BESIDE, place=owner,
        pieces=(point.piece, point.into) if point.into >= 0 else (point.piece,),
        remedies=REMEDIES.get(made_by, ()),
    )  # fmt: skip


def _called(kind: str) -> str:
    """`wood screw 8` as the trade says it: No. 8 wood screws."""
    words, _, gauge = kind.rpartition(" ")
    return f"No. {gauge} {words}s" if gauge.isdigit() else f"{kind.capitalize()}s"
