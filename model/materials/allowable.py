"""Ask here what a material may bear: `allowed("yellow_poplar")`."""

from __future__ import annotations

import math
from functools import lru_cache

from model.errors import BadInput
from model.materials.derivation import FIGURES, Allowed, Step
from model.materials.own import NONE, OwnRows
from model.materials.sheet import sheets
from model.materials.sheet_allowable import of_sheet
from model.materials.species import species
from model.materials.table import row_of
from model.materials.wood_allowable import of_wood

__all__ = ["Allowed", "Step", "allowed"]

USUAL_GRADE = "clear"


@lru_cache(maxsize=256)
def allowed(key: str, grade: str = USUAL_GRADE, own: OwnRows = NONE) -> Allowed:
    """What the wood or sheet with that key may bear for ten years; `grade` is that of its boards
    and means nothing to a sheet.

    Refused with BadInput: an unknown key, and a figure that is missing or zero.
    """
    woods, flat = species(own.species), sheets(own.sheets)
    if key in flat:
        return _sound(of_sheet(flat[key]))
    return _sound(of_wood(row_of(woods, key, "material"), grade))


def _sound(found: Allowed) -> Allowed:
    """A figure of nothing would turn up later as an endless sag: name it here."""
    for name in (*FIGURES, "specific_gravity", "density_kg_m3"):
        value = getattr(found, name)
        if not (math.isfinite(value) and value > 0):
            called = name.removesuffix("_mpa").removesuffix("_kg_m3").replace("_", " ")
            raise BadInput(
                found.key,
                f"{found.name} has no {called} above zero; give it the missing figure in your own "
                "rows, or choose another material.",
            )
    return found
