"""Spacers that the shop makes for itself, each from named dimensions of the bed."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import NamedTuple

from model.bed import Bed
from model.brief import all_choices
from model.brief.declare import Choice
from model.brief.words import full_label
from model.shop.order import say
from model.units import Mm, show_length, snapped

_SAME: Mm = 1e-3


@dataclass(frozen=True, kw_only=True)
class Spacer:
    """A block or strip of an offcut: `size` is the one that counts, `use` says how."""

    name: str
    quantity: int
    size: Mm
    use: str


def spacers(bed: Bed) -> tuple[Spacer, ...]:
    """What to make before the work begins."""
    return (*_slat_spacers(bed), *_slide_spacers(bed))


def _slat_spacers(bed: Bed) -> Iterator[Spacer]:
    size = bed.dimensions.values.get("slat_spacer")
    if size and bed["deck"] == "slats":
        yield Spacer(
            name="slat spacer",
            quantity=2,
            size=size,
            use="Stands between two slats while they are fixed; its width is the gap.",
        )


def _slide_spacers(bed: Bed) -> Iterator[Spacer]:
    """Slides that are not parallel make a drawer wobble, so both of a pair lie on one spacer."""
    known = bed.dimensions.values
    if not (known.get("has_drawers") and known.get("is_side_mount")):
        return
    on_box = snapped(bed["slide_bottom"] - bed["box_bottom"])
    below = bed["runner_bottom"] + bed["runner_stock"] if _on_skids(bed) else bed["bearer_bottom"]
    on_bearer = snapped(bed["slide_bottom"] - below)
    if on_box > 0:
        yield Spacer(
            name="slide spacer, box",
            quantity=2,
            size=on_box,
            use="Lies on the box side, flush with its lower edge; the slide's lower edge rests "
            "against it.",
        )
    if on_bearer > 0:
        yield Spacer(
            name="slide spacer, bearer",
            quantity=2,
            size=on_bearer,
            use=f"Lies on the {'skid' if _on_skids(bed) else 'bearer, flush with its lower edge'}; "
            "the slide's lower edge rests against it.",
        )


def slides_lie_on_skids(bed: Bed) -> bool:
    """Whether the skids that are on the bearers already stand where the slides' edges rest."""
    return _on_skids(bed) and not any(each.name.endswith("bearer") for each in spacers(bed))


def _on_skids(bed: Bed) -> bool:
    known = bed.dimensions.values
    rows = ("left", "right", "foot")
    return bool(known.get("has_skids")) and any(known.get(f"{row}.runner_places") for row in rows)


class Measured(NamedTuple):
    """Something to measure before the first cut: `name` what it is called, `size` what is reckoned
    with, `marks` the parts that are made of it, none where it is no stock.
    """

    name: str
    size: Mm
    marks: tuple[str, ...] = ()


def measured(bed: Bed) -> tuple[Measured, ...]:
    """What sizes hang on: the thickness of every sheet, whether it was typed in or is that of a
    table, and what else the maker has typed in as measured.
    """
    sheets = _sheets(bed)
    known = all_choices(bed.design.own)
    typed = [
        (known[name], float(value))
        for name, value in bed.design.choices.items()
        if name.endswith("_measured") and value is not None
    ]
    told = {round(each.size, 3) for each in sheets}
    others = [
        Measured(full_label(choice).removesuffix(" measured"), size, _as_thick(bed, choice, size))
        for choice, size in typed
        if not (_is_stock(choice) and round(size, 3) in told)
    ]
    return (*others, *sheets)


def measure_text(each: Measured, unit: str) -> str:
    """`Mattress width, 39"`, `B1 and B2 (Birch plywood, 12 mm), reckoned ~15/32" thick`."""
    told = show_length(each.size, unit)
    if not each.marks:
        return f"{each.name}, {told}"
    return f"{say.listed(each.marks)} ({each.name}), reckoned {told} thick"


def _sheets(bed: Bed) -> tuple[Measured, ...]:
    found: dict[tuple[str, float], list[str]] = {}
    for mark in bed.marks:
        if mark.made_of is not None and mark.made_of.kind == "sheet":
            layers = max(mark.part.layers, 1)
            key = mark.made_of.name, float(mark.thickness) / layers
            found.setdefault(key, []).append(mark.mark)
    return tuple(Measured(name, size, tuple(marks)) for (name, size), marks in found.items())


def _as_thick(bed: Bed, choice: Choice, size: Mm) -> tuple[str, ...]:
    """The parts that are as thick as a stock that was measured."""
    if not _is_stock(choice):
        return ()
    return tuple(m.mark for m in bed.marks if abs(float(m.thickness) - size) < _SAME)


def _is_stock(choice: Choice) -> bool:
    return choice.name.endswith("_stock_measured")
