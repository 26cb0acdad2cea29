"""A bed: the maker's choices and all that follows from them, in one record that never changes."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from functools import cached_property
from types import MappingProxyType
from typing import Any

from model.brief import all_choices, given
from model.checks import find
from model.checks.record import Finding
from model.dimensions import open_book
from model.errors import BadInput, CannotBuild
from model.parts.marks import HardwareCount, Mark, hardware_counts, marks
from model.parts.pieces import Pieces
from model.parts.record import Made, Part
from model.rules import Dimensions
from model.solids.proof import Proof, prove


@dataclass(frozen=True, kw_only=True)
class Design:
    """What the maker decided: a name, and the choices that differ from the defaults (mm, keys, counts)."""

    name: str = "Untitled bed"
    choices: Mapping[str, Any] = field(default_factory=dict)
    kept: Mapping[str, Any] = field(default_factory=dict)

    def with_choices(self, changes: Mapping[str, Any]) -> Design:
        """The same design with some choices changed; each is checked against its own range first."""
        known = all_choices()
        for name in changes:
            if name not in known:
                raise BadInput(name, f"There is no choice called {name}.")
        checked = {n: known[n].checked(v) for n, v in changes.items()}
        merged = {**self.choices, **checked}
        return replace(self, choices={n: merged[n] for n in known if n in merged})

    def value(self, name: str) -> Any:
        """A choice as it stands: what was decided, or the default."""
        return self.choices.get(name, all_choices()[name].default)


@dataclass(frozen=True, kw_only=True)
class Bed:
    """A bed that can be built. `parts` maps the rule that made them to its parts."""

    design: Design
    dimensions: Dimensions
    parts: Mapping[str, tuple[Part, ...]]
    pieces: Pieces
    proof: Proof

    @property
    def moved(self) -> frozenset[str]:
        """Names of the dimensions that differ from the bed this one was solved from."""
        return self.dimensions.moved

    @cached_property
    def marks(self) -> tuple[Mark, ...]:
        """The parts list: one mark for all pieces that are cut alike."""
        return marks(self.parts)

    @cached_property
    def hardware(self) -> tuple[HardwareCount, ...]:
        """What is bought and not cut."""
        return hardware_counts(self.parts)

    @cached_property
    def findings(self) -> tuple[Finding, ...]:
        """Every check, worst first."""
        return find(self)

    def __getitem__(self, name: str) -> Any:
        """The value of a dimension or choice by its full name."""
        return self.dimensions[name]


def solve(design: Design, last: Bed | None = None) -> Bed:
    """The bed of a design. From `last` only what the change touches is derived again.

    Refused with CannotBuild: a bed whose parts would share space, meet nothing, or whose drawers would hit.
    """
    start = last.dimensions if last is not None else Dimensions(open_book())
    dimensions = start.changed(given(design.choices, all_choices()))
    parts = made(dimensions)
    pieces = Pieces.of(parts)
    proof = prove(parts, pieces, travels(dimensions))
    if not proof.holds:
        raise CannotBuild(*proof.refusal())
    return Bed(design=design, dimensions=dimensions, parts=parts, pieces=pieces, proof=proof)
