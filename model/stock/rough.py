"""Rough sizes: what is sawn first, so that there is wood left to true and plane.

Length and width get an allowance, the thickness comes from the rough board that mills to it. Sheet
parts have none: they are cut to size at once.
Source: common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass

from model.errors import CannotBuild
from model.materials import rough_stock
from model.units import Mm


@dataclass(frozen=True, kw_only=True)
class Size:
    """A piece as it is sawn: length along the grain, width, thickness."""

    length: Mm
    width: Mm
    thickness: Mm


@dataclass(frozen=True, kw_only=True)
class Allowances:
    """What a rough piece has over the finished one."""

    length: Mm
    width: Mm


def blank_size(finished: Size, more: Allowances) -> Size:
    """A part that is glued up: the blank that is trimmed when the glue is dry."""
    return Size(
        length=finished.length + more.length,
        width=finished.width + more.width,
        thickness=finished.thickness,
    )


def rough_thickness(finished: Mm, more: Allowances) -> Mm:
    """The thickness of the rough board that mills to a finished one."""
    try:
        return rough_stock(finished).actual_mm
    except CannotBuild:
        # Thicker than any board is sold: a timber, with the same allowance as across its width.
        return finished + more.width
