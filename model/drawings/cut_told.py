"""How a layout is told: which cuts are sawn when, and sizes in the maker's unit."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field

from model.cutting.record import Layout, Region
from model.units import INCH, Mm, show_bare


@dataclass(frozen=True, kw_only=True)
class Shown:
    """How a layout is told: the unit, the names of marks (`box side`), the number of each cut in
    the order of `sawn`, and a title. Where things crowd, `all_named` leads names and numbers to
    their places by lines; else they are left out, as on a screen that can be enlarged.
    """

    unit: str = "mm"
    names: Mapping[str, str] = field(default_factory=dict)
    numbers: Sequence[int] = ()
    title: str = ""
    all_named: bool = True


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


def size_words(length: Mm, width: Mm, unit: str) -> str:
    """Two sizes without the sign of their unit."""
    return f"{show_bare(length, unit)} × {show_bare(width, unit)}"


def about_size_words(region: Region, unit: str) -> str:
    """The sizes of what is left over, as near as anybody measures it."""
    step = {"inch": INCH / 16, "mm": 1.0}[unit]
    length, width = (show_bare(side, unit, step) for side in (region.length, region.width))
    return f"{length} × {width}"
