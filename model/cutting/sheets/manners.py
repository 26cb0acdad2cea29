"""In which manners packings are tried: some that do well first, then at random from a seed."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from itertools import islice, product
from random import Random

from model.cutting.sheets.packing import (
    BEST_AREA,
    BEST_LONG,
    BEST_SHORT,
    CROSSCUT,
    FLUSH,
    LARGER,
    LONGER,
    RIP,
    SHORTER,
    Manner,
)
from model.cutting.whole import Size

FITS = (BEST_AREA, BEST_SHORT, BEST_LONG)
SPLITS = (RIP, SHORTER, LARGER, CROSSCUT, LONGER)

_KEYS: tuple[Callable[[Size], int], ...] = (
    lambda size: size.along * size.across,
    lambda size: max(size.along, size.across),
    lambda size: size.across,
    lambda size: size.along,
    lambda size: size.along + size.across,
    lambda size: min(size.along, size.across),
)


def orders(sizes: tuple[Size, ...]) -> list[tuple[int, ...]]:
    """The sizes by area, by longer side, across, along, by both together, by shorter side."""
    places = range(len(sizes))
    return [
        tuple(sorted(places, key=lambda at: (-key(sizes[at]), -sizes[at].area, at)))
        for key in _KEYS
    ]


def plain(sizes: tuple[Size, ...]) -> Iterator[Manner]:
    """Every order with every fit and split; those that differ most come first."""
    sorted_ = orders(sizes)
    made = [
        Manner(order, fit, split, in_runs)
        for in_runs, (split, fit), order in product((True, False), product(SPLITS, FITS), sorted_)
    ]
    # A stride that shares no factor with their number visits each once.
    return (made[at * 37 % len(made)] for at in range(len(made)))


def tried(sizes: tuple[Size, ...], seed: int) -> Iterator[Manner]:
    """First the plain manners, then random ones for ever."""
    yield from islice(plain(sizes), 60)
    random = Random(seed)
    while True:
        yield at_random(sizes, random)


def tidy(sizes: tuple[Size, ...], random: Random) -> Manner:
    """Sizes that share a width, or a length, one after another, so that they share settings."""
    draw = random.random
    by_across = draw() < 0.6
    places = range(len(sizes))
    shared = [size.across if by_across else size.along for size in sizes]
    noise = 0.1 + draw()
    rank = {each: each * (1 + noise * draw()) for each in sorted(set(shared))}
    other = [size.along if by_across else size.across for size in sizes]
    order = sorted(places, key=lambda at: (-rank[shared[at]], shared[at], -other[at], at))
    split = (RIP if by_across else CROSSCUT) if draw() < 0.6 else SPLITS[int(draw() * 5)]
    return Manner(tuple(order), FLUSH if draw() < 0.6 else BEST_AREA, split, draw() < 0.8)


def at_random(sizes: tuple[Size, ...], random: Random) -> Manner:
    """Weights drawn for each size, so that like pieces stay together."""
    draw = random.random
    lean = draw() * 2 - 1  # how much more one side counts than the other
    noise = 0.2 + draw()
    keys = [
        size.along ** (1 + lean) * size.across ** (1 - lean) * (1 + noise * draw())
        for size in sizes
    ]
    order = sorted(range(len(sizes)), key=lambda at: (-keys[at], at))
    fit, split = FITS[int(draw() * 3)], SPLITS[int(draw() * 5)]
    return Manner(tuple(order), fit, split, draw() < 0.7)
