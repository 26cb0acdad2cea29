"""Ends of open upright slats: as few as keep every gap small enough, one spacer for all gaps."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import NamedTuple

from model.brief.ends import EndStyle
from model.errors import CannotBuild
from model.rules import rule
from model.units import Count, Mm, Places, ShopGrid


class Spindles(NamedTuple):
    """How many open slats, the gap between two of them, and the gap at each post, mm."""

    number: int
    gap: float
    end_gap: float


def _tries(across: float, width: float, most: float, grid: ShopGrid) -> Iterator[tuple[int, float]]:
    least = max(1, math.ceil((across - most) / (width + most) - 1e-9))
    for step in grid.finer():
        for count in range(least, least + 3):
            gap = (across - count * width) / (count + 1)
            yield from ((count, step.down(gap)), (count, step.up(gap)))


@rule
def spindles(
    style: EndStyle, between_posts: Mm, spindle_width: Mm, spindle_gap_most: Mm, grid: ShopGrid
) -> Spindles:
    """As few as keep every gap small enough; one spacer serves all gaps, the end gaps differ.

    The end gaps take what rounding the others left over; they too stay below the largest gap and
    above half of the others.
    """
    if style != "slats":
        return Spindles(0, 0.0, 0.0)
    for count, gap in _tries(between_posts, spindle_width, spindle_gap_most, grid):
        end_gap = (between_posts - count * spindle_width - (count - 1) * gap) / 2
        if 0 < gap <= spindle_gap_most + 1e-6 and gap / 2 <= end_gap <= spindle_gap_most + 1e-6:
            return Spindles(count, gap, end_gap)
    raise CannotBuild("spindle_gap_most", "No even gap this small comes out between the slats.")


@rule
def spindle_count(spindles: Spindles) -> Count:
    """Open slats in the end."""
    return spindles.number


@rule
def spindle_gap(spindles: Spindles) -> Mm:
    """Between two open slats: the spacer's size."""
    return spindles.gap


@rule
def spindle_end_gap(spindles: Spindles) -> Mm:
    """Between a post and the open slat next to it."""
    return spindles.end_gap


@rule
def spindle_places(
    post_inner_x: Mm,
    spindle_end_gap: Mm,
    spindle_gap: Mm,
    spindle_width: Mm,
    spindle_count: Count,
) -> Places:
    """Where each open slat begins."""
    first = spindle_end_gap - post_inner_x
    return tuple(first + i * (spindle_width + spindle_gap) for i in range(spindle_count))


@rule
def spindle_length(clear_height: Mm, panel_groove_depth: Mm) -> Mm:
    """An open slat goes into both rails by a stub tenon as long as grooves are deep."""
    return clear_height + 2 * panel_groove_depth


@rule
def spindle_bottom(end_rail_top: Mm, panel_groove_depth: Mm) -> Mm:
    """An open slat's tenon goes down into the end rail."""
    return end_rail_top - panel_groove_depth


@rule
def spindle_shoulder(spindle_width: Mm, tenon_shoulder: Mm, grid: ShopGrid) -> Mm:
    """A narrow slat's tenon keeps at least half of its width."""
    return min(tenon_shoulder, grid.down(spindle_width / 4))
