"""Small things that steps and schedule use up, and scrap that they ask for: on the buying list, so
that nobody finds out at the bench.

Each is asked for by the words of the steps themselves.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence
from typing import NamedTuple

from model.bed import Bed
from model.building.finishing import finishing_schedule
from model.building.record import Step
from model.shop.order import say
from model.shop.order.aids import spacers


class Small(NamedTuple):
    """A small thing: what it is, and what it is for."""

    name: str
    use: str


Teller = Callable[[Bed], Small]
_FILLERS = {
    "painted": "Wood filler that takes paint",
    "clear": "Wood filler in the wood's colour",
    "oil": "Wood filler in the wood's colour that takes oil",
    "none": "Wood filler in the wood's colour",
}
_BRUSHES = {
    "painted": Small("Brushes, or a small roller", "for sealer, primer and paint"),
    "clear": Small("Brushes that suit the finish", "for the finish"),
    "oil": Small("Lint-free cloths, and a lidded metal can for them", "to rub the oil in and off"),
}


def consumables(bed: Bed, steps: Sequence[Step]) -> tuple[Small, ...]:
    """Everything small that a step or the finishing schedule names, in no need of a count."""
    said = " ".join(_said(bed, steps)).lower()
    return (
        *(tell(bed) for words, tell in _ASKED.items() if any(word in said for word in words)),
        *_finish(bed),
        *_spacers(bed),
        *_between(steps),
    )


def _said(bed: Bed, steps: Sequence[Step]) -> Iterator[str]:
    for step in steps:
        yield from step.text
        yield from step.tools
    schedule = finishing_schedule(bed)
    yield from (each.text for each in schedule.passes)
    yield from schedule.bare
    yield from schedule.cautions


def _finish(bed: Bed) -> Iterator[Small]:
    if bed["finish"] in _BRUSHES:
        yield _BRUSHES[bed["finish"]]


def _spacers(bed: Bed) -> Iterator[Small]:
    """Made in the shop, yet of something."""
    unit = bed["shown_unit"]
    for each in spacers(bed):
        size = say.size(each.size, unit)
        many = f"{each.quantity} strips" if each.quantity > 1 else "One strip"
        yield Small(f"Scrap for the {each.name}", f"{many} {size} wide")


def _between(steps: Sequence[Step]) -> Iterator[Small]:
    """Spacers that stand between rails and stiles while they are clamped, as steps set them."""
    found = dict.fromkeys(
        said[1] for step in steps for each in step.settings if (said := _SPACER.match(each))
    )
    if found:
        sizes = say.listed(list(found))
        yield Small("Scrap for spacers between what is clamped", f"strips {sizes} long")


_SPACER = re.compile(r"Spacer (.+?) long\b")
# What is asked for by any of these words, and how it is told.
_ASKED: dict[tuple[str, ...], Teller] = {
    ("fill nail", "fill what"): lambda bed: Small(
        _FILLERS[bed["finish"]], "nail and screw holes that show"
    ),
    ("mask with tape",): lambda bed: Small("Masking tape", "places that stay bare"),
    ("by hand with",): lambda bed: Small(
        f"Sandpaper, grit {bed['sanded_to']}, a few sheets", "places sanded again by hand"
    ),
    ("double-sided tape",): lambda bed: Small(
        "Double-sided tape", "to hold fronts while they are screwed on; clamps do as well"
    ),
    ("of card",): lambda bed: Small("Card", "shims for the gaps of the fronts"),
    ("shim under",): lambda bed: Small("Thin shims", "under glides, where the floor is uneven"),
    ("wax or felt", "felt or wax"): lambda bed: Small(
        "Paraffin wax, or self-adhesive felt in strips", "between slats and cleats, against noise"
    ),
    ("wax them", "with wax", "paraffin"): lambda bed: Small(
        "Paraffin wax", "runners and what slides on them"
    ),
    ("cloth",): lambda bed: Small("Clean cloths", "to wipe off glue and dust"),
    ("chalk", "number them with a pencil"): lambda bed: Small(
        "Chalk and pencils", "marks on the pieces"
    ),
}
