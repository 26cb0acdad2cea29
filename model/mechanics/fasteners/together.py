"""Pulls and pushes together, on one screw or on the screws of a plate or an angle bracket."""

from __future__ import annotations

from collections.abc import Sequence
from math import hypot, inf
from typing import NamedTuple

from model.errors import BadInput
from model.mechanics.fasteners.strengths import Design, above_zero
from model.units import Mm, Newton


class ScrewForce(NamedTuple):
    """What one screw is asked to bear, N: across its axis and along it, outwards."""

    lateral: Newton
    withdrawal: Newton

    @property
    def together(self) -> Newton:
        """Both as one force at an angle."""
        return hypot(self.lateral, self.withdrawal)


def design_at_angle(lateral: Design, withdrawal: Design, force: ScrewForce) -> Design:
    """What a lag or wood screw may bear of a force at an angle to the face that it stands in:
    W Z / (W cos^2 + Z sin^2).

    A screw that may bear no withdrawal (end grain) bears nothing as soon as there is some.
    Source: NDS 2018, equation 12.4-1, from memory; Hankinson's form, Wood Handbook equation 8-16
    """
    above_zero(lateral_design_value=lateral, force=force.together)
    if force.withdrawal <= 0:
        return lateral
    if withdrawal <= 0:
        return Design(0.0)
    cos2 = (force.lateral / force.together) ** 2
    return Design(lateral * withdrawal / (withdrawal * cos2 + lateral * (1 - cos2)))


def use_of(lateral: Design, withdrawal: Design, force: ScrewForce) -> float:
    """Share of what the screw may bear that the force takes; past 1 it fails, inf where the screw
    may not be drawn at all and is.

    At least the share that the push alone takes, and the pull alone: by the equation a pull would
    make a screw that is weak sideways bear a greater push.
    """
    if force.together <= 0:
        return 0.0
    allowed = design_at_angle(lateral, withdrawal, force)
    if allowed <= 0:
        return inf
    pulled = max(force.withdrawal, 0.0) / withdrawal if withdrawal > 0 else 0.0
    return max(force.together / allowed, force.lateral / lateral, pulled)


def bracket_screws(load: Newton, arm: Mm, heights: Sequence[Mm]) -> tuple[ScrewForce, ...]:
    """What each screw of an upright leaf bears when `load` hangs `arm` before its face.

    Every screw takes its share of the load sideways. The moment turns the leaf about its lower
    edge: a screw `height` above it is drawn in proportion to its height. All mm, N.
    """
    if not heights:
        raise BadInput("screws", "A bracket without screws holds nothing.")
    above_zero(**{f"height_of_screw_{i}": height for i, height in enumerate(heights, 1)})
    turning, squares = load * arm, sum(height**2 for height in heights)
    share = load / len(heights)
    return tuple(ScrewForce(share, max(0.0, turning * y / squares)) for y in heights)


def screws_in_line(
    across: Newton, along: Newton, moment: float, places: Sequence[Mm]
) -> tuple[Newton, ...]:
    """Sideways force on each of the screws in a line through a plate; `places` along that line.

    `across` and `along` are forces on the plate square to the line and along it, `moment` (N mm)
    turns it in its own plane about the screws' middle, so that `across` and the moment push the
    same way at one end. A single screw bears no moment: inf.
    """
    if not places:
        raise BadInput("screws", "A plate without screws holds nothing.")
    middle, count = sum(places) / len(places), len(places)
    squares = sum((at - middle) ** 2 for at in places)
    if not squares:
        share = inf if moment else hypot(across, along) / count
        return (share,) * count
    turned = (moment * (at - middle) / squares for at in places)
    return tuple(hypot(across / count + each, along / count) for each in turned)
