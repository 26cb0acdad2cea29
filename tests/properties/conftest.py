"""One run over thousands of random designs, which all property tests look at."""

from __future__ import annotations

import os
from dataclasses import dataclass

import pytest

from model.bed import Bed, Design, solve
from model.errors import CannotBuild
from tests.properties.designs import random_design

DESIGNS = int(os.environ.get("BEDWRIGHT_DESIGNS", "2400"))
KEPT = 60  # beds kept whole for closer looks


@dataclass(frozen=True)
class Outcome:
    """What became of one design: the refusal, or the faults of its proof and what its parts add up
    to.
    """

    design: Design
    refusal: CannotBuild | None = None
    faults: tuple[str, ...] = ()
    unnamed: tuple[str, ...] = ()
    rows: tuple[str, ...] = ()


def _outcome(design: Design, kept: list[Bed]) -> Outcome:
    try:
        bed = solve(design)
    except CannotBuild as refusal:
        return Outcome(design, refusal=refusal)
    if len(kept) < KEPT:
        kept.append(bed)
    parts = [part for made in bed.parts.values() for part in made]
    sizes = [(p.name, s) for p in parts if not p.hardware for s in (p.length, p.width, p.thickness)]
    return Outcome(
        design,
        faults=tuple(fault.sentence() for fault in bed.proof.faults),
        unnamed=tuple(f"{name}: {size}" for name, size in sizes if not hasattr(size, "name")),
        rows=tuple(row for row in ("left", "right", "foot") if bed[f"{row}.drawer_count"]),
    )


@dataclass(frozen=True)
class Drawn:
    """All outcomes, and some of the beds."""

    outcomes: tuple[Outcome, ...]
    beds: tuple[Bed, ...]

    @property
    def built(self) -> tuple[Outcome, ...]:
        return tuple(o for o in self.outcomes if o.refusal is None)


@pytest.fixture(scope="session")
def drawn() -> Drawn:
    """Thousands of designs, solved once."""
    kept: list[Bed] = []
    outcomes = tuple(_outcome(random_design(seed), kept) for seed in range(DESIGNS))
    return Drawn(outcomes, tuple(kept))
