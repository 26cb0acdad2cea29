"""How few sticks any plan could need, in whole numbers: what is certain before anything is solved.

Source: dual feasible functions as collected in Clautiaux, Alves, Valerio de Carvalho, A survey of
dual-feasible and superadditive functions, Annals of Operations Research 179, 2010 (from memory).
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from math import gcd

MOST_ROUNDINGS = 30
MOST_STEPS = 2_000_000
FEW = 12  # pieces of stock whose sums are all looked at


def least_sticks(sizes: Sequence[int], demand: Sequence[int], room: int) -> int:
    """A bound on the sticks with this room that hold the demand; every size at most the room."""
    best = 0
    for values, whole in _functions(sizes, room):
        total = sum(value * count for value, count in zip(values, demand, strict=True))
        best = max(best, -(-total // whole))
    return best


def _functions(sizes: Sequence[int], room: int) -> list[tuple[list[int], int]]:
    """Each function of the sizes, and what it gives the whole room."""
    found = [(list(sizes), room)]
    for least in sorted({size for size in sizes if 2 * size <= room}):
        found.append(([_threshold(size, least, room) for size in sizes], room))
    for parts in range(1, MOST_ROUNDINGS + 1):
        found.append(([_rounded(size, parts, room) for size in sizes], parts * room))
    for least in sorted({size for size in sizes if 2 * size <= room}):
        count = room // least
        found.append(([_counted(size, least, room) for size in sizes], 2 * count))
    return found


def _threshold(size: int, least: int, room: int) -> int:
    if size > room - least:
        return room
    return size if size >= least else 0


def _rounded(size: int, parts: int, room: int) -> int:
    if (parts + 1) * size % room == 0:
        return size * parts
    return (parts + 1) * size // room * room


def _counted(size: int, least: int, room: int) -> int:
    """By how many of the least size fit beside it."""
    if 2 * size > room:
        return 2 * (room // least - (room - size) // least)
    return room // least if 2 * size == room else 2 * (size // least)


def reachable(
    bound: Fraction, costs: Sequence[int], limits: Sequence[int | None], most: int
) -> int:
    """The least sum of costs that is no less than the bound; at most `most`, which is one."""
    step = gcd(*costs)
    if not step:
        return 0
    floor = -(-bound.numerator // bound.denominator)
    least = -(-max(floor, 0) // step)
    if most // step > MOST_STEPS:
        return _among(least * step, costs, limits, most)
    sums = _reach([cost // step for cost in costs], limits, most // step)
    above = sums >> least
    if not above:
        return most
    return (least + (above & -above).bit_length() - 1) * step


def _among(least: int, costs: Sequence[int], limits: Sequence[int | None], most: int) -> int:
    """The least sum of few pieces of stock; of many, the bound itself."""
    pieces = [n for cost, n in zip(costs, limits, strict=True) if cost]
    if any(n is None for n in pieces) or sum(n or 0 for n in pieces) > FEW:
        return min(least, most)
    sums = {0}
    for cost, limit in zip(costs, limits, strict=True):
        for _ in range(limit or 0 if cost else 0):
            sums |= {each + cost for each in sums}
    return min((each for each in sums if least <= each <= most), default=most)


def _reach(costs: Sequence[int], limits: Sequence[int | None], most: int) -> int:
    mask, sums = (1 << most + 1) - 1, 1
    for cost, limit in zip(costs, limits, strict=True):
        left = most // cost if cost else 0
        left = left if limit is None else min(left, limit)
        take = 1
        while left > 0:
            take = min(take, left)
            sums |= sums << take * cost & mask
            left, take = left - take, take * 2
    return sums
