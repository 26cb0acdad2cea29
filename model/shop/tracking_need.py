"""What a bed takes, piece by piece, and what a piece that is cut measures beside it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import NamedTuple

from model.bed import Bed
from model.shop.cut_list import CutPiece
from model.stock.progress import CutPart
from model.stock.rough import Size
from model.units import Mm

Sides = tuple[Mm, Mm, Mm]


class Need(NamedTuple):
    """One piece that the bed takes: `mark` and `piece` as it is chalked, `of` its mark in the
    parts list. A glued part is needed twice over: as layers or strips, and as a `whole`.
    """

    mark: str
    piece: int
    name: str
    material: str
    size: Sides
    rough: Sides
    grain: str
    of: str  # the mark in the parts list
    whole: bool


def needs(bed: Bed, pieces: Iterable[CutPiece]) -> Iterator[Need]:
    """Every piece that the bed takes; `pieces` is its cut list. A glued part comes after what it is
    glued from.
    """
    marks = {mark.mark: mark for mark in bed.marks}
    for piece in pieces:
        mark = marks[piece.mark]
        size, rough = _sides(piece.finished), _sides(piece.rough)
        for number in range(1, piece.quantity + 1):
            yield Need(
                piece.name, number, piece.part, piece.material.key, size, rough, piece.grain,
                mark.mark, False,
            )  # fmt: skip
        if piece.is_glued:
            whole = (float(mark.length), float(mark.width), float(mark.thickness))
            for number in range(1, mark.quantity + 1):
                yield Need(
                    mark.mark, number, piece.part, piece.material.key, whole, whole, piece.grain,
                    mark.mark, True,
                )  # fmt: skip


def _sides(size: Size) -> Sides:
    return (float(size.length), float(size.width), float(size.thickness))


def finished(part: CutPart) -> Sides:
    """What a piece measures once it is milled."""
    return (part.length, part.width, part.thickness)


def present(part: CutPart) -> Sides:
    """What a piece measures now."""
    return (
        part.rough_length or part.length,
        part.rough_width or part.width,
        part.rough_thickness or part.thickness,
    )


def wanted(part: CutPart, need: Need) -> Sides:
    """What it must measure at this stage: with its allowance where it is still rough."""
    return (
        need.rough[0] if part.rough_length else need.size[0],
        need.rough[1] if part.rough_width else need.size[1],
        need.rough[2] if part.rough_thickness else need.size[2],
    )
