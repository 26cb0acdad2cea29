"""In what order the pieces of one unit are put together, read off the joints that hold them.

Members of a frame are glued from the inside out: stiles to rails, then rails to posts. A panel in
grooves comes with the last of the members that hold it, unless it can slide in later; what is laid
on a face comes last.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

from model.building.joined import Joined, together
from model.building.joints import FACED, FLOATING, FRAMED
from model.building.units import Unit, Units
from model.building.ways import ALL, Ways

Kind = Literal["frame", "float", "face", "fix", "fit", "final"]


@dataclass(frozen=True, kw_only=True)
class Stage:
    """Pieces that are joined in one go. `kind`: "frame" a glue-up of members, "float" a panel that
    slides in, "face" what is laid on, "fix" a unit of wood that is screwed on, "fit" fittings,
    "final" what is done where the bed stands. `there` are joined before.
    """

    kind: Kind
    pieces: tuple[int, ...]
    there: tuple[int, ...] = ()


class Bench:
    """The stages of each unit."""

    def __init__(self, joined: Joined, units: Units, ways: Ways) -> None:
        self._joined, self._units, self._ways = joined, units, ways

    def own(self, unit: Unit) -> tuple[Stage, ...]:
        """How a unit of several pieces is put together; nothing for a single piece."""
        if len(unit.pieces) < 2:
            return ()
        frames = self._frames(unit)
        return tuple(self._with_rest(unit, frames))

    def fixed(self, root: Unit) -> tuple[Stage, ...]:
        """What is fixed to a unit: first ("fix") units of wood, before the finish, then
        ("fit") fittings, and fixed fronts, which are finished apart.

        A root of a single piece comes with the first of them.
        """
        units = self._units.fixed[root.number]
        early = [unit for unit in units if self._is_early(unit)]
        late = [unit for unit in units if not self._is_early(unit)]
        stages = [("fix", own) for own in self._by_rule(early)] + [
            ("fit", own) for own in self._of_fittings(late)
        ]
        base = root.pieces if len(root.pieces) == 1 else ()
        there: tuple[int, ...] = () if base else root.pieces
        found = []
        for kind, alike in stages:
            own = (*base, *self._in_order(alike))
            found.append(Stage(kind="fix" if kind == "fix" else "fit", pieces=own, there=there))
            base, there = (), (*there, *own)
        return tuple(found)

    # ------------------------------------------------------------ frames

    def _frames(self, unit: Unit) -> list[list[int]]:
        """The members of a unit, glue-up by glue-up."""
        depth = self._depths(unit)
        inner = [piece for piece in depth if depth[piece] > 0]
        place = {piece: k for k, piece in enumerate(inner)}
        pairs = [
            (place[link.one], place[link.other])
            for link in self._joined.links
            if link.joint in FRAMED and link.one in place and link.other in place
        ]
        groups: dict[int, list[int]] = {}
        for piece, root in zip(inner, together(len(inner), pairs), strict=True):
            groups.setdefault(root, []).append(piece)
        first = [own for own in groups.values() if len(own) > 1]
        early = {piece for own in first for piece in own}
        last = [piece for piece in depth if piece not in early]
        return [*first, *([last] if last else [])]

    def _depths(self, unit: Unit) -> dict[int, int]:
        """How far each member is from what holds it in the end: posts 0, rails 1, stiles 2."""
        own = set(unit.pieces)
        holders: dict[int, set[int]] = {}
        for link in self._joined.links:
            wood = self._joined.is_wood(link.one) and self._joined.is_wood(link.other)
            if link.joint in FRAMED and link.hold.glued and wood and link.one in own:
                holders.setdefault(link.one, set()).add(link.other)
                holders.setdefault(link.other, set())
        one_way = {
            piece: {by for by in held if piece not in holders[by]}
            for piece, held in holders.items()
        }
        depth: dict[int, int] = {}

        def deep(piece: int) -> int:
            if piece not in depth:
                depth[piece] = 1 + max((deep(by) for by in one_way[piece]), default=-1)
            return depth[piece]

        return {piece: deep(piece) for piece in sorted(one_way)}

    # ------------------------------------------------------------ panels, dowels, additions

    def _with_rest(self, unit: Unit, frames: list[list[int]]) -> Iterator[Stage]:
        at = {piece: k for k, own in enumerate(frames) for piece in own}
        extra: list[list[int]] = [[] for _ in range(len(frames) + 1)]
        for piece in unit.pieces:
            if piece not in at and (k := self._captured(piece, at)) is not None:
                is_dowel = self._joined.is_dowel(piece)
                extra[k if is_dowel else self._last_chance(piece, frames, k)].append(piece)
        there: list[int] = []
        for own, more in zip(frames, extra, strict=False):
            yield Stage(kind="frame", pieces=(*own, *more), there=tuple(there))
            there += (*own, *more)
        if extra[-1]:
            yield Stage(kind="float", pieces=tuple(extra[-1]), there=tuple(there))
            there += extra[-1]
        yield from self._faced(unit, there)

    def _captured(self, piece: int, at: dict[int, int]) -> int | None:
        """The glue-up of the last member that holds a panel or a dowel; None for the rest."""
        joint = FRAMED if self._joined.is_dowel(piece) else FLOATING
        holders = [
            link.other for link in self._joined.of(piece) if link.one == piece
            and link.joint in joint and link.other in at
        ]  # fmt: skip
        return max((at[holder] for holder in holders), default=None)

    def _last_chance(self, piece: int, frames: Sequence[Sequence[int]], first: int) -> int:
        """The glue-up that shuts a panel in: it comes in with it; after all of them if none does.

        `first` is the glue-up of the last member that holds it.
        """
        standing = [member for own in frames[:first] for member in own]
        for k in range(first, len(frames)):
            standing += frames[k]
            if self._ways.first_free((piece,), standing, ALL) is None:
                return k
        return len(frames)

    def _faced(self, unit: Unit, there: list[int]) -> Iterator[Stage]:
        """What is laid on the faces of the frame, or of the heaviest piece where there is none."""
        joined = self._joined
        left = [piece for piece in unit.pieces if piece not in set(there)]
        base = [] if there or not left else [unit.main]
        left = [piece for piece in left if piece not in base]
        while left:
            placed = {*there, *base}
            ready = [piece for piece in left if self._lies_on(piece, placed)] or left
            rule = joined.rule(ready[0])
            own = [piece for piece in ready if joined.rule(piece) == rule]
            yield Stage(kind="face", pieces=(*base, *own), there=tuple(there))
            there += (*base, *own)
            base = []
            left = [piece for piece in left if piece not in set(own)]

    def _lies_on(self, piece: int, placed: set[int]) -> bool:
        return any(
            link.joint in FACED and {link.one, link.other} & placed
            for link in self._joined.of(piece)
        )

    # ------------------------------------------------------------ what is fixed to a unit

    def _is_early(self, unit: Unit) -> bool:
        """Whether a unit is fixed on before the finish: wood, but no fixed front."""
        joined = self._joined
        is_front = joined.part(unit.main).assembly == "fronts"
        return joined.is_wood(unit.main) and not is_front

    def _by_rule(self, units: Iterable[Unit]) -> list[list[Unit]]:
        found: dict[str, list[Unit]] = {}
        for unit in units:
            found.setdefault(self._joined.rule(unit.main), []).append(unit)
        return list(found.values())

    def _of_fittings(self, late: Sequence[Unit]) -> list[list[Unit]]:
        """Fittings on the unit itself in one go, then fixed fronts with their pulls."""
        plain = [unit for unit in late if not self._is_of_front(unit)]
        fronts = [unit for unit in late if self._is_of_front(unit)]
        return [own for own in (plain, fronts) if own]

    def _in_order(self, units: Sequence[Unit]) -> list[int]:
        """The pieces of some units, wood before what is bought."""
        pieces = [piece for unit in units for piece in unit.pieces]
        return sorted(pieces, key=lambda each: not self._joined.is_wood(each))

    def _is_of_front(self, unit: Unit) -> bool:
        return self._joined.part(unit.main).assembly == "fronts"
