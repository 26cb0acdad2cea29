"""Where the screws of a cleat go: clear of those of the slats and of what is in the rail behind.

Read for left and right.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import NamedTuple

from model.brief.deck import SlatFixing
from model.joints.clear_places import between_marks, clear_place, evenly_clear, joined
from model.materials import WoodScrew
from model.mechanics.fasteners.spacing import screw_distances, wood_between
from model.part import Made, Part, Point
from model.rules import rule
from model.units import Mm, Places, Spans

FROM_END: Mm = 40.0  # ten shank diameters from the end grain; common practice, no source


@rule
def cleat_slat_screws(
    slat_places: Places, slat_width: Mm, slat_fixing: SlatFixing, run_from: Mm
) -> Places:
    """Where slats are screwed down into the cleat, from its end: in the middle of each slat."""
    if slat_fixing != "screws":
        return ()
    return tuple(float(at + slat_width / 2 - run_from) for at in slat_places)


@rule
def cleat_screws_shun(
    top_rail: Made,
    side_rail: Made,
    stiles: Made,
    rail_plates: Made,
    run_from: Mm,
    cleat_bottom: Mm,
    cleat_width: Mm,
    cleat_screw: WoodScrew,
) -> Spans:
    """Along the cleat, where its screws would come too near to bolts, nuts, dowels or screws in
    the rail.
    """
    up = cleat_bottom + cleat_width / 2
    return joined(
        (low - run_from, high - run_from)
        for part in (*top_rail, *side_rail, *stiles, *rail_plates)
        for bore in _bores(part)
        for low, high in _stretches(bore, part, up, cleat_screw.shank_mm)
    )


@rule
def cleat_screw_places(
    rail_length: Mm,
    cleat_screw: WoodScrew,
    cleat_screw_spacing: Mm,
    cleat_slat_screws: Places,
    cleat_screws_shun: Spans,
) -> Places:
    """A cleat is screwed on in the gaps between the slats, where no slat's screw comes down, and
    near its ends.

    Source: common practice, no source
    """
    shank = cleat_screw.shank_mm
    apart = shank + wood_between(shank, shank)
    slats = ((at - apart, at + apart) for at in cleat_slat_screws)
    taken = joined((*cleat_screws_shun, *slats))
    middle = rail_length / 2
    first = clear_place(FROM_END, taken, FROM_END, middle)
    last = clear_place(rail_length - FROM_END, taken, middle, rail_length - FROM_END)
    near = screw_distances(shank, has_pilot=True).along
    found = between_marks(first, last, cleat_slat_screws, taken, cleat_screw_spacing, near)
    return found or evenly_clear(first, last, taken, cleat_screw_spacing, near)


class _Bore(NamedTuple):
    """What is bored or driven into a part and beyond, in the part's own axes."""

    at: Point
    toward: Point
    deep: Mm
    diameter: Mm


def _bores(part: Part) -> Iterator[_Bore]:
    for hole in part.holes:
        yield _Bore(hole.at, hole.toward, hole.depth, hole.diameter)
    for screw in part.screws:
        yield _Bore(screw.at, screw.toward, screw.length, screw.diameter)


def _stretches(bore: _Bore, part: Part, up: Mm, shank: Mm) -> Iterator[tuple[Mm, Mm]]:
    """Along the run, where a screw at the height `up` comes too near to a bore of any piece of the
    part.
    """
    u, z = part.lies.index("u"), part.lies.index("z")
    tip = [a + bore.deep * way for a, way in zip(bore.at, bore.toward, strict=True)]
    near = (shank + bore.diameter) / 2 + wood_between(shank, shank)
    for place in part.places:
        along = [end[u] + part.at[0] + place.u for end in (bore.at, tip)]
        high = [end[z] + part.at[2] + place.z for end in (bore.at, tip)]
        off = max(min(high) - up, up - max(high), 0.0)
        if off < near:
            beside = math.sqrt(near**2 - off**2)
            yield min(along) - beside, max(along) + beside
