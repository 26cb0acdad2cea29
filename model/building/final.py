"""In what order the units of a bed are brought together where it stands.

The bed is taken apart again: of what can still leave its place, what a maker puts in last leaves
first. So nothing is closed before what goes in it: a bearer between two sides comes before the
second side, whatever the design.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import NamedTuple

from model.building.joined import Joined
from model.building.units import Unit, Units
from model.building.ways import DOWN, UP, Way, Ways
from model.units import Mm

# In the order in which a maker would bring them; common practice, no source.
_RANKS = (
    "headboard", "first side", "footboard", "second side", "divider", "bearer", "under the bed",
    "beam", "drawer", "stop", "front", "pull", "batten", "deck", "mattress",
)  # fmt: skip
_RANK = {name: k for k, name in enumerate(_RANKS)}
_HELD_BY_RULE = {
    "dividers": "divider", "bearers": "bearer", "beam_pieces": "beam", "stop_blocks": "stop",
    "batten_pieces": "batten", "pulls": "pull",
}  # fmt: skip
_OF_ASSEMBLY = {
    "headboard": "headboard", "footboard": "footboard", "under the bed": "under the bed",
    "deck": "deck", "drawers": "drawer", "fronts": "front", "mattress": "mattress",
}  # fmt: skip


REACH: Mm = 400.0  # past this a thing that is put in can be turned aside; common practice


class Brought(NamedTuple):
    """A unit, with all that is fixed to it, and the way that it leaves its place (None where it
    must be turned in). `role` is its place in the order of `_RANKS`.
    """

    unit: Unit
    role: str
    way: Way | None


class Final:
    """The order of the final assembly."""

    def __init__(self, joined: Joined, units: Units, ways: Ways) -> None:
        self._joined, self._units, self._ways = joined, units, ways

    def order(self) -> tuple[Brought, ...]:
        """All roots of wood, and the mattress, in the order in which they come."""
        roots = [unit for unit in self._units.roots if self._is_brought(unit)]
        roles = {unit.number: self.role(unit) for unit in roots}
        whole = {unit.number: self._units.whole(unit) for unit in roots}
        left = sorted(roots, key=lambda unit: (_RANK[roles[unit.number]], unit.pieces[0]))
        taken: list[Brought] = []
        while left:
            others = {k: [p for u in left if u.number != k for p in whole[u.number]] for k in roles}
            unit, way = self._next(left, roles, whole, others)
            taken.append(Brought(unit, roles[unit.number], way))
            left.remove(unit)
        return tuple(reversed(taken))

    def role(self, unit: Unit) -> str:
        """What a unit is in the final assembly."""
        part = self._joined.part(unit.main)
        rule = self._joined.rule(unit.main)
        if part.assembly in ("left side", "right side"):
            return "first side" if part.assembly == "left side" else "second side"
        return _HELD_BY_RULE.get(rule, _OF_ASSEMBLY.get(part.assembly, "under the bed"))

    def _is_brought(self, unit: Unit) -> bool:
        return self._joined.is_wood(unit.main) or self._joined.is_mattress(unit.main)

    def _next(
        self,
        left: Sequence[Unit],
        roles: dict[int, str],
        whole: dict[int, tuple[int, ...]],
        others: dict[int, list[int]],
    ) -> tuple[Unit, Way | None]:
        """The last unit in the order that can leave, and its way; the very last where none can."""
        for unit in reversed(left):
            own = whole[unit.number]
            ways = self._usual(unit, roles[unit.number])
            way = self._ways.first_free(own, others[unit.number], ways, REACH)
            if way is not None:
                return unit, way
        return left[-1], None

    def _usual(self, unit: Unit, role: str) -> Iterable[Way]:
        """The ways that hands would take it: nothing is slipped in under a headboard."""
        low, high = self._joined.pieces.bounds
        middle = (low[unit.main] + high[unit.main]) / 2
        if role in ("first side", "second side"):
            return (Way(0, 1 if middle[0] > 0 else -1), UP)
        if role in ("headboard", "footboard"):
            return (Way(1, 1 if role == "headboard" else -1), UP)
        group = self._joined.group(unit.main)
        if role in ("drawer", "front", "stop") and group:
            return (self._out(group, middle.tolist()), DOWN) if role == "stop" else (
                self._out(group, middle.tolist()),
            )  # fmt: skip
        size = (high[unit.main] - low[unit.main]).tolist()
        axis = size.index(max(size))
        if role in ("divider", "bearer"):
            return (UP, Way(axis, 1), Way(axis, -1))
        thin = size.index(min(size))
        return (UP, Way(thin, 1), Way(thin, -1), Way(axis, 1), Way(axis, -1), DOWN)

    def _out(self, group: str, middle: Sequence[float]) -> Way:
        row = group.partition("-")[0]
        return {"left": Way(0, -1), "right": Way(0, 1)}.get(row, Way(1, -1))
