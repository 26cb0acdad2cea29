"""What a check says: value, limit, margin, verdict, one sentence of reason, and a source."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from enum import StrEnum
from typing import Any, TypeVar

F = TypeVar("F", bound=Callable[..., Any])

COMMON = "common practice, no source"
HAIR = 1e-6  # a value this near to its limit is at it: what is left is floating-point dust


class Verdict(StrEnum):
    """Worst first: the order in which checks are listed."""

    FAILS = "fails"
    TIGHT = "tight"
    NOTE = "note"
    HOLDS = "holds"


@dataclass(frozen=True, kw_only=True)
class Finding:
    """The answer of one check. Value, limit and margin are in `unit`; margin below zero fails.

    `about` names the dimension that the value is, so that the maker can ask why; `place` tells
    which row or end, `pieces` which pieces of the bed it speaks of; `remedies` are the choices that
    a maker would turn first to make it hold, by full name. A check fills in what its finding leaves
    empty.
    """

    id: str = ""
    group: str = ""
    title: str = ""
    value: float
    limit: float
    unit: str = "mm"
    margin: float
    verdict: Verdict
    reason: str = ""
    source: str = ""
    about: str = ""
    place: str = ""
    pieces: tuple[int, ...] = ()
    remedies: tuple[str, ...] = ()


def _verdict(margin: float, tight: float) -> Verdict:
    if margin < -HAIR:
        return Verdict.FAILS
    return Verdict.TIGHT if margin < tight - HAIR else Verdict.HOLDS


def at_least(value: float, limit: float, *, tight: float = 0.0, unit: str = "mm") -> Finding:
    """The value must reach the limit; within `tight` of it the verdict is tight."""
    margin = value - limit
    return Finding(
        value=value, limit=limit, margin=margin, verdict=_verdict(margin, tight), unit=unit
    )


def at_most(value: float, limit: float, *, tight: float = 0.0, unit: str = "mm") -> Finding:
    """The value must stay below the limit; within `tight` of it the verdict is tight."""
    margin = limit - value
    return Finding(
        value=value, limit=limit, margin=margin, verdict=_verdict(margin, tight), unit=unit
    )


def between(
    value: float, low: float, high: float, *, tight: float = 0.0, unit: str = "mm"
) -> Finding:
    """The value must lie in the band; the nearer end is the limit that is shown."""
    if value - low <= high - value:
        return at_least(value, low, tight=tight, unit=unit)
    return at_most(value, high, tight=tight, unit=unit)


def advice(finding: Finding) -> Finding:
    """The same finding as advice: what would fail or be tight is a note."""
    if finding.verdict is Verdict.HOLDS:
        return finding
    return Finding(
        value=finding.value, limit=finding.limit, margin=finding.margin, unit=finding.unit,
        verdict=Verdict.NOTE,
    )  # fmt: skip


def check(
    group: str,
    title: str,
    *,
    about: str = "",
    source: str = COMMON,
    remedies: tuple[str, ...] = (),
) -> Callable[[F], F]:
    """Mark a function as a check. It is fed by name like a rule; its docstring is the reason.

    `remedies` names the choices that a maker would turn first where it fails, looked up like needs.
    """
    told = {"group": group, "title": title, "about": about, "source": source, "remedies": remedies}

    def marked(function: F) -> F:
        function.check = told  # type: ignore[attr-defined]
        return function

    return marked
