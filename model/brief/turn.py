"""One turn of a choice, and all ways to turn it: what the search for a remedy goes through."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Mapping
from dataclasses import dataclass
from typing import Any, NamedTuple

from model.brief.declare import Choice

ANOTHER_KIND, ANOTHER_WOOD = 1.0, 2.0  # what these count beside a size's change, at most 1


class Now(NamedTuple):
    """What a design has: `value` gives each of its choices, `known` what they can be, `used` the
    keys of the materials that are in the bed; None where that is not known.
    """

    value: Callable[[str], Any]
    known: Mapping[str, Choice]
    used: Collection[str] | None


@dataclass(frozen=True, kw_only=True)
class Turn:
    """One change: the choice that is turned, and what follows it (a sheet brings its thickness).

    `size` tells how small it is: up to 1 a share of the larger size or count; above 1 another kind,
    from 2 another wood.
    """

    choice: str
    changes: Mapping[str, Any]
    size: float


Run = tuple[Turn, ...]


@dataclass(frozen=True, kw_only=True)
class Turns:
    """All ways to turn one choice, the smallest first: `runs` go on in one direction, the others
    stand alone.
    """

    runs: tuple[Run, ...] = ()
    alone: Run = ()


def turn_to(name: str, value: Any, size: float) -> Turn:
    return Turn(choice=name, changes={name: value}, size=size)


def share_of(now: float, then: float) -> float:
    return abs(then - now) / max(abs(then), abs(now))


def runs_of(name: str, now: float, values: Iterable[float]) -> Turns:
    """Upwards and downwards from the present value, the nearest first."""
    up = [v for v in values if v > now]
    down = [v for v in values if v < now]
    return Turns(
        runs=tuple(
            tuple(turn_to(name, v, share_of(now, v)) for v in run)
            for run in (up, down[::-1])
            if run
        )
    )
