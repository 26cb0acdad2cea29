"""Rough sizes: what is sawn first, so that there is wood left to true and plane.

Length and width get an allowance, the thickness comes from the rough board that mills to it. Sheet
parts have none: they are cut to size at once.
Source: common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass

from model.errors import CannotBuild
from model.materials import Material, rough_stock
from model.units import Count, Mm

LENGTH_MORE: Mm = 25.0  # 1 to 1 1/2 in (25 to 38 mm): snipe at both ends, and a square first cut
WIDTH_MORE: Mm = 13.0  # 1/2 in: two jointed edges and one rip


@dataclass(frozen=True, kw_only=True)
class Size:
    """A piece as it is sawn: length along the grain, width, thickness."""

    length: Mm
    width: Mm
    thickness: Mm


def rough_size(finished: Size, material: Material, layers: Count = 1) -> Size:
    """What to saw for a part; for one that is glued up from layers, the blank to be trimmed."""
    if material.kind == "sheet":
        return finished
    return Size(
        length=finished.length + LENGTH_MORE,
        width=finished.width + WIDTH_MORE,
        thickness=_rough_thickness(finished.thickness) if layers == 1 else finished.thickness,
    )


def rough_layer(finished: Size, material: Material, layer_thickness: Mm) -> Size:
    """What to saw for one layer of a glued-up part: it is milled before the glue, trimmed after."""
    layer = Size(length=finished.length, width=finished.width, thickness=layer_thickness)
    return rough_size(layer, material)


def _rough_thickness(finished: Mm) -> Mm:
    try:
        return rough_stock(finished).actual_mm
    except CannotBuild:
        # Thicker than any board is sold: a timber, with the same allowance as across its width.
        return finished + WIDTH_MORE
