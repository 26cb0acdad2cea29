"""The way each piece of a stage comes to its place, found by taking them out one by one."""

from __future__ import annotations

from collections.abc import Sequence

from model.building.joined import Joined
from model.building.joints import FLOATING, FRAMED
from model.building.record import STILL, Coming
from model.building.ways import ALL, Way, Ways
from model.part import Point

_Taken = tuple[int, Way | None]


class Comings:
    """Comings of the pieces of a stage."""

    def __init__(self, joined: Joined, ways: Ways) -> None:
        self._joined, self._ways = joined, ways
        low, high = joined.pieces.bounds
        self._middle: list[list[float]] = ((low + high) / 2).tolist()
        self._size: list[list[float]] = (high - low).tolist()

    def of(self, new: Sequence[int], there: Sequence[int]) -> tuple[Coming, ...]:
        """In the order in which they come: what is taken out last comes first.

        A panel is taken out as soon as it is free, then what lies farthest from the base: from the
        pieces that are there, or else from the piece that bears the others.
        """
        wood = [piece for piece in new if self._joined.is_wood(piece)]
        bought = [piece for piece in new if not self._joined.is_wood(piece)]
        base = list(there) or ([self._base(wood)] if wood else [])
        left = [piece for piece in wood if piece not in base]
        taken: list[_Taken] = []
        while left:
            last = self._name(taken[-1][0]) if taken else ""
            piece, way = self._next(left, base, last)
            taken.append((piece, way))
            left.remove(piece)
        order = [*((piece, None) for piece in base if piece in wood), *reversed(taken)]
        found = self._turns(order)
        return (*found, *self._bought(bought, found, there))

    def together(self, new: Sequence[int], way: Way | None) -> tuple[Coming, ...]:
        """The comings of what is brought in one go along a way out."""
        along = way.into if way is not None else STILL
        return tuple(Coming(piece, along, 2 if way is not None else 0) for piece in new)

    # ------------------------------------------------------------ what is taken out next

    def _base(self, wood: Sequence[int]) -> int:
        """The piece that the others are joined to: one that is held by none of them, and holds
        most; of several the shortest, and the lowest.
        """
        own = set(wood)
        held = {piece: self._held_by(piece, own) for piece in wood}
        holds = {piece: sum(piece in by for by in held.values()) for piece in wood}
        last = [p for p in wood if holds[p] and all(p in held[by] for by in held[p])] or wood

        def rank(piece: int) -> tuple[int, float, float, int]:
            size, low = max(self._size[piece]), self._middle[piece][2]
            return (-holds[piece], round(size, 3), round(low, 3), piece)

        return min(last, key=rank)

    def _held_by(self, piece: int, own: set[int]) -> set[int]:
        """The members or faces among `own` that hold a piece."""
        return {
            link.other
            for link in self._joined.of(piece)
            if link.one == piece and link.other in own and link.joint not in FLOATING
        }

    def _name(self, piece: int) -> str:
        return self._joined.part(piece).name

    def _next(self, left: Sequence[int], base: Sequence[int], last: str) -> _Taken:
        """The next piece to take out, and the way; None where it touches nothing or is stuck.

        Another post follows a post (`last`), so that both ends of a frame are closed alike.
        """
        centre = [sum(self._middle[each][k] for each in base) / len(base) for k in range(3)]

        def rank(piece: int) -> tuple[bool, bool, float, int]:
            far = sum(abs(self._middle[piece][k] - centre[k]) for k in range(3))
            return (
                self._name(piece) != last, not self._floats(piece), -round(far, 3), -piece,
            )  # fmt: skip

        ranked = sorted(left, key=rank)
        for piece in ranked:
            others = [*base, *(each for each in left if each != piece)]
            way = self._way(piece, others, centre)
            if way is not None:
                return piece, way
        members = [piece for piece in ranked if not self._floats(piece)]
        return (members or ranked)[0], None

    def _way(self, piece: int, others: Sequence[int], centre: Sequence[float]) -> Way | None:
        if self._floats(piece):
            return self._ways.first_free((piece,), others, self._in_plane(piece))
        leaving = self._ways.leaving((piece,), others)

        def toward(way: Way) -> float:
            return -way.sign * (self._middle[piece][way.axis] - centre[way.axis])

        ranked = sorted(leaving, key=lambda way: (round(toward(way), 3), ALL.index(way)))
        return self._ways.first_free((piece,), others, ranked)

    def _in_plane(self, panel: int) -> list[Way]:
        """Ways along a panel's own plane: a groove lets it out no other way."""
        size = self._size[panel]
        return [way for way in ALL if way.axis != size.index(min(size))]

    def _floats(self, piece: int) -> bool:
        links = [link for link in self._joined.of(piece) if link.one == piece]
        return any(link.joint in FLOATING for link in links) and not any(
            link.joint in FRAMED for link in links
        )

    # ------------------------------------------------------------ turns

    def _turns(self, order: Sequence[_Taken]) -> list[Coming]:
        """Comings on even turns: each after what bears it, or it would bar, on the same way."""
        found: list[tuple[int, Way | None, int]] = []
        for piece, way in order:
            behind = [
                turn for other, its, turn in found
                if its == way and self._comes_first(other, piece, way)
            ]  # fmt: skip
            found.append((piece, way, 0 if way is None else 2 + max(behind, default=0)))
        return [Coming(p, way.into if way else STILL, turn) for p, way, turn in found]

    def _comes_first(self, one: int, other: int, way: Way | None) -> bool:
        """Whether, of two that come the same way, one must be in its place before the other."""
        if way is None:
            return False
        linked = other in self._joined.partners(one)
        return linked or not self._ways.is_free((one,), (other,), way)

    def _bought(
        self, bought: Sequence[int], wood: Sequence[Coming], there: Sequence[int]
    ) -> list[Coming]:
        """Dowels come between the pieces that they join, fittings when the wood is in its place."""
        known = {each.piece: each for each in wood}
        last = max((each.turn for each in wood), default=0) + 2 * bool(known or there)
        found = []
        for piece in bought:
            met = [known[each] for each in self._joined.partners(piece) if each in known]
            met.sort(key=lambda each: (each.turn, each.piece))
            if self._joined.is_dowel(piece) and met and met[-1].along != STILL:
                found.append(Coming(piece, met[-1].along, met[-1].turn - 1))
            else:
                found.append(Coming(piece, self._fitting(piece), last))
        return found

    def _fitting(self, piece: int) -> Point:
        """A bolt goes along its length, anything else square to the face that it is fixed to."""
        near = sorted(self._joined.partners(piece), key=lambda p: (not self._joined.is_wood(p), p))
        if not near:
            return STILL
        axis, other = self._facing(piece, near[0]), near[0]
        is_high = self._middle[piece][axis] >= self._middle[other][axis]
        if self._joined.part(piece).is_round:
            axis, is_high = self._head_of(piece, near)
        return Way(axis, 1 if is_high else -1).into

    def _head_of(self, piece: int, near: Sequence[int]) -> tuple[int, bool]:
        """The axis of a bolt, and whether its head lies at the high end of it: away from what it
        reaches into, and on the far side of what it only passes through, which is thinner than it
        is long.
        """
        along = [abs(x) for x in self._joined.pieces.matrices[piece][:3, 0].tolist()]
        axis = along.index(max(along))
        own = self._middle[piece][axis]
        wood = [p for p in near if self._joined.is_wood(p)] or list(near)
        other = max(wood, key=lambda p: abs(self._middle[p][axis] - own))
        is_beyond = own >= self._middle[other][axis]
        passes_through = self._size[other][axis] < self._size[piece][axis]
        return axis, is_beyond != passes_through

    def _facing(self, one: int, other: int) -> int:
        """The bed axis along which two pieces lie farthest apart for their sizes."""
        apart = [
            abs(self._middle[one][k] - self._middle[other][k])
            - (self._size[one][k] + self._size[other][k]) / 2
            for k in range(3)
        ]
        return apart.index(max(apart))
