"""How checks are fed: by name, like rules; once for the bed, or for each side or end they speak
of.
"""

from __future__ import annotations

import inspect
from collections.abc import Callable, Collection, Iterable, Mapping
from dataclasses import dataclass
from types import ModuleType
from typing import Any

from model.checks.record import Finding, Verdict
from model.rules import RuleBook

ORDER = list(Verdict)


Answer = Finding | Iterable[Finding] | None


@dataclass(frozen=True)
class CheckStep:
    """One check, ready to be called: where it stands, and the dimensions and facts it needs."""

    id: str
    place: str
    function: Callable[..., Answer]
    needs: tuple[str, ...]
    title: str
    group: str
    reason: str
    source: str
    about: str
    remedies: tuple[str, ...]


class CheckList:
    """All checks, each bound once to what it needs.

    A need is a dimension of the book, or one of `facts`: what is known only once the bed is built,
    such as its pieces and what they carry. ValueError: a fact with the name of a dimension, a
    remedy that is no choice.
    """

    def __init__(
        self,
        book: RuleBook,
        chapters: Iterable[tuple[ModuleType, tuple[str, ...]]],
        facts: Collection[str] = (),
    ) -> None:
        for name in facts:
            if any(name == known.rpartition(".")[2] for known in book.kinds):
                raise ValueError(f"{name} is both a fact and a dimension")
        self.steps = tuple(
            _bound(book, function, scope, facts)
            for module, scopes in chapters
            for function in vars(module).values()
            if hasattr(function, "check") and function.__module__ == module.__name__
            for scope in scopes
        )

    def findings(self, values: Mapping[str, Any]) -> tuple[Finding, ...]:
        """What every check says of these dimensions and facts, worst first; checks that do not
        apply say nothing.
        """
        return worst_first(f for step in self.steps for f in answers(step, values))

    def step_of(self, finding: str) -> CheckStep | None:
        """The check that said a finding, by the finding's id; None where no step did."""
        said = (step for step in self.steps if f"{finding}.".startswith(f"{step.id}."))
        return max(said, key=lambda step: len(step.id), default=None)


def worst_first(found: Iterable[Finding]) -> tuple[Finding, ...]:
    """Failed checks first, then tight ones, notes, and those that hold."""
    return tuple(sorted(found, key=lambda f: ORDER.index(f.verdict)))


def _bound(
    book: RuleBook, function: Callable[..., Answer], scope: str, facts: Collection[str]
) -> CheckStep:
    told = function.check  # type: ignore[attr-defined]
    needs = [
        need if need in facts else book.full_name(scope, need)
        for need in inspect.signature(function).parameters
    ]
    about = book.full_name(scope, told["about"]) if told["about"] else ""
    remedies = tuple(book.full_name(scope, name) for name in told["remedies"])
    for name in remedies:
        if name not in book.choice_kinds:
            raise ValueError(f"{function.__name__} cannot be mended by {name}: it is no choice")
    return CheckStep(
        id=f"{scope}.{function.__name__}".lstrip("."),
        place=scope,
        function=function,
        needs=tuple(needs),
        title=told["title"],
        group=told["group"],
        reason=" ".join((inspect.getdoc(function) or "").partition("\n\n")[0].split()),
        source=told["source"],
        about=about,
        remedies=remedies,
    )


def answers(step: CheckStep, values: Mapping[str, Any]) -> Iterable[Finding]:
    """What one check says of these dimensions and facts."""
    answer = step.function(*[values[need] for need in step.needs])
    if answer is None:
        return ()
    found = (answer,) if isinstance(answer, Finding) else answer
    return [_signed(finding, step) for finding in found]


def _signed(finding: Finding, step: CheckStep) -> Finding:
    """The finding with what its check says of itself, where the finding does not say it better.

    The id of one of several findings is the check's with the finding's own behind it.
    """
    return Finding(  # field by field: `replace` takes three times as long, and there are hundreds
        value=finding.value,
        limit=finding.limit,
        unit=finding.unit,
        margin=finding.margin,
        verdict=finding.verdict,
        pieces=finding.pieces,
        id=f"{step.id}.{finding.id}".rstrip("."),
        place=finding.place or step.place,
        group=step.group,
        title=finding.title or step.title,
        about=finding.about or step.about,
        reason=finding.reason or step.reason,
        source=finding.source or step.source,
        remedies=finding.remedies or step.remedies,
    )
