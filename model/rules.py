"""Named dimension rules: a rule's parameters name the dimensions it needs.

A rule is a plain function marked with `@rule`. Its name is the dimension it gives, its parameters
are the dimensions it takes, its first docstring line is the reason that the maker reads when
asking why.
"""

from __future__ import annotations

import inspect
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from functools import cached_property
from graphlib import CycleError, TopologicalSorter
from types import ModuleType
from typing import Any, TypeVar, get_type_hints

from model.errors import CannotBuild
from model.formula import formula_of
from model.units import Mm

F = TypeVar("F", bound=Callable[..., Any])

SCOPES = ("left", "right", "foot", "head")
OPPOSITE = {"left": "right", "right": "left", "foot": "head", "head": "foot"}


class Dim(float):
    """A length in mm that still knows the rule or choice it came from."""

    __slots__ = ("name",)
    name: str

    def __new__(cls, value: float, name: str) -> Dim:
        dim = super().__new__(cls, value)
        dim.name = name
        return dim

    def __reduce__(self) -> tuple[Any, ...]:  # so that copy, pickle and asdict keep the name
        return Dim, (float(self), self.name)


def rule(function: F) -> F:
    """Mark the one place where the dimension named like the function is derived."""
    function.is_rule = True  # type: ignore[attr-defined]
    return function


@dataclass(frozen=True)
class Chapter:
    """A module of rules, read once for the whole bed (scope "") or for one side or end of it."""

    module: ModuleType
    scopes: tuple[str, ...] = ("",)


@dataclass(frozen=True)
class Step:
    """One rule, ready to be called: its full name, the function, and the full names it needs."""

    name: str
    function: Callable[..., Any]
    needs: tuple[str, ...]
    parameters: tuple[str, ...]
    is_length: bool


class RuleBook:
    """All rules of a bed, checked against each other when the book is opened.

    A need is looked up in the rule's own scope first, then bed-wide. `left_opening_width` names
    `left.opening_width` from anywhere; `opposite_drawers` names the other side's `drawers`.
    Refused with LookupError: a need that nothing gives; TypeError: a need taken in another unit;
    ValueError: rules that need each other in a circle.
    """

    def __init__(self, choices: Mapping[str, Any], chapters: Iterable[Chapter]) -> None:
        self.choice_kinds = dict(choices)
        self.rules: dict[str, Callable[..., Any]] = {}
        for chapter in chapters:
            for scope in chapter.scopes:
                for function in vars(chapter.module).values():
                    if (
                        hasattr(function, "is_rule")
                        and function.__module__ == chapter.module.__name__
                    ):
                        name = f"{scope}.{function.__name__}".lstrip(".")
                        if name in self.rules or name in self.choice_kinds:
                            raise ValueError(f"{name} is given twice")
                        self.rules[name] = function
        hints = {f: get_type_hints(f, include_extras=True) for f in set(self.rules.values())}
        self.kinds = self.choice_kinds | {n: hints[f]["return"] for n, f in self.rules.items()}
        steps = {name: self._step(name, f, hints[f]) for name, f in self.rules.items()}
        graph = {name: step.needs for name, step in steps.items()}
        try:
            order = tuple(TopologicalSorter(graph).static_order())
        except CycleError as circle:
            raise ValueError("rules in a circle: " + " <- ".join(circle.args[1])) from None
        self.steps = tuple(steps[n] for n in order if n in steps)
        self.step_of = steps

    def _step(self, name: str, function: Callable[..., Any], hints: Mapping[str, Any]) -> Step:
        scope = name.rpartition(".")[0]
        parameters = tuple(inspect.signature(function).parameters)
        needs = []
        for need in parameters:
            try:
                full = self.full_name(scope, need)
            except LookupError:
                raise LookupError(f"{name} needs {need}, which no rule or choice gives") from None
            if self.kinds[full] != hints[need]:
                raise TypeError(
                    f"{name} takes {need} as {hints[need]}, but it is {self.kinds[full]}"
                )
            needs.append(full)
        return Step(name, function, tuple(needs), parameters, self.kinds[name] == Mm)

    def full_name(self, scope: str, need: str) -> str:
        """The dimension or choice that a need means, seen from a scope. LookupError: nothing gives
        it.
        """
        side, _, rest = need.partition("_")
        if scope and side == "opposite":
            side = OPPOSITE[scope]
        candidates = ([f"{scope}.{need}"] if scope else []) + [need, f"{side}.{rest}"]
        for name in candidates:
            if name in self.kinds:
                return name
        raise LookupError(need)

    def formula(self, name: str) -> str | None:
        """What a rule returns, as text; None for a rule that is no formula."""
        return formula_of(self.rules[name])

    def reason(self, name: str) -> str:
        """The first sentence of a rule's docstring: why the dimension is what it is."""
        paragraph = (inspect.getdoc(self.rules[name]) or "").partition("\n\n")[0]
        return " ".join(paragraph.partition("\nSource:")[0].split())

    def source(self, name: str) -> str | None:
        """The published source of a rule, when it is not plain geometry."""
        lines = (inspect.getdoc(self.rules[name]) or "").splitlines()
        return next((x.partition(":")[2].strip() for x in lines if x.startswith("Source:")), None)

    def roots(self, name: str) -> tuple[str, ...]:
        """The maker's choices that a dimension hangs on, nearest first."""
        found: dict[str, None] = {}
        queue, seen = [name], {name}
        while queue:
            for need in self.needs(queue.pop(0)):
                if need in self.choice_kinds:
                    found[need] = None
                elif need not in seen:
                    seen.add(need)
                    queue.append(need)
        return tuple(found)

    def needs(self, name: str) -> tuple[str, ...]:
        """The full names that a dimension is derived from; none for a choice."""
        return self.step_of[name].needs if name in self.step_of else ()

    @cached_property
    def drives(self) -> dict[str, frozenset[str]]:
        """For every choice, the names of all that hangs on it."""
        driven: dict[str, set[str]] = {name: set() for name in self.choice_kinds}
        for name in self.rules:
            for root in self.roots(name):
                driven[root].add(name)
        return {name: frozenset(names) for name, names in driven.items()}


@dataclass(frozen=True)
class Dimensions:
    """One bed's dimensions: its choices and the value of every rule for them. Never changes."""

    book: RuleBook
    values: Mapping[str, Any] = field(default_factory=dict)
    moved: frozenset[str] = frozenset()

    def changed(self, choices: Mapping[str, Any]) -> Dimensions:
        """New dimensions for new choices; `moved` names those whose value differs from here.

        If a rule raises, these dimensions are still whole: the last good bed stays on view.
        CannotBuild gains the rule's own full name, so that its choices can be found.
        """
        values, moved = dict(self.values), set[str]()
        for name, value in choices.items():
            if name not in values or values[name] != value:
                is_length = self.book.choice_kinds[name] == Mm
                values[name] = Dim(value, name) if is_length else value
                moved.add(name)
        for step in self.book.steps:
            if step.name in values and moved.isdisjoint(step.needs):
                continue
            try:
                value = step.function(*[values[need] for need in step.needs])
            except CannotBuild as refusal:
                raise self._named(refusal, step) from None
            if step.name not in values or values[step.name] != value:
                values[step.name] = Dim(value, step.name) if step.is_length else value
                moved.add(step.name)
        return Dimensions(self.book, values, frozenset(moved))

    def _named(self, refusal: CannotBuild, step: Step) -> CannotBuild:
        """Give a refusal the full name of what is at fault, and of the rule that noticed it."""
        try:
            at_fault = self.book.full_name(step.name.rpartition(".")[0], refusal.field)
        except LookupError:
            at_fault = refusal.field
        involved = (*refusal.involved, step.name)
        return CannotBuild(at_fault, refusal.sentence, involved=involved)

    def __getitem__(self, name: str) -> Any:
        return self.values[name]

    def why(self, name: str, show: Callable[[Any], str]) -> Iterator[str]:
        """Say where a dimension comes from, down to the maker's own choices; each one once."""
        yield from self._why(name, show, 0, set())

    def _why(
        self, name: str, show: Callable[[Any], str], depth: int, told: set[str]
    ) -> Iterator[str]:
        margin, value = "    " * depth, show(self.values[name])
        if name in self.book.choice_kinds:
            yield f"{margin}{name} = {value}, your choice"
            return
        if name in told:
            yield f"{margin}{name} = {value}, see above"
            return
        told.add(name)
        yield f"{margin}{name} = {value}. {self.book.reason(name)}"
        if (formula := self.book.formula(name)) is not None:
            yield f"{margin}  = {formula}"
        if (source := self.book.source(name)) is not None:
            yield f"{margin}  source: {source}"
        for need in self.book.needs(name):
            yield from self._why(need, show, depth + 1, told)
