"""What stands beside the drawing of a mark: sizes, quantity, material, and what it is joined to."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from model.bed import Bed
from model.drawings.part_sheet.grain_arrow import NONE, grain_of
from model.drawings.part_sheet.on_bed import on_bed_words
from model.parts.marks import Mark
from model.parts.pieces import Ints
from model.shop.cut_list import cut_piece
from model.shop.part_sizes import shown_sizes

Fact = tuple[str, str]


def facts(bed: Bed, mark: Mark) -> tuple[Fact, ...]:
    """Labels and words, in the order in which a maker asks; sizes in the shown unit."""
    return tuple(_facts(bed, mark))


def _facts(bed: Bed, mark: Mark) -> Iterator[Fact]:
    piece = cut_piece(bed, mark)
    shown = shown_sizes(bed, mark, bed.design.value("shown_unit"))
    finished, rough = " × ".join(shown[:3]), " × ".join(shown[3:])
    yield "Quantity", str(mark.quantity)
    yield "Finished size", finished
    if piece.source is not None:
        yield ("Blank" if piece.is_glued else "Rough size"), rough
    yield "Material", mark.material_name
    yield "Grain", _grain(grain_of(mark))
    if mark.layers > 1:
        yield "Layers", str(mark.layers)
    if piece.is_glued and piece.strips > 1:
        yield "Glued up of", f"{piece.strips} strips ({piece.name})"
    yield "Assembly", assembly_of(bed, mark)
    lies = on_bed_words(mark, bed)
    if lies:
        yield "On the bed", lies
    joined = partners(bed, mark)
    if joined:
        yield "Goes with", ", ".join(joined)
    if mark.handed:
        yield "Handed", mark.handed


def assembly_of(bed: Bed, mark: Mark) -> str:
    """The assembly that a mark belongs to; `both sides` where its pieces lie at both."""
    own = {bed.pieces.form(piece).assembly for piece in mark.pieces}
    return "both sides" if own == {"left side", "right side"} else mark.assembly


def _grain(grain: str) -> str:
    return {"length": "along the length", "width": "across: along the width", NONE: NONE}.get(
        grain, "either way"
    )


def partners(bed: Bed, mark: Mark) -> tuple[str, ...]:
    """The marks that its pieces are held by or hold, or that one bought thing joins them to, as a
    bracket does; in the order of the parts list.
    """
    owner = np.full(len(bed.pieces), -1)
    for k, each in enumerate(bed.marks):
        owner[list(each.pieces)] = k
    own = bed.marks.index(mark)
    one, other = owner[bed.proof.holding.one], owner[bed.proof.holding.other]
    beside = {
        *other[one == own].tolist(),
        *one[other == own].tolist(),
        *_by_fittings(bed, owner, own),
    }
    beside -= {own, -1}
    return tuple(bed.marks[k].mark for k in sorted(beside))


def _by_fittings(bed: Bed, owner: Ints, own: int) -> set[int]:
    """What bought things join to a mark: they hold, or are held by, both."""
    held = bed.proof.holding
    pairs = np.concatenate(
        [np.stack([held.one, held.other]), np.stack([held.other, held.one])], axis=1
    )
    fitting, wood = pairs[:, (owner[pairs[0]] < 0) & (owner[pairs[1]] >= 0)]
    mine = np.isin(fitting, fitting[owner[wood] == own])
    return set(owner[wood[mine]].tolist())
