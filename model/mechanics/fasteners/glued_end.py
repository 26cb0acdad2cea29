"""What a glued tenon, or glued dowels, at the end of a member bear.

The member's end stands on its mate with its shoulders. A moment opens the joint about the edge or
the face that presses, as with screws; glue holds what opens. Forces are on the member's own axes:
`opens` (N mm) the moment about the pressed edge, `leans` (N mm) the one about the pressed face,
`across` (N) along the member's width, `sideways` (N) through its thickness.

First principles; strengths: see `glue`.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import hypot, pi
from typing import NamedTuple

from model.mechanics.fasteners.bolts import design_single_shear
from model.mechanics.fasteners.dowel_bearing import dowel_bearing_across
from model.mechanics.fasteners.glue import design_dowel_withdrawal, hole_across
from model.mechanics.fasteners.lateral import END_GRAIN
from model.mechanics.fasteners.strengths import Design, DesignStress, UltimateStress, above_zero
from model.mechanics.fasteners.yield_modes import Shear
from model.units import Mm

# What a board bears drawn along its grain, as a share of what it bears bent.
TENSION_SHARE = 0.55  # Source: ASTM D245, from memory
GLUED_WIDTH: Mm = 101.6  # 4 in: over more wood moves too far; common practice, no source


class Shares(NamedTuple):
    """Share of what one thing may bear for ten years that a unit of each force takes of it."""

    opens: float = 0.0
    leans: float = 0.0
    across: float = 0.0
    sideways: float = 0.0


@dataclass(frozen=True, kw_only=True)
class TenonEnd:
    """A tenon in the middle of a member's thickness, both cheeks glued, all mm.

    `lower` and `upper` are its shoulders at the member's edges. Stresses for ten years, MPa:
    `cheek` what glue on cheeks that cross the mate's grain may bear in shear, `shear` and
    `tension` what the tenon's own wood may.
    """

    width: Mm
    stock: Mm
    lower: Mm
    upper: Mm
    length: Mm
    thickness: Mm
    cheek: DesignStress
    shear: DesignStress
    tension: DesignStress

    def __post_init__(self) -> None:
        above_zero(
            width=self.deep, length=self.length, thickness=self.thickness,
            shear_across_the_grain=self.cheek, shear=self.shear, tension=self.tension,
        )  # fmt: skip

    @property
    def deep(self) -> Mm:
        """The tenon's own width."""
        return self.width - self.lower - self.upper

    @property
    def glued(self) -> Mm:
        """How much of the tenon's width is glued: of a wide one the part at one edge."""
        return min(self.deep, GLUED_WIDTH)

    @property
    def lever(self) -> Mm:
        """From the tenon's middle to the middle of the shoulder at a face that presses."""
        return (self.stock + self.thickness) / 4

    def shares(self) -> tuple[Shares, Shares, Shares]:
        """Of the glue, of the wood drawn along its grain, and of the wood in shear.

        Glue slips about the pressed edge in proportion to the way from there: greatest stress is
        moment x farthest way / polar moment of both cheeks. A tenon's root is drawn alike.
        """
        area, root = 2 * self.glued * self.length, self.deep * self.thickness
        glue = Shares(
            opens=self._slip() / self.cheek,
            leans=1 / (self.lever * area * self.cheek),
            across=1 / (area * self.cheek),
        )
        drawn = Shares(
            opens=self._drawn() / self.tension, leans=1 / (self.lever * root * self.tension)
        )
        peak = 1.5 / (root * self.shear)  # as in a beam
        return glue, drawn, Shares(across=peak, sideways=peak)

    def _slip(self) -> float:
        """Greatest shear stress of the glue for a unit of moment about the worse edge, 1/mm3."""
        return max(self._about(edge) for edge in (self.lower, self.upper))

    def _about(self, first: Mm) -> float:
        last = first + self.glued
        across = (last**3 - first**3) / 3
        polar = self.length * across + self.glued * self.length**3 / 3
        return hypot(last, self.length) / (2 * polar)

    def _drawn(self) -> float:
        """Greatest stress at the tenon's root for a unit of moment about the worse edge, 1/mm3."""
        edges = ((self.lower, self.upper), (self.upper, self.lower))
        ends = [(first, self.width - last) for first, last in edges]
        return max(3 * last / (self.thickness * (last**3 - first**3)) for first, last in ends)


@dataclass(frozen=True, kw_only=True)
class DowelEnd:
    """Dowels in the middle of a member's thickness, `spots` from its lower edge, `depth` in either
    part, all mm.

    Of both woods: specific gravity of the lighter one, `shear` (MPa, ten years) of the weaker one
    along the grain. Of the dowels' wood: `breaks` (MPa) its bending strength, `tension` (MPa) what
    it may bear drawn.
    """

    width: Mm
    stock: Mm
    spots: tuple[Mm, ...]
    diameter: Mm
    depth: Mm
    gravity: float
    shear: DesignStress
    breaks: UltimateStress
    tension: DesignStress

    def withdrawal(self) -> Design:
        """What one dowel may bear drawn out: by its skin across the mate's grain, or itself."""
        skin = design_dowel_withdrawal(hole_across(self.shear), self.diameter, self.depth)
        return Design(min(skin, self.tension * pi * self.diameter**2 / 4))

    def lateral(self) -> Design:
        """What one dowel may bear sideways: the yield model of bolts with the dowel's own wood in
        bending, in end grain at one side.

        Source: NDS 2018, tables 12.3.1A and B and 12.5.2.2, from memory; wooden pegs are reckoned
        so in timber framing, from memory
        """
        bearing = dowel_bearing_across(self.gravity, self.diameter)
        shear = Shear(
            diameter=self.diameter, bending_yield=self.breaks, main_bearing=bearing,
            main_length=self.depth, side_bearing=bearing, side_length=self.depth,
        )  # fmt: skip
        return Design(END_GRAIN * design_single_shear(shear, 90.0))

    def draws(self) -> Shares:
        """What the worst dowel is drawn out by, N, for a unit of each force; of a wide member only
        the dowels within the width that may be glued hold.
        """
        sides = (self.spots, tuple(self.width - at for at in self.spots))
        held = [_nearest(side) for side in sides]
        count = min(len(side) for side in held)
        return Shares(
            opens=max(max(side) / sum(y**2 for y in side) for side in held),
            leans=2 / (self.stock * count),
        )


def _nearest(spots: Sequence[Mm]) -> list[Mm]:
    """The dowels that may be glued, from the one nearest to the edge on."""
    first = min(spots)
    return [at for at in spots if at - first <= GLUED_WIDTH]
