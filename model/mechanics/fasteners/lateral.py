"""What a wood screw bears sideways: two older forms of the Wood Handbook, and the design value."""

from __future__ import annotations

from dataclasses import dataclass
from math import sqrt
from typing import Literal

from model.errors import BadInput
from model.mechanics.fasteners.dowel_bearing import bending_yield, small_dowel_bearing
from model.mechanics.fasteners.strengths import (
    INCH,
    Design,
    UltimateStress,
    Yield,
    above_zero,
    wood_gravity,
)
from model.mechanics.fasteners.yield_modes import Shear
from model.units import Mm

WoodKind = Literal["hardwood", "softwood"]

# Bands of specific gravity and K, N/mm2. Source: Wood Handbook 2021 (FPL-GTR-282), table 8-4
_K: dict[WoodKind, tuple[tuple[float, float, float], ...]] = {
    "hardwood": ((0.33, 0.47, 23.17), (0.48, 0.56, 31.99), (0.57, 0.74, 44.13)),
    "softwood": ((0.29, 0.42, 23.17), (0.43, 0.47, 29.79), (0.48, 0.52, 36.40)),
}
# Source: NDS 2018, appendix L, from memory: 0.79 to 0.82 for No. 6 to No. 14; the least of them.
ROOT_SHARE = 0.79
END_GRAIN = 0.67  # lateral, screw in end grain; Source: NDS 2018, 12.5.2.2, from memory
FULL_BITE = 6.0  # diameters of the point side in the wood; Source: NDS 2018, 12.1.5, from memory


def proportional_limit_lateral(kind: WoodKind, gravity: float, shank: Mm) -> Yield:
    """Older form: load at the proportional limit of a screw whose point side bites 7 diameters or
    more: K D^2. Refused: a specific gravity between or beyond the bands of the table.

    Source: Wood Handbook 2021 (FPL-GTR-282), equation 8-13, table 8-4
    """
    above_zero(shank_diameter=shank)
    return Yield(lateral_constant(kind, gravity) * shank**2)


def lateral_constant(kind: WoodKind, gravity: float) -> float:
    """K of the older form, N/mm2, for a band of specific gravity given to two decimals."""
    two = round(gravity, 2)
    for least, most, k in _K[kind]:
        if least <= two <= most:
            return k
    bands = ", ".join(f"{least:.2f} to {most:.2f}" for least, most, _ in _K[kind])
    raise BadInput(
        "specific_gravity",
        f"Table 8-4 of the Wood Handbook gives no constant for {kind} of specific gravity "
        f"{two:.2f}; it covers {bands}.",
    )


def handbook_yield_lateral(
    shank: Mm,
    side: Mm,
    *,
    main_bearing: UltimateStress,
    side_bearing: UltimateStress,
    steel_yield: UltimateStress,
) -> Yield:
    """The handbook's yield model of a wood screw by its shank (5 % offset): the side crushes (Is),
    the screw bends once (IIIs) or twice (IV).

    Source: Wood Handbook 2021 (FPL-GTR-282), table 8-5
    """
    above_zero(shank_diameter=shank, side_member=side)
    ratio = main_bearing / side_bearing
    bend = steel_yield * (2 + ratio) * shank**2 / (2 * main_bearing * side**2)
    k3 = sqrt(2 * (1 + ratio) / ratio + bend) - 1
    crushed = shank * side * side_bearing
    once = k3 * shank * side * main_bearing / (2 + ratio)
    twice = shank**2 * sqrt(1.75 * main_bearing * steel_yield / (3 * (1 + ratio)))
    return Yield(min(crushed, once, twice))


def reduction(diameter: Mm) -> float:
    """K_D, what a yield load of a fastener below 1/4 in is divided by: 2.2 up to 0.17 in, then
    10 D + 0.5. Source: NDS 2018, table 12.3.1B, from memory
    """
    inch = diameter / INCH
    if inch >= 0.25:
        raise BadInput("diameter", "This reduction is for fasteners thinner than 1/4 in (6.35 mm).")
    return 2.2 if inch <= 0.17 else 10 * inch + 0.5


def design_from_yield(load: Yield, diameter: Mm) -> Design:
    """A yield load of a fastener thinner than 1/4 in, divided down to what may be used."""
    return Design(load / reduction(diameter))


@dataclass(frozen=True, kw_only=True)
class ScrewJoint:
    """A wood screw through a side member, whose point side bites `bite` into the main member.

    `side_bearing` is the side member's dowel bearing strength, of wood or steel (see
    `dowel_bearing`). `main_gravity` is the wood that holds the point.
    """

    shank: Mm
    side: Mm
    side_bearing: UltimateStress
    main_gravity: float
    bite: Mm

    @property
    def bite_share(self) -> float:
        """How much of the bite that the standard asks for there is: below 1 it is short."""
        return self.bite / (FULL_BITE * self.shank)


def wood_side(gravity: float) -> UltimateStress:
    """Dowel bearing strength of a wooden side member under a screw."""
    return small_dowel_bearing(gravity)


def design_screw_lateral(joint: ScrewJoint, *, in_end_grain: bool = False) -> Design:
    """What a wood screw may bear sideways: the least of six yield modes at its root, divided by
    K_D; two thirds of it where it stands in end grain.

    The dowel bears over the bite less half of its tip, a tip being two shanks long.
    Refused: a bite so short that only the tip is in the wood.
    Source: NDS 2018, 12.3.1, 12.3.5 and 12.5.2.2, from memory; its tables 12L and 12M are met
    """
    wood_gravity(joint.main_gravity)
    above_zero(shank_diameter=joint.shank, side_member=joint.side, bite=joint.bite)
    root, bears = joint.shank * ROOT_SHARE, joint.bite - joint.shank
    if bears <= 0:
        raise BadInput("bite", "Only the tip of the screw is in the wood: it holds nothing.")
    shear = Shear(
        diameter=root, bending_yield=bending_yield(joint.shank),
        main_bearing=small_dowel_bearing(joint.main_gravity), main_length=bears,
        side_bearing=joint.side_bearing, side_length=joint.side,
    )  # fmt: skip
    design = design_from_yield(min(shear.single().values()), root)
    return Design(END_GRAIN * design) if in_end_grain else design
