"""A wood or sheet laid flat as a plate: its stiffness along and across its grain, and in twist."""

from __future__ import annotations

from functools import lru_cache

from model.materials.allowable import USUAL_GRADE, allowed
from model.materials.own import NONE, OwnRows
from model.materials.sheet import sheets
from model.materials.sheet_family import sheet_family
from model.mechanics.plate import Plate, sheet_plate
from model.units import Mm, Mpa

# Poisson's ratio, the geometric mean of both ways: it moves the sag of a bottom by 1 % at most.
EVEN_RATIO = 0.3  # fibreboard; Source: assumed, as most even materials
GRAIN_RATIO = 0.07  # plywood and boards; Source: Timoshenko, table of plywoods, from memory


@lru_cache(maxsize=256)
def panel_plate(key: str, thickness: Mm, grade: str = USUAL_GRADE, own: OwnRows = NONE) -> Plate:
    """The plate of a material of that thickness; its x runs along the grain of the face.

    Refused with BadInput: an unknown key, a missing figure, a thickness of nothing.
    """
    figures = allowed(key, grade, own)
    ratio = EVEN_RATIO if figures.product == "fibreboard" else GRAIN_RATIO
    twist = _twist_modulus(key, own) or figures.moe_mpa / (2 * (1 + ratio))
    if figures.product == "solid":
        twist = figures.shear_modulus_mpa
    return sheet_plate(figures.moe_mpa, figures.moe_across_mpa, thickness, twist, ratio)


def _twist_modulus(key: str, own: OwnRows) -> Mpa | None:
    flat = sheets(own.sheets)
    return sheet_family(flat[key].family).twist_modulus_mpa if key in flat else None
