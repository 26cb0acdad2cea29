"""What is put together on the bench: units that never come apart, and what is fixed to each."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property

from model.building.joined import Joined, Link, together
from model.building.joints import BEARING, FIXING, FIXING_OF_FRONTS

STANDS = "stands"


@dataclass(frozen=True, kw_only=True)
class Unit:
    """Pieces that stay together when every knock-down joint is undone: `pieces` rising, `main` the
    heaviest. `on` is the number of the unit that it is fixed to on the bench, or None.
    """

    number: int
    pieces: tuple[int, ...]
    main: int
    on: int | None = None


class Units:
    """All units of a bed, and for each the chain of units that it is fixed to."""

    def __init__(self, joined: Joined) -> None:
        self.joined = joined
        firm = [(link.one, link.other) for link in joined.links if self._is_firm(link)]
        label = together(len(joined.pieces), firm)
        found: dict[int, list[int]] = {}
        for piece, root in enumerate(label):
            found.setdefault(root, []).append(piece)
        self._at = {piece: k for k, own in enumerate(found.values()) for piece in own}
        self.all = tuple(
            Unit(
                number=k,
                pieces=tuple(own),
                main=joined.heaviest(own),
                on=self._host(k, own),
            )
            for k, own in enumerate(found.values())
        )

    def of(self, piece: int) -> Unit:
        """The unit of a piece."""
        return self.all[self._at[piece]]

    def root(self, unit: Unit) -> Unit:
        """The unit that the chain of hosts ends at."""
        seen = {unit.number}
        while unit.on is not None and unit.on not in seen:
            unit = self.all[unit.on]
            seen.add(unit.number)
        return unit

    @cached_property
    def roots(self) -> tuple[Unit, ...]:
        """The units that are fixed to no other, in the order of their first pieces."""
        return tuple(unit for unit in self.all if self.root(unit) is unit)

    @cached_property
    def fixed(self) -> Mapping[int, Sequence[Unit]]:
        """By the number of a root the units that are fixed to it, its own hosts first."""
        found: dict[int, list[tuple[int, Unit]]] = {unit.number: [] for unit in self.roots}
        for unit in self.all:
            root = self.root(unit)
            if root is not unit:
                found[root.number].append((self._depth(unit), unit))
        return {
            number: tuple(unit for _, unit in sorted(own, key=lambda each: each[0]))
            for number, own in found.items()
        }

    def whole(self, root: Unit) -> tuple[int, ...]:
        """The pieces of a root and of all that is fixed to it."""
        own = [*root.pieces, *(p for unit in self.fixed[root.number] for p in unit.pieces)]
        return tuple(sorted(own))

    def _depth(self, unit: Unit) -> int:
        deep = 0
        while unit.on is not None and deep <= len(self.all):
            unit, deep = self.all[unit.on], deep + 1
        return deep

    def _is_firm(self, link: Link) -> bool:
        """Whether a link makes one unit of two pieces: never by what is bought, dowels apart."""
        joined = self.joined
        ends = (link.one, link.other)
        if link.hold.knock_down or joined.group(link.one) != joined.group(link.other):
            return False
        return all(joined.is_wood(each) or joined.is_dowel(each) for each in ends)

    def _host(self, number: int, own: Sequence[int]) -> int | None:
        """The one unit that these pieces are fixed to on the bench; None if there are several, or
        if they bear on others.
        """
        if any(self._bears(piece) for piece in own):
            return None
        hosts = {self._at[other] for piece in own for other in self._fixed_to(piece)}
        hosts.discard(number)
        return hosts.pop() if len(hosts) == 1 else None

    def _bears(self, piece: int) -> bool:
        return any(
            link.one == piece and link.hold.knock_down and link.joint in BEARING
            for link in self.joined.of(piece)
        )

    def _fixed_to(self, piece: int) -> list[int]:
        joined = self.joined
        is_front = not joined.group(piece)
        found = []
        for link in joined.of(piece):
            if link.one == piece and (
                link.joint in FIXING or (is_front and link.joint in FIXING_OF_FRONTS)
            ):
                found.append(link.other)
            elif link.other == piece and link.joint == STANDS and not joined.is_wood(piece):
                found.append(link.one)
        return found
