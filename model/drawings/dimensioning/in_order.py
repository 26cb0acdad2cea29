"""Words of one row in the order of their spans, so that a chain is read as it is measured.

Words that fit nowhere in their span are led off; each of them alone would be laid where there is
room first, and a reader could not tell which of several belongs to which span.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from itertools import combinations, pairwise
from typing import NamedTuple

from model.drawings.dimensioning.runs import Run
from model.drawings.dimensioning.words_room import AIR, APART, Leader, Word, WordsRoom, foot_of
from model.units import Mm

MOST_TRIED = 400  # places, before a row is given up


class Asked(NamedTuple):
    """Words that want a place: those of one span of a run; `half` is half their length."""

    run: Run
    k: int
    ends: tuple[Mm, Mm]
    half: Mm

    @property
    def middle(self) -> Mm:
        return (self.ends[0] + self.ends[1]) / 2

    @property
    def spare(self) -> Mm:
        """Room within the span beside the words, less than nothing where they do not fit."""
        return self.ends[1] - self.ends[0] - 2 * self.half - 2 * AIR


class Placed(NamedTuple):
    """Words in their place; led off by `lift` lines of words from their dimension at `out`."""

    asked: Asked
    word: Word
    lift: int
    out: Mm

    @property
    def leader(self) -> Leader | None:
        """The room of the line to words that stand off their dimension."""
        return Leader.to(self.word, self.asked.middle, self.out) if self.lift else None

    @property
    def led(self) -> tuple[Mm, Mm]:
        """Where along the side that line begins, and where it ends."""
        return self.asked.middle, foot_of(self.word, self.asked.middle)


def keeps_order(placed: Sequence[Placed]) -> bool:
    """Whether words stand one after the other as their spans do, and no leader crosses another."""
    found = sorted(placed, key=lambda each: each.asked.middle)
    led = [each for each in found if each.lift]
    return all(a.word.at < b.word.at for a, b in pairwise(found)) and not any(
        _cross(a, b) for a, b in combinations(led, 2)
    )


def _cross(one: Placed, other: Placed) -> bool:
    """Whether two leaders that begin on one line change sides before the lower of them ends."""
    low, high = sorted((one, other), key=lambda each: each.word.out)
    share = (low.word.out - low.out) / (high.word.out - high.out)
    start, end = high.led
    return (start - low.led[0]) * (start + share * (end - start) - low.led[1]) <= 0


Tried = Callable[[Asked, Mm], Iterator[Placed]]


def in_order(asked: Sequence[Asked], tried: Tried, room: WordsRoom) -> list[Placed] | None:
    """Places for all of them, kept in `room`: depth first, each of those that `tried` gives for
    words and the place where they would stand best. None where `MOST_TRIED` do not lead there.
    """
    spans = sorted(asked, key=lambda each: each.middle)
    best = _spread(spans)
    placed: list[Placed] = []
    ways = [tried(spans[0], best[0])]
    for _ in range(MOST_TRIED):
        found = next(ways[-1], None)
        if found is not None and keeps_order((*placed, found)):
            placed.append(found)
            room.take(found.word, found.leader)
            if len(placed) == len(spans):
                return placed
            ways.append(tried(spans[len(placed)], best[len(placed)]))
        elif found is None:
            ways.pop()
            if not ways:
                return None
            room.drop(placed.pop().leader)
    for each in placed:
        room.drop(each.leader)
    return None


def _spread(spans: Sequence[Asked]) -> list[Mm]:
    """Where words would stand, as near to their spans as they can beside each other on one line:
    those that fit in their span in its middle, the others moved apart.

    Pool adjacent violators: isotonic regression, from memory.
    """
    tight = [each for each in spans if each.spare < 0]
    offsets = [0.0]
    for a, b in pairwise(tight):
        offsets.append(offsets[-1] + a.half + b.half + APART)
    pools: list[tuple[float, int]] = []  # mean, how many
    for each, offset in zip(tight, offsets, strict=False):
        pool = (each.middle - offset, 1)
        while pools and pools[-1][0] > pool[0]:
            mean, many = pools.pop()
            pool = ((mean * many + pool[0] * pool[1]) / (many + pool[1]), many + pool[1])
        pools.append(pool)
    means = iter([mean for mean, many in pools for _ in range(many)])
    moved = iter([mean + offset for mean, offset in zip(means, offsets, strict=False)])
    return [next(moved) if each.spare < 0 else each.middle for each in spans]
