"""Spacers that the shop makes for itself, each from named dimensions of the bed."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from model.bed import Bed
from model.brief import all_choices
from model.brief.declare import Choice
from model.units import Mm, snapped


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


def measured(bed: Bed) -> tuple[tuple[Choice, Mm], ...]:
    """The measures that the maker has typed in, which sizes hang on."""
    known = all_choices(bed.design.own)
    return tuple(
        (known[name], float(value))
        for name, value in bed.design.choices.items()
        if name.endswith("_measured") and value is not None
    )
