"""Slats on their cleats, across and along the bed, their gaps numbered."""

from __future__ import annotations

from typing import TYPE_CHECKING

from app.panes.drawer_sections import Measure, gaps_of, numbered
from app.panes.section import Drawing, Patch, U, V, laid

if TYPE_CHECKING:
    from model.bed import Bed

SHOWN_ACROSS, SHOWN_ALONG = 190.0, 620.0  # mm of the bed: enough to see every gap at scale


def deck_sections(bed: Bed) -> tuple[Drawing, Drawing]:
    """One side of the deck, cut through its first slat or panel, and a stretch along the rail."""
    from model.frame import BED

    boxes = laid(bed, BED)
    inner, top = float(bed["rail_inner_x"]), float(bed["deck_top"])
    low, high = float(bed["cleat_bottom"]) - 25.0, float(bed["rail_top"]) + 12.0
    first = (*bed["slat_places"], *bed["deck_panel_places"], bed["post_along"])[0]
    is_slatted = len(bed["slat_places"]) > 1
    across, along = _across(bed), _slats_along(bed) if is_slatted else _panels_along(bed)
    start = 0.0 if is_slatted else _first_joint(bed) - SHOWN_ALONG / 2
    numbers = numbered(bed, (*across, *along))
    cut_across = boxes.cut(V, float(first) + float(bed["slat_width"]) / 2)
    # Slats are seen on their cleat; the batten under a joint of panels ends at the cleat.
    from_rail = 0.5 if is_slatted else 1.5
    cut_along = boxes.cut(U, -inner + float(bed["cleat_stock"]) * from_rail)
    return (
        Drawing(
            "Across, at the left side", _wood(cut_across), gaps_of(across, numbers),
            (-inner - 60.0, low), (-inner + SHOWN_ACROSS, high),
        ),
        Drawing(
            "Along, from the foot" if is_slatted else "Along, at a joint of two panels",
            _wood(cut_along), gaps_of(along, numbers),
            (start, top - 180.0), (start + SHOWN_ALONG, high),
        ),
    )  # fmt: skip


def _first_joint(bed: Bed) -> float:
    """Where the second panel begins; the foot post where there is only one."""
    return float((*bed["deck_panel_places"], bed["post_along"])[1])


def _panels_along(bed: Bed) -> list[Measure]:
    if len(bed["deck_panel_places"]) < 2:
        return []
    joint, gap = _first_joint(bed), float(bed["deck_joint_gap"])
    middle = (float(bed["deck_top"]) + float(bed["deck_bottom"])) / 2
    batten, under = float(bed["batten_places"][0]), float(bed["batten_bottom"])
    return [
        Measure("deck_joint_gap", (joint - gap, middle), (joint, middle)),
        Measure("slat_width", (batten, under), (batten + float(bed["slat_width"]), under), 0.8),
    ]


def _across(bed: Bed) -> list[Measure]:
    inner, clear = float(bed["rail_inner_x"]), float(bed["slat_clearance_built"])
    top, under = float(bed["deck_top"]), float(bed["deck_bottom"])
    cleat = -inner + float(bed["cleat_stock"])
    bearing = cleat - float(bed["slat_bearing_least"])
    middle = (top + under) / 2
    over, beside, far = -inner + 70.0, cleat + 12.0, -inner + 120.0
    return [
        Measure("slat_clearance_built", (-inner, middle), (-inner + clear, middle)),
        Measure("slat_bearing_least", (bearing, under), (cleat, under), 1.0),
        Measure("recess", (over, top), (over, float(bed["rail_top"]))),
        Measure("cleat_width", (beside, float(bed["cleat_bottom"])), (beside, under)),
        Measure("deck_thickness", (far, under), (far, top)),
    ]


def _slats_along(bed: Bed) -> list[Measure]:
    places = bed["slat_places"]
    first, second, post = float(places[0]), float(places[1]), float(bed["post_along"])
    far = first + float(bed["slat_width"])
    middle = (float(bed["deck_top"]) + float(bed["deck_bottom"])) / 2
    above = float(bed["deck_top"]) + 14.0
    return [
        Measure("slat_end_gap", (post, middle), (first, middle)),
        Measure("slat_spacer", (far, middle), (second, middle)),
        Measure("slat_width", (first, above), (far, above)),
    ]


def _wood(patches: tuple[Patch, ...]) -> tuple[Patch, ...]:
    """Boxes of drawers would only clutter what is seen of the deck."""
    return tuple(patch for patch in patches if not patch.kind.startswith("other"))
