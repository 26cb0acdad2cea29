"""A wood or sheet laid flat as a plate: its stiffness along and across its grain, and in twist."""

from __future__ import annotations

from model.materials.allowable import USUAL_GRADE
from model.materials.material import Material
from model.materials.row_allowable import allowed_of
from model.materials.sheet_family import sheet_family
from model.mechanics.plate import Plate, sheet_plate
from model.units import Mm

# Poisson's ratio, the geometric mean of both ways: it moves the sag of a bottom by 1 % at most.
EVEN_RATIO = 0.3  # fibreboard; Source: assumed, as most even materials
GRAIN_RATIO = 0.07  # plywood and boards; Source: Timoshenko, table of plywoods, from memory


def panel_plate(row: Material, thickness: Mm, grade: str = USUAL_GRADE) -> Plate:
    """The plate of a material of that thickness; its x runs along the grain of the face.

    Refused with BadInput: a missing figure, a thickness of nothing.
    """
    figures = allowed_of(row, grade)
    ratio = EVEN_RATIO if figures.product == "fibreboard" else GRAIN_RATIO
    twist = sheet_family(row.flat.family).twist_modulus_mpa if row.flat else None
    if figures.product == "solid":
        twist = figures.shear_modulus_mpa
    even = figures.moe_mpa / (2 * (1 + ratio))
    return sheet_plate(figures.moe_mpa, figures.moe_across_mpa, thickness, twist or even, ratio)
