"""What a material may bear, asked with its own row: the maker's own woods and sheets included."""

from __future__ import annotations

from model.materials.allowable import USUAL_GRADE, allowed
from model.materials.derivation import Allowed
from model.materials.material import Material, materials
from model.materials.own import OwnRows


def allowed_of(row: Material, grade: str = USUAL_GRADE) -> Allowed:
    """What the material of that row may bear for ten years; see `allowed`.

    A row of the trade's tables is looked up by its key, which is quick. Refused: as by `allowed`.
    """
    if materials().get(row.key) is row:
        return allowed(row.key, grade)
    woods = (row.wood,) if row.wood else ()
    return allowed(row.key, grade, OwnRows(species=woods, sheets=(row.flat,) if row.flat else ()))
