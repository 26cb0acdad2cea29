"""Which surfaces are sanded and finished, by what they are of, in m2."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from model.bed import Bed
from model.cost.faces import Met, shown
from model.cost.tables import SquareMetres
from model.materials import Material
from model.part import Part

Kind = Literal["solid", "plywood", "fibreboard"]

_MM2_PER_M2 = 1e6
_OUTSIDE = ("headboard", "footboard", "left side", "right side", "fronts")
_INSIDE = ("cleat", "front block")  # behind rails and fronts, though of their assembly
_FIBRES = ("mdf", "hardboard", "particleboard")


@dataclass(frozen=True, kw_only=True)
class Surfaces:
    """Areas to be sanded and finished, m2: of solid wood, of plywood, of fibreboard."""

    solid: SquareMetres = 0.0
    plywood: SquareMetres = 0.0
    fibreboard: SquareMetres = 0.0

    @property
    def sheets(self) -> SquareMetres:
        """All that is no solid wood."""
        return self.plywood + self.fibreboard

    @property
    def all(self) -> SquareMetres:
        """The whole of it."""
        return self.solid + self.sheets


def surfaces(bed: Bed, met: Met) -> Surfaces:
    """The areas that the maker wants finished: what no fixed piece covers of the pieces chosen."""
    return _shown_of(bed, met, bed["finished"])


def sanded(bed: Bed, met: Met) -> Surfaces:
    """The areas that are sanded: all wood, for slats and drawer boxes splinter too. As the work
    order has it, which sands every part.
    """
    return _shown_of(bed, met, "all wood")


def _shown_of(bed: Bed, met: Met, chosen: str) -> Surfaces:
    """What no fixed piece covers of the pieces that a word of the choice `finished` names."""
    found: dict[Kind, float] = {"solid": 0.0, "plywood": 0.0, "fibreboard": 0.0}
    area = shown(bed, met)
    for mark in bed.marks:
        for piece in mark.pieces:
            if is_finished(bed.pieces.form(piece), chosen):
                found[kind_of(mark.made_of)] += float(area[piece]) / _MM2_PER_M2
    return Surfaces(**found)


def is_finished(part: Part, chosen: str) -> bool:
    """Whether a part is among what the maker chose to finish: a word of the choice `finished`."""
    if part.hardware:
        return False
    if chosen == "all wood":
        return True
    is_box = part.assembly == "drawers"
    is_outside = part.assembly in _OUTSIDE and not part.name.startswith(_INSIDE)
    return is_outside or (is_box and chosen == "what shows and drawer boxes")


def kind_of(material: Material | None) -> Kind:
    """How a material takes sanding and paint."""
    if material is None or material.flat is None:
        return "solid"
    return "fibreboard" if material.flat.family in _FIBRES else "plywood"
