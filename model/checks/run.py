"""How checks are fed: by name, like rules; once for the bed, or for each side or end they speak
of.
"""

from __future__ import annotations

import inspect
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, replace
from types import ModuleType
from typing import Any

from model.checks.record import Finding, Verdict
from model.rules import RuleBook

ORDER = list(Verdict)


@dataclass(frozen=True)
class CheckStep:
    """One check, ready to be called: where it stands, and the dimensions it needs."""

    id: str
    place: str
    function: Callable[..., Finding | None]
    needs: tuple[str, ...]
    title: str
    group: str
    reason: str
    source: str
    about: str


class CheckList:
    """All checks, each bound once to the dimensions it needs."""

    def __init__(
        self, book: RuleBook, chapters: Iterable[tuple[ModuleType, tuple[str, ...]]]
    ) -> None:
        self.steps = tuple(
            _bound(book, function, scope)
            for module, scopes in chapters
            for function in vars(module).values()
            if hasattr(function, "check") and function.__module__ == module.__name__
            for scope in scopes
        )

    def findings(self, values: Mapping[str, Any]) -> tuple[Finding, ...]:
        """What every check says of these dimensions, worst first; checks that do not apply say
        nothing.
        """
        found = [f for step in self.steps if (f := _answer(step, values)) is not None]
        return worst_first(found)


def worst_first(found: Iterable[Finding]) -> tuple[Finding, ...]:
    """Failed checks first, then tight ones, notes, and those that hold."""
    return tuple(sorted(found, key=lambda f: ORDER.index(f.verdict)))


def _bound(book: RuleBook, function: Callable[..., Finding | None], scope: str) -> CheckStep:
    told = function.check  # type: ignore[attr-defined]
    needs = [book.full_name(scope, need) for need in inspect.signature(function).parameters]
    about = book.full_name(scope, told["about"]) if told["about"] else ""
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
    )


def _answer(step: CheckStep, values: Mapping[str, Any]) -> Finding | None:
    finding = step.function(*[values[need] for need in step.needs])
    if finding is None:
        return None
    return replace(
        finding, id=step.id, place=step.place, group=step.group, title=step.title, about=step.about,
        reason=finding.reason or step.reason, source=step.source,
    )  # fmt: skip
