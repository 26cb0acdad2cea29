"""Which side of a frame each of its members shows to the inside of the bed, and where it stands."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from model.building.said import Shop
from model.part import Face
from model.shop.order import say

# The bed axis across a frame, and which way along it the inside of the bed, or a box, lies.
_INSIDE = {
    "headboard": (1, -1), "footboard": (1, 1), "left side": (0, 1), "right side": (0, -1),
}  # fmt: skip
_INSIDE_OF_ROW = {"left": (0, 1), "right": (0, -1), "foot": (1, 1)}
_BORED = {"pocket hole": "pocket holes", "nut hole": "holes for barrel nuts"}
_RECESS = "plate recess"


class Facing:
    """Tells how the members of a glue-up are turned."""

    def __init__(self, shop: Shop) -> None:
        self._shop = shop
        self._parts = {piece: mark.part for mark in shop.bed.marks for piece in mark.pieces}

    def told(self, new: Sequence[int]) -> Iterator[str]:
        """Sentences for the members that come in a glue-up, those of all copies."""
        yield from self._faces(new)
        yield from self._recesses(new)
        yield from self._left_and_right(new)

    # ------------------------------------------------------------ faces

    def _faces(self, new: Sequence[int]) -> Iterator[str]:
        own = [
            piece
            for piece in new
            if self._across(piece) and (self._parts[piece].cuts or self._parts[piece].holes)
        ]
        found: dict[str, list[int]] = {}
        for piece in own:
            found.setdefault(self._inside(piece), []).append(piece)
        words = self._shop.words
        told = [
            f"the {side} of {words.marks(pieces)}"
            for side, pieces in self._one_way(found).items()
            if pieces
        ]
        if told:
            yield f"{self._where(new[0])}: {say.listed(told)}.{self._bored(own)}"

    def _inside(self, piece: int) -> str:
        """The side of a piece that looks to the inside."""
        axis, sign = self._across(piece) or (0, 1)
        return self._shop.where.own_sides(piece)[axis][sign > 0]

    def _one_way(self, found: Mapping[str, Sequence[int]]) -> dict[str, list[int]]:
        """Without the marks of which some pieces are turned over, in this copy or another: these
        are alike either way, or the recess that is told of them says how they lie.
        """
        mark_of = self._shop.joined.mark_of
        sides: dict[str, set[str]] = {}
        for side, pieces in found.items():
            for piece in pieces:
                sides.setdefault(mark_of[piece], set()).add(side)
        return {
            side: [piece for piece in pieces if len(sides[mark_of[piece]]) == 1]
            for side, pieces in found.items()
        }

    def _where(self, piece: int) -> str:
        is_front = self._shop.joined.part(piece).assembly == "fronts"
        inside = "the box" if is_front else "the inside of the bed"
        return f"Turn to {inside}"

    def _bored(self, own: Sequence[int]) -> str:
        """Holes that are all on this side, or none of them."""
        seen: dict[str, set[bool]] = {}
        for piece in own:
            axis, _ = self._across(piece) or (0, 1)
            sides = self._shop.where.own_sides(piece)[axis]
            for hole in self._parts[piece].holes:
                if hole.kind in _BORED and str(hole.face) in sides:
                    seen.setdefault(hole.kind, set()).add(str(hole.face) == self._inside(piece))
        inside = [_BORED[kind] for kind, ways in seen.items() if ways == {True}]
        if not inside:
            return ""
        return f" All {say.listed(inside)} are on this side, where nobody sees them."

    def _across(self, piece: int) -> tuple[int, int] | None:
        """The way to the inside across the frame of a piece; None for a box."""
        part = self._shop.joined.part(piece)
        if part.assembly == "fronts":
            row = self._shop.joined.group(piece).partition("-")[0]
            return _INSIDE_OF_ROW.get(row)
        return _INSIDE.get(part.assembly)

    # ------------------------------------------------------------ edges, left and right

    def _recesses(self, new: Sequence[int]) -> Iterator[str]:
        """Edges with the recess of a bed plate look outward, to the posts."""
        shop = self._shop
        found: dict[Face, list[int]] = {}
        for piece in new:
            edges = {cut.face for cut in self._parts[piece].cuts if cut.kind == _RECESS}
            for edge in (Face.LOWER, Face.UPPER):
                if edge in edges and shop.words.name(piece) != "post":
                    found.setdefault(edge, []).append(piece)
        for edge, own in found.items():
            ends, look = ("edge", "looks") if len(own) == 1 else ("edges", "look")
            yield (
                f"The {str(edge).split()[0]} {ends} of {shop.words.marks(own)}, with the recess of "
                f"the bed plate, {look} outward, to the posts."
            )

    def _left_and_right(self, new: Sequence[int]) -> Iterator[str]:
        """Posts that are mirror images of each other."""
        shop = self._shop
        posts = [piece for piece in new if shop.words.name(piece) == "post"]
        marks = {shop.joined.mark_of[piece] for piece in posts}
        if len(marks) == 2 == len(posts):
            left, right = sorted(posts, key=lambda piece: shop.where.low(piece, 0))
            yield (
                f"{shop.words.marks([left])} stands at the left of the bed, "
                f"{shop.words.marks([right])} at the right, as seen from the foot."
            )
