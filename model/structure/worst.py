"""Of all that the pieces of the frame carry, the worst: by station, by load case, by piece."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from functools import lru_cache
from typing import NamedTuple

import numpy as np

from model.parts.pieces import Floats, Pieces
from model.structure.record import Carried, Effect
from model.units import Mm

DECK = ("slat", "deck panel")  # what a mattress lies on
DRAWN_SHARE = 0.05  # of the bed: sag drawn this large is seen, and the bed is still a bed
_ROUND = (1.0, 2.0, 5.0)  # a factor is one of these times a power of ten: it is read at a glance
ALL = ""  # in place of a load's key: all of them


class LoadUse(NamedTuple):
    """How hard the bed works under one load, wherever it lies: the load case of its worst place,
    the worst piece, what about it, at what share of its limit.
    """

    case: int
    use: float
    piece: int
    kind: str


def cases_of(carried: Carried, key: str = ALL) -> tuple[int, ...]:
    """The load cases of one load, which differ only in its place; or all there are."""
    return tuple(k for k, case in enumerate(carried.cases) if key in (ALL, case.key))


@lru_cache(maxsize=4)
def shares(carried: Carried) -> Floats:
    """The greatest share of any limit at each station in every load case: (c, s).

    Bending and shear are known in every case, sag under the load in which it is worst. Bearing and
    joints are known where they are worst: they count at the station nearest to them, in that case.
    Kept: whoever works out what a bed carries asks for them first, those who show it again.
    """
    found = carried.use.copy()
    for effect in _effects(carried):
        first, end = _rows(carried, effect.piece)
        if first == end:
            continue
        if effect.kind == "sag":
            cases = list(cases_of(carried, carried.cases[effect.case].key))
            sag = np.maximum(carried.sag[cases, first:end], 0.0) / effect.limit
            found[cases, first:end] = np.maximum(found[cases, first:end], sag)
        else:
            row = first + int(np.abs(carried.at[first:end] - effect.at).argmin())
            found[effect.case, row] = max(found[effect.case, row], effect.use)
    return found


def station_use(carried: Carried, cases: Sequence[int]) -> Floats:
    """The greatest share of any limit at each station in some load cases: (s,)."""
    return np.asarray(shares(carried)[list(cases)].max(axis=0, initial=0.0))


def worst_loads(carried: Carried) -> tuple[LoadUse, ...]:
    """The loads, the one that works the bed hardest first."""
    if not len(carried.at):
        return ()
    keys = dict.fromkeys(case.key for case in carried.cases)
    found = [worst_place(carried, cases_of(carried, key)) for key in keys]
    return tuple(sorted(found, key=lambda each: -each.use))


def worst_place(carried: Carried, cases: Sequence[int]) -> LoadUse:
    """The load case of some that works the bed hardest, and where. ValueError: no stations."""
    uses = shares(carried)[list(cases)]
    which, row = divmod(int(uses.argmax()), uses.shape[1])
    piece = int(np.repeat(carried.pieces, np.diff(carried.first))[row])
    case, use = cases[which], float(uses[which, row])
    return LoadUse(case, use, piece, _kind(carried, case, piece, use))


def hardest_first(carried: Carried, cases: Sequence[int]) -> tuple[int, ...]:
    """Some load cases, the one that works the bed hardest first."""
    use = shares(carried).max(axis=1, initial=0.0)
    return tuple(sorted(cases, key=lambda case: -use[case]))


def worst_effects(carried: Carried) -> tuple[Effect, ...]:
    """Every effect on every piece, the hardest first."""
    return tuple(sorted(_effects(carried), key=lambda effect: -effect.use))


def most_sagging(
    carried: Carried, cases: Sequence[int], pieces: Collection[int]
) -> tuple[int, int] | None:
    """Which of some pieces sags most for its limit, or most of all where none has a limit, and in
    which of some load cases.

    Of places that differ by less than can be seen, such as left and right of a bed that is alike at
    both sides, the first of `cases` is told. None: none of the pieces is one of the frame.
    """
    known = [piece for piece in carried.pieces.tolist() if piece in pieces]

    def far(found: tuple[int, int]) -> tuple[float, float]:
        sag = float(carried.curve(*found).sag.max())
        return round(sag / sag_limit(carried, *found), 2), round(sag, 1)

    return max(((piece, each) for each in cases for piece in known), key=far, default=None)


def sag_limit(carried: Carried, piece: int, case: int) -> Mm:
    """How far a piece may sag under the load of a case; inf where that is not asked."""
    keys = [e.case for e in carried.effects.get(piece, ()) if e.kind == "sag"]
    is_asked = any(carried.cases[k].key == carried.cases[case].key for k in keys)
    return carried.limit_of(piece) if is_asked else float("inf")


def deck_pieces(pieces: Pieces) -> tuple[int, ...]:
    """The slats or panels that the mattress lies on."""
    parts = [pieces.parts[k] for k in pieces.part.tolist()]
    return tuple(k for k, part in enumerate(parts) if part.name in DECK)


def side_rails(pieces: Pieces) -> tuple[int, ...]:
    """The rails at the sides of the bed, between its posts."""
    parts = [pieces.parts[k] for k in pieces.part.tolist()]
    ours = [part.name.endswith("rail") and part.assembly.endswith("side") for part in parts]
    return tuple(k for k, is_rail in enumerate(ours) if is_rail)


def greatest_move(carried: Carried, case: int) -> Mm:
    """How far the frame's most moved station goes in a load case."""
    return float(np.linalg.norm(carried.moved[case], axis=1).max(initial=0.0))


def drawn_times(moved: Mm, length: Mm) -> float:
    """How many times a movement is drawn, so that it is seen on a bed of this length."""
    if moved <= 0:
        return 1.0
    most = DRAWN_SHARE * length / moved
    power = 10.0 ** np.floor(np.log10(most))
    return float(max(1.0, max(step * power for step in _ROUND if step * power <= most)))


def _effects(carried: Carried) -> list[Effect]:
    return [effect for effects in carried.effects.values() for effect in effects]


def _rows(carried: Carried, piece: int) -> tuple[int, int]:
    """The first station of a piece, and the one after its last."""
    i = int(np.searchsorted(carried.pieces, piece))
    return int(carried.first[i]), int(carried.first[i + 1])


def _kind(carried: Carried, case: int, piece: int, use: float) -> str:
    """What uses this share of a piece's limit in a load case, if it is known."""
    for effect in carried.effects.get(piece, ()):
        if effect.case == case and np.isclose(effect.use, use, rtol=1e-6):
            return effect.kind
    return "bending or shear"
