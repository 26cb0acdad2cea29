"""What is done last at the bench: edges eased, faces sanded, before anything is glued together."""

from __future__ import annotations

from collections.abc import Mapping

from model.bed import Bed
from model.parts.marks import Mark
from model.shop.order import say
from model.shop.order.jobs import Alike, alike, figure
from model.shop.order.keys import key_of, line_of
from model.shop.order.record import Batch, Distance


def finishing(bed: Bed, who: Mapping[str, str]) -> tuple[Batch, ...]:
    """Round-overs, one radius after the other, then sanding, solid wood and sheets apart."""
    unit = bed.design.value("shown_unit")
    radii: dict[Alike, tuple[Distance, list[Mark]]] = {}
    for mark in bed.marks:
        if mark.part.eased:
            radius = figure("radius", mark.part.eased)
            radii.setdefault(alike((radius,)), (radius, []))[1].append(mark)
    eased = [_eased(radius, own, who, unit) for radius, own in radii.values()]
    return (*eased, *_sanded(bed, who))


def _eased(radius: Distance, own: list[Mark], who: Mapping[str, str], unit: str) -> Batch:
    key = key_of("ease", (radius,))
    return Batch(
        key=key,
        stage="finish",
        machine="trim router with a round-over bit, or block plane",
        operation="Ease edges",
        way="ease",
        lines=tuple(line_of(key, mark, who, "all long edges") for mark in own),
        distances=(radius,),
        setting=f"Radius {say.size(radius.size, unit)}, all four long edges",
        before=("Stop short of joints: an eased edge leaves a gap at a shoulder.",),
    )


def _sanded(bed: Bed, who: Mapping[str, str]) -> tuple[Batch, ...]:
    kinds = {
        "solid": ("Sand solid wood", ("Keep off joint faces: a sanded tenon is loose.",)),
        "sheet": ("Sand sheets", ("Light passes: a face veneer is soon sanded through.",)),
    }
    made = []
    for kind, (title, before) in kinds.items():
        own = [m for m in bed.marks if m.made_of is not None and m.made_of.kind == kind]
        if own:
            made.append(
                Batch(
                    key=f"sand {kind}",
                    stage="finish",
                    machine="sander, or block and paper, with dust collection",
                    operation=title,
                    way="sand",
                    lines=tuple(line_of(f"sand {kind}", mark, who) for mark in own),
                    setting=f"Up to {bed['sanded_to']} grit, along the grain, no grit left out",
                    before=before,
                )
            )
    return tuple(made)
