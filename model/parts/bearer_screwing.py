"""Screws of the runners on a bearer's face: clear of what else is driven into the bearer.

Read for left, right and foot.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from typing import NamedTuple

from model.dimensions.fasteners import Fastener
from model.joints.clear_places import evenly_clear, is_clear, joined
from model.joints.pilot import screwed
from model.joints.work import Work, gathered
from model.mechanics.fasteners.spacing import screw_distances, wood_between
from model.part import Face, Made, Part, Point
from model.rules import rule
from model.units import Mm, Places, ShopGrid, Spans

BEARERS = "bearers|opposite_bearers"
FROM_END: Mm = 50.0  # of a strip, 2 in; common practice, no source
APART: Mm = 200.0  # 8 in; common practice, no source


@rule
def bearer_fasteners(
    near_brackets: Made, far_brackets: Made, bearer_legs: Made, slide_holders: Made, bearers: Made
) -> tuple[Part, ...]:
    """What is driven into a bearer, or through its ends, before its strips and stops are."""
    return (*near_brackets, *far_brackets, *bearer_legs, *slide_holders, *bearers)


@rule
def runner_screw_places(
    runner_places: Places,
    runner_length: Mm,
    runner_stock: Mm,
    runner_bottom: Mm,
    bearer_plane: Mm,
    runner_screw: Fastener,
    bearer_fasteners: tuple[Part, ...],
    grid: ShopGrid,
) -> Places:
    """A runner is screwed on near its ends and evenly between, clear of what else goes into its
    bearer; one so thin that any screw would split it is glued alone.

    Source: common practice, no source
    """
    shank = runner_screw.screw.shank_mm
    if not runner_places or screw_distances(shank, has_pilot=True).edge > runner_stock / 2:
        return ()
    up = runner_bottom + runner_stock / 2
    taken = shunned(bearer_fasteners, along="v", line=("z", up), shank=shank, start=bearer_plane)
    near = screw_distances(shank, has_pilot=True).along
    end = grid.near(min(FROM_END, runner_length / 4))
    return tuple(
        _on_grid(at, taken, grid)
        for at in evenly_clear(end, runner_length - end, taken, APART, near)
    )


def _on_grid(at: Mm, taken: Spans, grid: ShopGrid) -> Mm:
    """The nearest place on the grid that is clear; the place itself where neither neighbour is."""
    near = sorted((grid.down(at), grid.up(at)), key=lambda each: abs(each - at))
    return next((each for each in near if is_clear(each, taken)), at)


def screwed_sideways(
    size: Point, face: Face, along: Places, fastener: Fastener, into: str = BEARERS
) -> Work:
    """Screws in a row from one edge of a strip through its width into what lies at the other."""
    across = size[1] if face.is_high else 0.0
    return gathered(
        screwed(
            size, face, at=(float(x), across, size[2] / 2), screw=fastener.screw,
            length=fastener.length, into=into,
        )
        for x in along
    )  # fmt: skip


# ---------------------------------------------------------------- what is in the way


class _Bore(NamedTuple):
    """A screw or a bored hole in its part's own axes."""

    at: Point
    toward: Point
    deep: Mm
    diameter: Mm


def shunned(
    parts: Iterable[Part], *, along: str, line: tuple[str, Mm], shank: Mm, start: Mm
) -> Spans:
    """Where on a line screws that are driven along the run come too near to what is bored or driven
    into these parts, or from them into others.

    The line runs along one axis of the frame, `along`, and lies at `line` on another; stretches
    are measured from `start`. All in the frame of the parts.
    """
    return joined(
        (low - start, high - start)
        for part in parts
        for bore in _bores(part)
        for low, high in _stretches(bore, part, along, line, shank)
    )


def _bores(part: Part) -> Iterator[_Bore]:
    for hole in part.holes:
        yield _Bore(hole.at, hole.toward, hole.depth, hole.diameter)
    for screw in part.screws:
        yield _Bore(screw.at, screw.toward, screw.length, screw.diameter)


def _stretches(
    bore: _Bore, part: Part, along: str, line: tuple[str, Mm], shank: Mm
) -> Iterator[tuple[Mm, Mm]]:
    tip = [a + bore.deep * way for a, way in zip(bore.at, bore.toward, strict=True)]
    near = (shank + bore.diameter) / 2 + wood_between(shank, bore.diameter)
    for place in part.places:
        on, off = (
            [end[part.lies.index(axis)] + part.at["uvz".index(axis)] + getattr(place, axis)
             for end in (bore.at, tip)]
            for axis in (along, line[0])
        )  # fmt: skip
        away = max(min(off) - line[1], line[1] - max(off), 0.0)
        if away < near:
            beside = math.sqrt(near**2 - away**2)
            yield min(on) - beside, max(on) + beside
