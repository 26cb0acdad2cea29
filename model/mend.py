"""What would work instead of a design that cannot be built: found by building, never guessed."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field
from typing import Any

from model.bed import Bed, Design, solve
from model.brief import all_choices
from model.brief.declare import Choice
from model.errors import BadInput, CannotBuild
from model.rules import RuleBook
from model.units import GRIDS, ShopGrid, show_length

SAMPLES = 24  # trial values over a choice's range: about 60 mm apart in the widest
CANDIDATES = 14  # choices that are tried alone, nearest to the fault first


@dataclass(frozen=True, kw_only=True)
class Mended:
    """The way out of a refused design.

    Either one `choice` with the `range` (mm or count, both ends built) or the `keys` that work, or
    a set of `conflict`ing choices. `changes` is always a change that was built and works.
    """

    sentence: str
    choice: str = ""
    range: tuple[float, float] | None = None
    keys: tuple[str, ...] = ()
    conflict: tuple[str, ...] = ()
    changes: Mapping[str, Any] = field(default_factory=dict)


class _Trial:
    """Builds beds near a design, starting each from the last good one so that little is derived
    again.
    """

    def __init__(self, design: Design, last: Bed | None, stop: Callable[[], bool]) -> None:
        self.design, self.last, self.stop = design, last, stop

    def builds(self, changes: Mapping[str, Any]) -> bool:
        if self.stop():
            raise Stopped
        try:
            self.last = solve(self.design.with_choices(changes), self.last)
        except (CannotBuild, BadInput):
            return False
        return True


class Stopped(Exception):
    """The maker has moved on; nobody waits for the answer."""


def works(
    design: Design,
    refusal: CannotBuild,
    book: RuleBook,
    last: Bed | None = None,
    stop: Callable[[], bool] = lambda: False,
) -> Mended:
    """A single choice and its range that would work, else the choices in conflict and one set that
    builds.

    `stop` is asked before every trial; Stopped is raised once it says yes.
    """
    trial = _Trial(design, last, stop)
    known = all_choices(design.own)
    for name in candidates(refusal, book):
        if (found := _alone(trial, known[name], refusal)) is not None:
            return found
    return _together(trial, refusal, book)


def candidates(refusal: CannotBuild, book: RuleBook) -> tuple[str, ...]:
    """The choices that could be at fault: the one that was named, then sizes, then words; nearest
    first.
    """
    names: dict[str, None] = {}
    for name in (refusal.field, *refusal.involved):
        if name in book.choice_kinds:
            names[name] = None
        elif name in book.rules:
            names.update(dict.fromkeys(book.roots(name)))
    known = all_choices()
    found = sorted(names, key=lambda n: n != refusal.field and bool(known[n].keys))
    return tuple(found)[:CANDIDATES]


def _alone(trial: _Trial, choice: Choice, refusal: CannotBuild) -> Mended | None:
    if choice.keys or choice.is_flag:
        return _keys_that_work(trial, choice, refusal)
    if choice.is_count:
        return _counts_that_work(trial, choice, refusal)
    return _range_that_works(trial, choice, refusal)


def _keys_that_work(trial: _Trial, choice: Choice, refusal: CannotBuild) -> Mended | None:
    values: Iterable[Any] = choice.keys or (True, False)
    now = trial.design.value(choice.name)
    good = [v for v in values if v != now and trial.builds({choice.name: v})]
    if not good:
        return None
    words = tuple(v if isinstance(v, str) else ("yes" if v else "no") for v in good)
    return Mended(
        sentence=f"{refusal.sentence} {_label(choice)}: {' or '.join(words)} would work.",
        choice=choice.name, keys=words, changes={choice.name: good[0]},
    )  # fmt: skip


def _counts_that_work(trial: _Trial, choice: Choice, refusal: CannotBuild) -> Mended | None:
    now = trial.design.value(choice.name)
    assert choice.least is not None and choice.most is not None
    values = range(int(choice.least), int(choice.most) + 1)
    good = [v for v in values if trial.builds({choice.name: v})]
    if not good:
        return None
    nearest = min(good, key=lambda v: abs(v - now))
    low = high = nearest
    while low - 1 in good:
        low -= 1
    while high + 1 in good:
        high += 1
    return _ranged(choice, refusal, low, high, nearest, f"{low}", f"{high}")


def _range_that_works(trial: _Trial, choice: Choice, refusal: CannotBuild) -> Mended | None:
    """The stretch of good values nearest to the present one; its ends lie on the shop grid."""
    assert choice.least is not None and choice.most is not None
    grid = GRIDS[trial.design.value("grid")]
    now = trial.design.value(choice.name)
    now = choice.default if now is None else now
    if now is None:
        return None
    values = _samples(grid, choice.least, choice.most, now)
    good = [trial.builds({choice.name: v}) for v in values]
    if not any(good):
        return None
    low = high = min((i for i, ok in enumerate(good) if ok), key=lambda i: abs(values[i] - now))
    while low > 0 and good[low - 1]:
        low -= 1
    while high < len(values) - 1 and good[high + 1]:
        high += 1
    lowest = values[low] if low == 0 else _edge(trial, choice.name, values[low], values[low - 1])
    highest = values[high]
    if high < len(values) - 1:
        highest = _edge(trial, choice.name, values[high], values[high + 1])
    nearest = min(max(now, lowest), highest)
    unit = trial.design.value("shown_unit")
    texts = (show_length(lowest, unit), show_length(highest, unit))
    return _ranged(choice, refusal, lowest, highest, nearest, *texts)


def _samples(grid: ShopGrid, least: float, most: float, now: float) -> list[float]:
    """Values over a range, on the grid, the nearest to the present one among them."""
    evenly = (least + i * (most - least) / SAMPLES for i in range(SAMPLES + 1))
    on_grid = {grid.near(value) for value in (*evenly, now)}
    inside = {min(max(value, grid.up(least)), grid.down(most)) for value in on_grid}
    return sorted(inside)


def _edge(trial: _Trial, name: str, good: float, bad: float) -> float:
    """The last value on the grid, going from a good towards a bad one, that was built."""
    grid = GRIDS[trial.design.value("grid")]
    while abs(good - bad) > 1.5 * grid.step:
        middle = grid.near((good + bad) / 2)
        if trial.builds({name: middle}):
            good = middle
        else:
            bad = middle
    return good


def _ranged(
    choice: Choice,
    refusal: CannotBuild,
    low: float,
    high: float,
    nearest: float,
    low_text: str,
    high_text: str,
) -> Mended:
    span = f"{low_text}" if low == high else f"from {low_text} to {high_text}"
    return Mended(
        sentence=f"{refusal.sentence} {_label(choice)} {span} would work.",
        choice=choice.name,
        range=(low, high),
        changes={choice.name: nearest},
    )


def _label(choice: Choice) -> str:
    scope = choice.name.rpartition(".")[0]
    return f"{scope} {choice.label.lower()}".strip().capitalize()


def _together(trial: _Trial, refusal: CannotBuild, book: RuleBook) -> Mended:
    """The fewest choices that must go back to their defaults; those far from the fault are kept
    first.
    """
    known = all_choices()
    near = candidates(refusal, book)
    differing = [n for n, v in trial.design.choices.items() if v != known[n].default]
    reset = sorted(differing, key=lambda n: n in near)
    for name in tuple(reset):
        fewer = [n for n in reset if n != name]
        if trial.builds({n: known[n].default for n in fewer}):
            reset = fewer
    changes = {n: known[n].default for n in reset}
    labels = ", ".join(_label(known[n]) for n in reset)
    return Mended(
        sentence=f"{refusal.sentence} These choices are in conflict: {labels}. "
        "With their defaults the bed builds.",
        conflict=tuple(reset), changes=changes,
    )  # fmt: skip
