"""Which pieces carry the bed, and the straight lines that stand for them in the frame."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property, lru_cache

import numpy as np

from model.errors import BadInput
from model.materials.allowable import Allowed, allowed
from model.materials.own import OwnRows
from model.mechanics.duration import Product
from model.mechanics.section import second_moment, torsion_constant
from model.part import Part
from model.parts.pieces import Bools, Floats, Ints, Pieces

# The rules whose pieces carry, and what each is to the frame.
ROLES: Mapping[str, str] = {
    "slat_pieces": "slat",
    "deck_panel_pieces": "deck panel",
    "batten_pieces": "deck batten",
    "beam_pieces": "centre beam",
    "beam_packer_pieces": "packer",
    "beam_leg_pieces": "leg",
    "bearer_legs": "leg",
    "divider_legs": "leg",
    "bearers": "bearer",
    "dividers": "divider",
    "side_rail": "side rail",
    "top_rail": "side rail",
    "bottom_rail": "bottom rail",
    "stiles": "stile",
    "post_left": "post",
    "post_right": "post",
    "end_rail": "end rail",
    "upper_rail": "end rail",
    "panel_stiles": "panel stile",
}
# Glued and screwed along their whole length: they hand on what rests on them, and stiffen nothing.
FASTENED = {"cleat", "beam_block"}
DECK = ("slat", "deck panel")
PROPS = ("leg", "packer")


@dataclass(frozen=True, kw_only=True, eq=False)
class Skeleton:
    """The pieces of the frame (p): `piece` indexes the bed's, rising; `role` what each is.

    `host` (n,): for each of the bed's pieces the piece of the frame that it is, or is fastened to
    along its length; -1 for others. `start` (p, 3): the near end of its axis; `axes` (p, 3, 3):
    rows are its length, width and thickness on the bed's axes; `size` (p, 3), all mm. Per piece
    of the frame: `density` kg/m3; `moe`, `shear_modulus` and, for ten years, `bending`, `shear`,
    `across`, all MPa; the `product` is what a load's time is judged by.
    """

    piece: Ints
    role: tuple[str, ...]
    product: tuple[Product, ...]
    host: Ints
    start: Floats
    axes: Floats
    size: Floats
    moe: Floats
    shear_modulus: Floats
    bending: Floats
    shear: Floats
    across: Floats
    density: Floats

    @cached_property
    def inertia(self) -> tuple[Floats, Floats, Floats, Floats]:
        """Area, second moments about the width and the thickness axis, torsion constant."""
        _, width, thickness = self.size.T
        about_y, about_z = second_moment(width, thickness), second_moment(thickness, width)
        return width * thickness, about_y, about_z, torsion_constant(width, thickness)

    def is_role(self, *roles: str) -> Bools:
        """(p + 1,): which pieces of the frame have one of these roles. The last is False: what is
        numbered -1 is no piece of the frame.
        """
        found = self._masks.get(roles)
        if found is None:
            found = np.array([*(role in roles for role in self.role), False])
            self._masks[roles] = found
        return found

    @cached_property
    def _masks(self) -> dict[tuple[str, ...], Bools]:
        return {}

    def of_role(self, *roles: str) -> Ints:
        """Pieces of the frame with one of these roles."""
        return np.flatnonzero(self.is_role(*roles))


@lru_cache(maxsize=16)
def own_names(rules: tuple[str, ...]) -> tuple[str, ...]:
    """Names of rules without the side or end that they are read for."""
    return tuple(rule.rpartition(".")[2] for rule in rules)


def skeleton(pieces: Pieces, grade: str, own: OwnRows) -> Skeleton:
    """The pieces of a bed that carry. BadInput: a material without a figure that is needed."""
    names = own_names(pieces.rules)
    carries = np.array([name in ROLES for name in names], bool)[pieces.rule]
    piece = np.flatnonzero(carries)
    parts = [pieces.parts[k] for k in pieces.part[piece].tolist()]
    host = np.full(len(pieces), -1)
    host[piece] = np.arange(len(piece))
    matrix, size = pieces.matrices[piece], np.array([part.size for part in parts]).reshape(-1, 3)
    middle = np.einsum("pij,pj->pi", matrix[:, :3, :3], size * [0.0, 0.5, 0.5])
    may = {part.material: _may_bear(part, grade, own) for part in parts}
    figures = np.array([_figures(part, may[part.material]) for part in parts]).reshape(-1, 6).T
    return Skeleton(
        piece=piece,
        role=tuple(ROLES[names[k]] for k in pieces.rule[piece].tolist()),
        product=tuple(may[part.material].product for part in parts),
        host=host,
        start=middle + matrix[:, :3, 3],
        axes=np.swapaxes(matrix[:, :3, :3], 1, 2),
        size=size,
        moe=figures[0],
        shear_modulus=figures[1],
        bending=figures[2],
        shear=figures[3],
        across=figures[4],
        density=figures[5],
    )


def _may_bear(part: Part, grade: str, own: OwnRows) -> Allowed:
    try:
        return allowed(part.material, grade, own)
    except BadInput as missing:
        raise BadInput(
            missing.field, f"The {part.name} cannot be judged: {missing.sentence}"
        ) from None


def _figures(part: Part, may: Allowed) -> tuple[float, ...]:
    """Stiffness in bending and shear; bending, shear and bearing for ten years, MPa; kg/m3."""
    is_along = part.grain == "length"
    moe = may.moe_mpa if is_along else may.moe_across_mpa
    bending = may.bending_mpa if is_along else may.bending_across_mpa
    rest = may.shear_mpa, may.across_mpa, may.density_kg_m3
    return moe, may.shear_modulus_mpa, bending, *rest
