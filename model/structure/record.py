"""What the bed carries: for every load case how far its pieces move, and how hard they work."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property
from typing import Literal, NamedTuple, Union

import numpy as np

from model.mechanics.duration import LoadTime
from model.parts.pieces import Floats, Ints
from model.units import Mm

EffectKind = Literal["bending", "shear", "bearing", "sag", "joint"]


@dataclass(frozen=True, kw_only=True)
class Case:
    """One way the bed is loaded. `source` is where the load is published; "" for an assumption,
    and `choices` then name what the maker can change.

    Cases that differ only in the place of the load share their `key`. `time` is how long the load
    lies, for the strength of wood.
    """

    key: str
    title: str
    reason: str
    source: str = ""
    choices: tuple[str, ...] = ()
    time: LoadTime = "ten years"

    @property
    def is_test(self) -> bool:
        """Whether it is a standard's test load, which is already larger than what people do."""
        return bool(self.source)

    @property
    def is_assumed(self) -> bool:
        """Whether no publication gives the load."""
        return not self.source


@dataclass(frozen=True, kw_only=True)
class Effect:
    """The worst of one kind of effect on one piece: `value` of at most `limit`, in `unit`, in the
    load case `case` (index), `at` mm from the piece's near end.
    """

    piece: int
    kind: EffectKind
    value: float
    limit: float
    unit: str
    case: int
    at: Mm
    source: str

    @property
    def use(self) -> float:
        """The share of the limit that is used; past 1 it fails."""
        return self.value / self.limit


class Forces(NamedTuple):
    """What the joints (j) of the frame hold.

    `pieces` (j, 2) of the bed: the one that bears, and what it bears on, -1 for the floor; `kind`
    (j,) as in `model.structure.joints.KINDS`; `at` (j, 3) mm; `force` (c, j, 6): N and N mm on the
    first piece, on the bed's axes; `stiffness` (j, 6): by how little each gives, N/mm and N mm.
    """

    pieces: Ints
    kind: Ints
    at: Floats
    force: Floats
    stiffness: Floats


NO_FORCES = Forces(
    pieces=np.zeros((0, 2), np.intp),
    kind=np.zeros(0, np.intp),
    at=np.zeros((0, 3)),
    force=np.zeros((0, 0, 6)),
    stiffness=np.zeros((0, 6)),
)


@dataclass(frozen=True, kw_only=True)
class Unjudged:
    """Why a bed's strength cannot be told: a sentence, and the piece it speaks of (-1: none)."""

    sentence: str
    piece: int = -1


Strength = Union["Carried", Unjudged]


class Curve(NamedTuple):
    """One piece in one load case, station by station along it, from its near end.

    `at` (s,) mm along the piece; `point` and `moved` (s, 3) mm on the bed's axes: where the
    station lies, and how far it goes; `sag` (s,) mm down from the line between the piece's
    supports; `use` (s,) share of the limit in bending and shear.
    """

    at: Floats
    point: Floats
    moved: Floats
    sag: Floats
    use: Floats


@dataclass(frozen=True, kw_only=True, eq=False)
class Carried:
    """What every piece of the frame carries in every load case.

    Pieces of the frame (p): `pieces` index the bed's pieces, rising. Stations: rows `first[i]` to
    `first[i + 1]` are those of frame piece i, along it from its near end: `at` (s,) mm, `point`
    (s, 3) mm, and per load case (c): `moved` (c, s, 3) mm, `sag` (c, s) mm, `use` (c, s).
    `sag_limit` (p,) mm; inf where none applies. `effects`: by piece, worst first.
    `joints`: what holds them; `hardest`: by role (see `model.structure.skeleton.ROLES`) and kind,
    the worst of all pieces; `roles` (p,) what each is to the frame.
    """

    cases: tuple[Case, ...]
    pieces: Ints
    first: Ints
    at: Floats
    point: Floats
    moved: Floats
    sag: Floats
    use: Floats
    sag_limit: Floats
    effects: Mapping[int, tuple[Effect, ...]]
    joints: Forces = NO_FORCES
    hardest: Mapping[tuple[str, EffectKind], Effect] = field(default_factory=dict)
    roles: tuple[str, ...] = ()

    @cached_property
    def station_piece(self) -> Ints:
        """(s,): the frame piece, by its place in `pieces`, that each station lies on."""
        return np.repeat(np.arange(len(self.pieces)), np.diff(self.first))

    def curve(self, piece: int, case: int) -> Curve:
        """How a piece of the frame bends in a load case. LookupError: no piece of the frame."""
        i = self._place(piece)
        rows = slice(int(self.first[i]), int(self.first[i + 1]))
        return Curve(
            self.at[rows], self.point[rows], self.moved[case, rows],
            self.sag[case, rows], self.use[case, rows],
        )  # fmt: skip

    def limit_of(self, piece: int) -> Mm:
        """How far a piece may sag, mm; inf where no limit applies."""
        return float(self.sag_limit[self._place(piece)])

    def piece_use(self, count: int, case: int | None = None) -> Floats:
        """How hard each of the bed's `count` pieces works, in one case or its worst: (count,).

        1 is at the limit; nan for a piece that is no part of the frame.
        """
        use = self.use.max(axis=0) if case is None else self.use[case]
        found = np.full(count, np.nan)
        if len(self.pieces):
            found[self.pieces] = np.maximum.reduceat(use, self.first[:-1])
        return found

    def _place(self, piece: int) -> int:
        i = int(np.searchsorted(self.pieces, piece))
        if i >= len(self.pieces) or self.pieces[i] != piece:
            raise LookupError(piece)
        return i
