"""The search: turn one choice, build the bed, read the check again.

It is bounded by the number of beds that are built and not by time, so that one design always gets
one answer.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import suppress
from enum import StrEnum
from typing import NamedTuple

from model.bed import Bed
from model.brief.leeway import turns
from model.brief.turn import ANOTHER_WOOD, Run, Turn, Turns
from model.checks.record import HAIR, Finding, Verdict
from model.improve.beds import Beds
from model.improve.check import Check
from model.improve.record import Improvement, improvement_of
from model.mend import Stopped

SOLVES = 120  # beds that are built for one finding, at most
REST = 30  # of these, beyond the remedies that a check names
FAR = 0.2  # share of a size: a larger change of what no remedy names is no smallest change
PROBES = 3  # steps after which a choice that does not move the check is left alone
MENDED = (Verdict.HOLDS, Verdict.NOTE)


class State(StrEnum):
    """What became of a turn."""

    HOLDS = "holds"
    SHORT = "short"  # the check does not hold yet
    WRONG_WAY = "wrong way"  # it is further from holding than it was
    UNBUILT = "unbuilt"


class Reading(NamedTuple):
    """What one built turn says of the check; `then` is None where it is not asked."""

    state: State
    turn: Turn
    bed: Bed | None = None
    then: Finding | None = None


class Spent(Exception):
    """As many beds are built as one answer may cost."""


def never() -> bool:
    """Nobody stops the search."""
    return False


class Search:
    """The search for one finding. After `answer`, `spent` counts the beds that were asked for."""

    def __init__(
        self, beds: Beds, finding: Finding, stop: Callable[[], bool] = never, solves: int = SOLVES
    ) -> None:
        bed = beds.bed
        self.bed, self.beds, self.finding, self.stop, self.solves = bed, beds, finding, stop, solves
        self.check = Check(bed, finding)
        self.spent = 0
        self._found: list[Improvement] = []
        self._only_just: list[Improvement] = []  # the check that failed is tight then
        self._spoken_of = set(bed.pieces.made_by(*finding.pieces))
        self._used = {part.material for made in bed.parts.values() for part in made}

    def answer(self) -> Improvement | None:
        """The best of what was found; where nothing makes a failed check hold, what lets it be
        tight at least.
        """
        with suppress(Spent):
            self._look()
        return min(self._found or self._only_just, key=lambda each: each.cost, default=None)

    def _look(self) -> None:
        """Remedies before whatever else the check hangs on; sizes and counts before other kinds
        and woods.
        """
        remedies = self.finding.remedies
        self._look_among([self._turns(name) for name in remedies])
        if self._does:
            return
        ways = [self._turns(name) for name in self.check.hangs_on]
        if remedies:
            self.solves = min(self.solves, self.spent + REST)
            ways = [_near(way) for way in ways]
        self._look_among(ways, is_patient=False)

    def _turns(self, name: str) -> Turns:
        return turns(name, self.bed.design.value, self.bed.design.own, self._used)

    def _look_among(self, ways: list[Turns], *, is_patient: bool = True) -> None:
        for way in ways:
            for run in way.runs:
                self._follow(run, is_patient=is_patient)
        for turn in sorted((t for way in ways for t in way.alone), key=lambda t: t.size):
            if self._is_clean or (turn.size >= ANOTHER_WOOD and self._does):
                return
            self._keep(self._reading(turn))

    @property
    def _is_clean(self) -> bool:
        """Whether a change was found that lets no other check fail or get tight."""
        return any(not any(each.cost[:2]) for each in self._found)

    @property
    def _does(self) -> bool:
        """Whether a change was found that lets no other check fail: another one that is tight is
        not worth another wood.
        """
        return any(not each.cost[0] for each in self._found)

    # ------------------------------------------------------------ one turn

    def _reading(self, turn: Turn) -> Reading:
        bed = self._built(turn)
        if bed is None:
            return Reading(State.UNBUILT, turn)
        then = self.check.of(bed)
        reading = Reading(self._state(turn, bed, then), turn, bed, then)
        if self._is_only_just(then) and self._has_fewer_failed(bed):
            self._only_just.append(self._told(reading, bed))
        return reading

    def _is_only_just(self, then: Finding | None) -> bool:
        """Whether the check that failed is tight; one that was tight before has gained nothing."""
        was_failed = self.finding.verdict is Verdict.FAILS
        return was_failed and then is not None and then.verdict is Verdict.TIGHT

    def _built(self, turn: Turn) -> Bed | None:
        if self.stop():
            raise Stopped
        if self.spent >= self.solves:
            raise Spent
        self.spent += 1
        return self.beds.having(turn.changes)

    def _state(self, turn: Turn, bed: Bed, then: Finding | None) -> State:
        if then is None:
            return State.HOLDS if self._is_settled(turn, bed) else State.SHORT
        if then.verdict in MENDED:
            return State.HOLDS
        is_further = then.margin < self.finding.margin - HAIR
        return State.WRONG_WAY if is_further else State.SHORT

    def _is_settled(self, turn: Turn, bed: Bed) -> bool:
        """Whether a check need no longer be asked because of a remedy that it names: plates hold
        what bolts did. A beam that is left out sags no more, but that is no remedy.
        """
        is_named = not turn.changes.keys().isdisjoint(self.finding.remedies)
        return is_named and bed.parts.keys() >= self._spoken_of

    def _keep(self, reading: Reading) -> None:
        """What trades one failed check for another is no improvement."""
        if reading.state is not State.HOLDS or reading.bed is None:
            return
        if self._has_fewer_failed(reading.bed) or self._mends_tight(reading.bed):
            self._found.append(self._told(reading, reading.bed))

    def _told(self, reading: Reading, bed: Bed) -> Improvement:
        return improvement_of(self.bed, self.finding, reading.turn, bed, reading.then)

    def _has_fewer_failed(self, bed: Bed) -> bool:
        return _failed(bed) < _failed(self.bed)

    def _mends_tight(self, bed: Bed) -> bool:
        return self.finding.verdict is Verdict.TIGHT and _failed(bed) == _failed(self.bed)

    # ------------------------------------------------------------ a run of sizes or counts

    def _follow(self, run: Run, *, is_patient: bool) -> None:
        """Look along a run in growing strides for a turn that holds, then go back to the first."""
        short = -1
        for stride, at in enumerate(_strides(len(run)), 1):
            reading = self._reading(run[at])
            if reading.state is State.HOLDS:
                return self._go_back(run, short, at, reading)
            if reading.state is State.UNBUILT:
                return self._look_between(run, short, at)
            if reading.state is State.WRONG_WAY:
                return None
            if not is_patient and stride >= PROBES and self._is_unmoved(reading):
                return None
            short = at
        return None

    def _is_unmoved(self, reading: Reading) -> bool:
        then = reading.then
        return then is not None and abs(then.margin - self.finding.margin) <= HAIR

    def _look_between(self, run: Run, short: int, unbuilt: int) -> None:
        """The bed builds up to somewhere before `unbuilt`; the check may hold up there."""
        while unbuilt - short > 1:
            middle = (short + unbuilt) // 2
            reading = self._reading(run[middle])
            if reading.state is State.HOLDS:
                return self._go_back(run, short, middle, reading)
            if reading.state is State.UNBUILT:
                unbuilt = middle
            elif reading.state is State.SHORT:
                short = middle
            else:
                return None
        return None

    def _go_back(self, run: Run, short: int, good: int, best: Reading) -> None:
        """The first turn that holds between one that does not and one that does."""
        while good - short > 1:
            middle = (short + good) // 2
            reading = self._reading(run[middle])
            if reading.state is State.HOLDS:
                good, best = middle, reading
            else:
                short = middle
        self._keep(best)


def _near(way: Turns) -> Turns:
    """Small steps and other kinds: what is worth a try where a check names other remedies."""
    runs = (tuple(turn for turn in run if turn.size <= FAR) for run in way.runs)
    kinds = (turn for turn in way.alone if turn.size < ANOTHER_WOOD)
    return Turns(runs=tuple(runs), alone=tuple(kinds))


def _strides(count: int) -> Iterator[int]:
    """0, 1, 3, 7 and so on, and the last."""
    at = 0
    while at < count - 1:
        yield at
        at = 2 * at + 1
    if count:
        yield count - 1


def _failed(bed: Bed) -> int:
    return sum(finding.verdict is Verdict.FAILS for finding in bed.findings)
