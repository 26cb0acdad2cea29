"""Whose wood lies where: what is cut, and the pieces of the bed that it becomes."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from model.drawings.cut_told import size_words

if TYPE_CHECKING:
    from model.bed import Bed
    from model.shop.cut_list import CutPiece


@dataclass(frozen=True, kw_only=True)
class CutNames:
    """The lines of a bed's cut list by their name (`B1`, or `H1/1` of a layer), and the bed's
    pieces of each mark.
    """

    pieces: Mapping[str, CutPiece] = field(default_factory=dict)
    in_bed: Mapping[str, tuple[int, ...]] = field(default_factory=dict)

    @property
    def parts(self) -> Mapping[str, str]:
        """What each is called: `box side`."""
        return {name: piece.part for name, piece in self.pieces.items()}

    def bed_piece(self, name: str) -> int:
        """The piece of the bed that `B1-3` becomes, or a part of it; -1 if there is none."""
        mark, _, number = name.rpartition("-")
        piece = self.pieces.get(mark)
        if piece is None or not number.isdigit():
            return -1
        owners, place = self.in_bed.get(piece.mark, ()), (int(number) - 1) // piece.for_each
        return owners[place] if 0 <= place < len(owners) else -1

    def of_bed_piece(self, which: int) -> tuple[str, ...]:
        """What is cut for a piece of the bed: itself, or all its layers and strips."""
        return tuple(
            f"{name}-{number}"
            for name, piece in self.pieces.items()
            if which in self.in_bed.get(piece.mark, ())
            for number in _numbers(piece, self.in_bed[piece.mark].index(which))
        )

    def told(self, name: str, unit: str) -> str:
        """Name, part and sizes, as a note on the piece would say them."""
        piece = self.pieces.get(name.rpartition("-")[0])
        if piece is None:
            return name
        rough, done = piece.rough, piece.finished
        is_rough = piece.source is not None
        cut = f"sawn {size_words(rough.length, rough.width, unit, is_rough)}"
        if piece.source is None:
            return f"{name}, {piece.part}\n{cut}"
        return f"{name}, {piece.part}\n{cut}\nmilled {size_words(done.length, done.width, unit)}"


def _numbers(piece: CutPiece, place: int) -> range:
    return range(place * piece.for_each + 1, (place + 1) * piece.for_each + 1)


def cut_names(bed: Bed) -> CutNames:
    """The names of all that is cut for a bed."""
    from model.shop.cut_list import cut_list

    return CutNames(
        pieces={piece.name: piece for piece in cut_list(bed)},
        in_bed={mark.mark: mark.pieces for mark in bed.marks},
    )
