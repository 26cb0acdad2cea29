"""The proof that a bed can be built: no shared space, joints that meet, drawers that run free.

Exact for parts made of boxes and round bars, in plain numpy, so that it keeps up with a slider.
`model.solids.exact` proves the same with solid booleans, for tests and exports.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Protocol

import numpy as np

from model.parts.pieces import Ints, Parts, Pieces
from model.solids.bars import bars
from model.solids.clash import Hit, Overlap, Travel, overlaps, sweeps
from model.solids.holding import (
    Afloat,
    Holding,
    Loose,
    contacts,
    joints_meet,
    reach_of,
    reaches_floor,
)
from model.solids.near import TOUCH, near
from model.solids.screwing import ScrewPoint, screw_points

__all__ = [
    *("Afloat", "Fault", "Hit", "Loose", "Overlap", "Proof", "ScrewPoint", "Travel"),
    *("joints_meet", "overlaps", "prove", "reaches_floor", "screw_points", "sweeps"),
]


class Fault(Protocol):
    """Something that speaks against a bed."""

    @property
    def rules(self) -> tuple[str, ...]:
        """Full names of the rules whose parts are at fault."""

    def sentence(self) -> str:
        """What is wrong, as the maker reads it."""


@dataclass(frozen=True, kw_only=True)
class Proof:
    """What speaks against a bed; every list but `screws` is empty for one that can be built.

    `screws` tells of every screw of the first piece of each part, right or wrong; `holding` which
    piece holds which; `touching` (k, 2) all pairs of pieces that meet face to face, rising.
    """

    overlaps: tuple[Overlap, ...]
    loose: tuple[Loose, ...]
    afloat: tuple[Afloat, ...]
    hits: tuple[Hit, ...]
    screws: tuple[ScrewPoint, ...]
    holding: Holding = field(repr=False, compare=False)
    touching: Ints = field(repr=False, compare=False)

    @property
    def faults(self) -> tuple[Fault, ...]:
        """Everything that speaks against the bed, worst first.

        A screw without wood is no fault here: it fails its own check, and the bed is still shown.
        """
        return (*self.overlaps, *self.hits, *self.loose, *self.afloat)

    @property
    def holds(self) -> bool:
        """Whether nothing speaks against the bed."""
        return not self.faults

    def refusal(self) -> tuple[str, str, tuple[str, ...]]:
        """The worst fault, as `CannotBuild` takes it: rule at fault, sentence, rules."""
        worst = self.faults[0]
        return worst.rules[0], worst.sentence(), worst.rules


def prove(parts: Parts, pieces: Pieces, travel: Travel) -> Proof:
    """Prove that the pieces of these parts fit, hold and move. `travel`: see `sweeps`."""
    close = near(pieces, reach_of(parts))
    round_bars = bars(pieces, close)
    room = contacts(pieces, close, round_bars)
    holding = joints_meet(parts, pieces, close, room)
    meet = room <= TOUCH
    return Proof(
        overlaps=overlaps(pieces, close, round_bars),
        loose=holding.loose,
        afloat=reaches_floor(pieces, holding),
        hits=sweeps(pieces, travel),
        screws=screw_points(parts, pieces),
        holding=holding,
        touching=np.stack([close.one[meet], close.other[meet]], axis=1),
    )
