"""Cut trees laid out by hand or by lot, without any planner: `rip(300, piece("A", 1), waste)`.

Each function gives a maker of regions, which is told the wood that it gets: (x, y, length, width).
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from random import Random

from model.cutting.record import Layout, Placed, Region, Stock, Trim

Wood = tuple[float, float, float, float]
Make = Callable[[Wood], Region]
Size = tuple[float, float]


def waste(wood: Wood) -> Region:
    """A leaf that is good for nothing."""
    return _region(wood, use="waste")


def offcut(wood: Wood) -> Region:
    """A leaf that is worth keeping."""
    return _region(wood, use="offcut")


def piece(mark: str, number: int, *, turned: bool = False) -> Make:
    """A leaf that is a piece, as large as the leaf is."""

    def make(wood: Wood) -> Region:
        x, y, along, across = wood
        size = (across, along) if turned else (along, across)
        return _region(wood, use="piece", placed=Placed(mark, number, x, y, *size, turned))

    return make


def rip(size: float, low: Make, high: Make, *, kerf: float, is_trim: bool = False) -> Make:
    """A cut along the wood that leaves `size` before the blade."""

    def make(wood: Wood) -> Region:
        x, y, length, width = wood
        behind = (x, y + size + kerf, length, width - size - kerf)
        return replace(
            _region(wood, low=low((x, y, length, size)), high=high(behind)),
            cut="rip", at=y + size, kerf=kerf, is_trim=is_trim,
        )  # fmt: skip

    return make


def crosscut(size: float, low: Make, high: Make, *, kerf: float, is_trim: bool = False) -> Make:
    """A cut across the wood that leaves `size` before the blade."""

    def make(wood: Wood) -> Region:
        x, y, length, width = wood
        behind = (x + size + kerf, y, length - size - kerf, width)
        return replace(
            _region(wood, low=low((x, y, size, width)), high=high(behind)),
            cut="crosscut", at=x + size, kerf=kerf, is_trim=is_trim,
        )  # fmt: skip

    return make


def strip(row: str, inside: Make, *, stays_whole: bool = False) -> Make:
    """What holds a row of pieces."""
    return lambda wood: replace(inside(wood), row=row, stays_whole=stays_whole)


def layout(number: int, stock: Stock, tree: Make) -> Layout:
    return Layout(number=number, stock=stock, tree=tree((0.0, 0.0, stock.length, stock.width)))


def _region(wood: Wood, **rest: object) -> Region:
    x, y, length, width = wood
    return Region(x=x, y=y, length=length, width=width, **rest)  # type: ignore[arg-type]


# ---------------------------------------------------------------- sheets cut by lot


def cut_by_lot(
    lot: Random, stock: Stock, pieces: int, *, kerf: float, step: float = 1.0, least: float = 60.0
) -> list[Size]:
    """Lengths (along x) and widths of the pieces that a sheet gives, cut at random without waste:
    trims, kerfs and pieces fill it, so that no fewer sheets can hold what was cut from it.
    """
    trim: Trim = stock.trim
    whole = (stock.length - trim.left - trim.right, stock.width - trim.lower - trim.upper)
    left: list[Size] = [whole]
    while len(left) < pieces:
        left.sort(key=lambda size: size[0] * size[1])
        found = _halves(lot, left[-1], kerf, step, least)
        if not found:
            break
        left[-1:] = found
    return left


def _halves(lot: Random, size: Size, kerf: float, step: float, least: float) -> list[Size]:
    ways = [way for way in (0, 1) if size[way] >= 2 * least + kerf]
    if not ways:
        return []
    way = lot.choice(ways)
    steps = int((size[way] - kerf - 2 * least) / step)
    at = least + step * lot.randint(0, steps)
    sizes = at, size[way] - at - kerf
    return [(each, size[1]) if way == 0 else (size[0], each) for each in sizes]
