"""What the maker is told of a task: glue-ups, resawing, and what stays together."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from model.bed import Design
from model.shop.cut_list import CutPiece
from model.shop.together import Together, lone_notes


def task_notes(
    design: Design, own: Sequence[CutPiece], strips: Iterable[Together]
) -> tuple[str, ...]:
    """Sentences about the pieces of a task; alike ones are named together."""
    names = {piece.name for piece in own}
    here = [strip for strip in strips if strip.members[0].piece.name in names]
    shortest, unit = design.value("shortest_milled"), design.value("shown_unit")
    return (*_of_pieces(own), *_of_strips(here), *lone_notes(own, here, shortest, unit))


def _of_pieces(own: Sequence[CutPiece]) -> tuple[str, ...]:
    said: dict[str, list[str]] = {}
    for piece in own:
        for note in piece.notes:
            said.setdefault(note, []).append(piece.mark)
    return tuple(f"{', '.join(marks)}: {note}" for note, marks in said.items())


def _of_strips(strips: Sequence[Together]) -> tuple[str, ...]:
    milled = [strip.name for strip in strips if strip.stays_whole]
    fronts = [strip.name for strip in strips if not strip.stays_whole]
    found = []
    if milled:
        found.append(f"Sawn and milled as one piece, cut apart after: {'; '.join(milled)}.")
    if fronts:
        found.append(f"Cut end to end so that the grain runs on: {'; '.join(fronts)}.")
    return tuple(found)
