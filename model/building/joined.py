"""Which piece is joined to which, and by what joint: the holds of the proof, read by hands."""

from __future__ import annotations

from collections.abc import Iterable
from functools import cached_property
from typing import NamedTuple

from model.bed import Bed
from model.part import Hold, Part
from model.parts.marks import piece_names
from model.solids.carried import MATTRESS

DOWEL = "DOWEL-"


class Link(NamedTuple):
    """Piece `one` is held by piece `other`, as `hold` says."""

    one: int
    other: int
    hold: Hold

    @property
    def joint(self) -> str:
        """The name of the joint."""
        return self.hold.joint


class Joined:
    """The pieces of a bed and their links."""

    def __init__(self, bed: Bed) -> None:
        self.bed = bed
        self.pieces = bed.pieces
        held = bed.proof.holding
        rows = zip(held.one.tolist(), held.other.tolist(), held.hold.tolist(), strict=True)
        self.links = tuple(Link(one, other, held.holds[k]) for one, other, k in rows)
        self._of: dict[int, list[Link]] = {}
        for link in self.links:
            self._of.setdefault(link.one, []).append(link)
            self._of.setdefault(link.other, []).append(link)

    def of(self, piece: int) -> list[Link]:
        """Every link that a piece has, either way."""
        return self._of.get(piece, [])

    def partners(self, piece: int) -> set[int]:
        """The pieces that a piece is linked to."""
        return {each.other if each.one == piece else each.one for each in self.of(piece)}

    def part(self, piece: int) -> Part:
        """The part of a piece, in the axes in which it is cut."""
        return self.pieces.form(piece)

    def rule(self, piece: int) -> str:
        """The rule that made a piece, without its side: `stiles`."""
        return self.pieces.made_by(piece)[0].rpartition(".")[2]

    def group(self, piece: int) -> str:
        """The drawer that a piece moves with, or ""."""
        return self._groups[piece]

    @cached_property
    def _groups(self) -> list[str]:
        return [self.pieces.groups[k] for k in self.pieces.group.tolist()]

    @cached_property
    def hardware(self) -> list[str]:
        """For each piece its code among the bought things, or "" for wood."""
        return [self.pieces.parts[k].hardware for k in self.pieces.part.tolist()]

    def is_wood(self, piece: int) -> bool:
        """Whether a piece is cut and not bought."""
        return not self.hardware[piece]

    def is_dowel(self, piece: int) -> bool:
        """Whether a piece is a dowel: bought, and glued in like wood."""
        return self.hardware[piece].startswith(DOWEL)

    def is_mattress(self, piece: int) -> bool:
        """Whether a piece is the mattress."""
        return self.hardware[piece] == MATTRESS

    @cached_property
    def mark_of(self) -> dict[int, str]:
        """The mark of each piece of wood."""
        return {piece: mark.mark for mark in self.bed.marks for piece in mark.pieces}

    @cached_property
    def names(self) -> tuple[str, ...]:
        """The name of every piece: `S2-1`."""
        return piece_names(self.bed.parts, self.pieces)

    @cached_property
    def weights(self) -> list[float]:
        """What each piece weighs, kg."""
        weighed: list[float] = self.bed.weights.tolist()
        return weighed

    def heaviest(self, of: Iterable[int]) -> int:
        """The piece of wood that weighs most; the first of several."""
        return max(of, key=lambda each: (self.is_wood(each), self.weights[each], -each))


def together(count: int, pairs: Iterable[tuple[int, int]]) -> list[int]:
    """For each of `count` things the lowest that it is linked to, by whatever chain."""
    root = list(range(count))

    def find(each: int) -> int:
        while root[each] != each:
            root[each] = root[root[each]]
            each = root[each]
        return each

    for one, other in pairs:
        a, b = find(one), find(other)
        root[max(a, b)] = min(a, b)
    return [find(each) for each in range(count)]
