"""How a layout is told: which cuts are sawn when, and sizes in the maker's unit."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field

from model.cutting.record import Layout, Region
from model.units import GRIDS, Mm, show_bare, show_length


@dataclass(frozen=True, kw_only=True)
class Shown:
    """How a layout is told: the unit, the names of marks (`box side`), the number of each cut in
    the order of `sawn`, and a title. Where things crowd, `all_named` leads names and numbers to
    their places by lines; else they are left out, as on a screen that can be enlarged. Sizes that
    are `is_rough` are told as near as anybody saws them.
    """

    unit: str = "mm"
    names: Mapping[str, str] = field(default_factory=dict)
    numbers: Sequence[int] = ()
    title: str = ""
    all_named: bool = True
    is_rough: bool = False

    def size(self, length: Mm, width: Mm) -> str:
        """Two sizes, without the sign of their unit."""
        return size_words(length, width, self.unit, self.is_rough)

    def length(self, mm: Mm) -> str:
        """One size, with the sign of its unit."""
        return show_length(near(mm, self.unit) if self.is_rough else mm, self.unit)


def sawn(layout: Layout) -> tuple[Region, ...]:
    """What its cuts saw apart, a blank before its parts; not what is cut after milling."""
    return tuple(_sawn(layout.tree, False))


def milled_whole(layout: Layout) -> tuple[Region, ...]:
    """What is sawn apart only after milling."""
    now = {id(region) for region in sawn(layout)}
    return tuple(each for each in layout.tree.all() if each.cut and id(each) not in now)


def _sawn(region: Region, is_later: bool) -> Iterator[Region]:
    is_later = is_later or region.stays_whole
    if region.cut and not is_later:
        yield region
    for part in region.parts:
        yield from _sawn(part, is_later)


def size_words(length: Mm, width: Mm, unit: str, is_rough: bool = False) -> str:
    """Two sizes without the sign of their unit; rough ones as near as anybody saws them."""
    if is_rough:
        length, width = near(length, unit), near(width, unit)
    return f"{show_bare(length, unit)} × {show_bare(width, unit)}"


def about_size_words(region: Region, unit: str) -> str:
    """The sizes of what is left over, as near as anybody measures it."""
    return size_words(region.length, region.width, unit, is_rough=True)


def near(mm: Mm, unit: str) -> Mm:
    """On the nearest sixteenth or mm: nobody reads a rough board closer."""
    return GRIDS["1/16 in" if unit == "inch" else "1 mm"].near(mm)
