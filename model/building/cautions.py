"""The cautions of the whole set: those that every plan shows, by where they count."""

from __future__ import annotations

from typing import NamedTuple

from model.bed import Bed
from model.building.check_words import in_shop_units
from model.checks.safety.cautions import Caution, cautions

_IN_THE_SHOP = ("machines", "dust", "finish", "sheets", "lifting", "old_wood")


class Cautions(NamedTuple):
    """A heading and its cautions, as the maker reads them."""

    title: str
    cautions: tuple[Caution, ...]


def caution_sheet(bed: Bed) -> tuple[Cautions, ...]:
    """Whose word counts comes first; then what holds in the shop, and where the bed is used."""
    unit: str = bed["shown_unit"]
    all_of = tuple(
        Caution(
            key=each.key,
            shown_for=each.shown_for,
            title=each.title,
            text=in_shop_units(each.text, unit),
            source=each.source,
        )
        for each in cautions(bed.pieces, bed.materials)
    )
    first, rest = all_of[:1], all_of[1:]
    return (
        Cautions("Before anything else", first),
        Cautions("In the shop", tuple(each for each in rest if each.key in _IN_THE_SHOP)),
        Cautions("Where it is used", tuple(each for each in rest if each.key not in _IN_THE_SHOP)),
    )
