"""A bed: the maker's choices and all that follows from them, in one record that never changes."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, fields, replace
from functools import cache, cached_property
from typing import Any, TypeVar, cast

from model.book import ROWS, check_list, open_book
from model.brief import after_the_bed, all_choices, given
from model.brief.words import full_label, row_name
from model.checks.fit.screws import screw_findings
from model.checks.record import Finding
from model.checks.run import CheckStep, answers, worst_first
from model.errors import BadInput, CannotBuild
from model.materials import Material, OwnRows, materials
from model.materials.own import NONE
from model.part import Made, Part, Point
from model.parts.marks import HardwareCount, Mark, hardware_counts, marks
from model.parts.masses import masses
from model.parts.pieces import Floats, Pieces
from model.publisher import UNNAMED, Publisher
from model.rules import Dimensions
from model.solids.carried import MATTRESS, Assembly, assemblies, piece_weights
from model.solids.clash import Travel
from model.solids.proof import Proof, prove
from model.stock.prices import NO_PRICES, Prices
from model.stock.progress import NOT_BEGUN, Progress
from model.stock.rows import NO_STOCK, StockRows
from model.structure.carry import judged
from model.structure.record import Strength

Kept = TypeVar("Kept")


@dataclass(frozen=True, kw_only=True)
class Design:
    """What the maker decided: a name, and the choices that differ from the defaults (mm, keys,
    counts); and what travels with the design: materials, stock and prices of the maker's own, how
    far the work is, and who publishes its plans.
    """

    name: str = "Untitled bed"
    choices: Mapping[str, Any] = field(default_factory=dict)
    own: OwnRows = NONE
    stock: StockRows = NO_STOCK
    prices: Prices = NO_PRICES
    progress: Progress = NOT_BEGUN
    publisher: Publisher = UNNAMED
    kept: Mapping[str, Any] = field(default_factory=dict)

    def with_choices(self, changes: Mapping[str, Any]) -> Design:
        """The same design with some choices changed; each is checked against its own range
        first.
        """
        known = all_choices(self.own)
        for name in changes:
            if name not in known:
                raise BadInput(name, f"There is no choice called {name}.")
        checked = {n: known[n].checked(v) for n, v in changes.items()}
        merged = {**self.choices, **checked}
        return replace(self, choices={n: merged[n] for n in known if n in merged})

    def with_own(self, own: OwnRows) -> Design:
        """The same design with these materials of the maker's own; refused: one that is gone and
        still chosen.
        """
        known = all_choices(own)
        for name, value in self.choices.items():
            if known[name].takes_own and value not in known[name].keys:
                called = row_name(all_choices(self.own)[name], value)
                raise BadInput(
                    name,
                    f"{called} is still chosen ({full_label(known[name])}); choose another "
                    "material there before you take it out.",
                )
        return replace(self, own=own)

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
        found = marks(self.parts, self.pieces)
        return tuple(replace(each, made_of=self.materials.get(each.material)) for each in found)

    @cached_property
    def hardware(self) -> tuple[HardwareCount, ...]:
        """What is bought and not cut."""
        counted = hardware_counts(self.parts, self.pieces)
        return tuple(each for each in counted if each.code != MATTRESS)

    @cached_property
    def masses(self) -> Floats:
        """What each piece weighs: (n,), kg; what is bought and not of wood counts as nothing."""
        return masses(self.pieces, self.materials)

    @property
    def materials(self) -> Mapping[str, Material]:
        """What its parts can be made of, by key."""
        return materials(self.design.own)

    @cached_property
    def weights(self) -> Floats:
        """What each piece weighs, bought ones and the mattress too: (n,), kg."""
        return piece_weights(self.pieces, self.masses, self["mattress_mass"])

    @cached_property
    def carried(self) -> tuple[Assembly, ...]:
        """What is carried in one go when the bed is apart, the heaviest first."""
        return assemblies(self.pieces, self.proof.holding, self.weights)

    @cached_property
    def strength(self) -> Strength:
        """What its frame bears under every load, or why that cannot be told."""
        grade = self["stock_grade"].key
        return judged(
            self.pieces, self.proof, self.masses, self["handling"], grade, self.design.own
        )

    @property
    def facts(self) -> Mapping[str, Any]:
        """What checks may ask for beside dimensions, by name; `model.book.FACTS` lists them."""
        return {name: fact(self) for name, fact in _FACTS.items()}

    def asked(self, step: CheckStep) -> tuple[Finding, ...]:
        """What one check says; of the facts only those that it needs are worked out."""
        facts = {name: _FACTS[name](self) for name in step.needs if name in _FACTS}
        return tuple(answers(step, {**self.dimensions.values, **facts}))

    @cached_property
    def findings(self) -> tuple[Finding, ...]:
        """Every check, worst first."""
        checked = check_list().findings({**self.dimensions.values, **self.facts})
        return worst_first((*checked, *screw_findings(self.proof.screws)))

    def once(self, make: Callable[[Bed], Kept]) -> Kept:
        """What a function works out of the bed and its design, worked out once and kept with it."""
        known = vars(self).setdefault("_once", {})
        design, found = known.get(make, (None, None))
        if design is not self.design:  # not yet, or handed on by a bed of another design
            found = make(self)
            known[make] = (self.design, found)
        return cast(Kept, found)

    def under(self, design: Design, dimensions: Dimensions) -> Bed:
        """The same bed under another design that changes nothing about it: what was worked out of
        it (marks, strength, findings) is kept.
        """
        same = replace(self, design=design, dimensions=dimensions)
        given = {each.name for each in fields(self)}
        vars(same).update({n: known for n, known in vars(self).items() if n not in given})
        vars(same)["_once"] = dict(vars(self).get("_once", {}))
        return same

    def __getitem__(self, name: str) -> Any:
        """The value of a dimension or choice by its full name."""
        return self.dimensions[name]


_FACTS: Mapping[str, Callable[[Bed], Any]] = {
    "pieces": lambda bed: bed.pieces,
    "parts": lambda bed: bed.parts,
    "masses": lambda bed: bed.masses,
    "screw_points": lambda bed: bed.proof.screws,
    "holding": lambda bed: bed.proof.holding,
    "weights": lambda bed: bed.weights,
    "strength": lambda bed: bed.strength,
    "carried": lambda bed: bed.carried,
    "materials": lambda bed: bed.materials,
    "drawer_travel": lambda bed: travel_of(bed.dimensions),
}


def solve(design: Design, last: Bed | None = None) -> Bed:
    """The bed of a design. From `last` only what the change touches is derived again.

    Refused with CannotBuild: a bed whose parts would share space or meet nothing, or whose drawers
    would hit.
    """
    start = last.dimensions if last is not None else Dimensions(open_book())
    dimensions = start.changed(given(design.choices, design.own))
    if last is not None and dimensions.moved <= after_the_bed() and design.own == last.design.own:
        return last.under(design, dimensions)
    parts = made(dimensions)
    pieces = Pieces.of(parts)
    proof = prove(parts, pieces, travel_of(dimensions))
    if not proof.holds:
        raise CannotBuild(*proof.refusal())
    return Bed(design=design, dimensions=dimensions, parts=parts, pieces=pieces, proof=proof)


def made(dimensions: Dimensions) -> Mapping[str, tuple[Part, ...]]:
    """The parts that each rule makes, by the rule's full name, in the order of building."""
    makers = part_rules()
    return {name: dimensions.values[name] for name in makers if dimensions.values[name]}


@cache
def part_rules() -> tuple[str, ...]:
    """The full names of the rules that make parts."""
    book = open_book()
    return tuple(name for name in book.rules if book.kinds[name] == Made)


def travel_of(dimensions: Dimensions) -> Travel:
    """For every drawer group (`left-1`) the direction it comes out, on the bed's axes, and how
    far, mm.
    """
    found: dict[str, tuple[Point, float]] = {}
    for row in ROWS:
        x, y, z = (-dimensions[f"{row}.frame"].matrix[:3, 1]).tolist()
        for n in range(1, dimensions[f"{row}.drawer_count"] + 1):
            found[f"{row}-{n}"] = ((x, y, z), float(dimensions[f"{row}.travel"]))
    return found
