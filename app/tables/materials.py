"""The table of materials: all woods and sheets, the maker's own among them."""

from __future__ import annotations

from collections.abc import Callable
from typing import NamedTuple

from app.tables.cells import natural, plain
from app.tables.rows import Column
from model.materials import OwnRows, Sheet, Species, sheets, species

YOUR_OWN, OF_THE_TRADE = "your own", "of the trade"


class MaterialRow(NamedTuple):
    """One wood or sheet, and whether it is the maker's own."""

    row: Species | Sheet
    is_own: bool

    @property
    def key(self) -> str:
        return self.row.key

    @property
    def is_wood(self) -> bool:
        return isinstance(self.row, Species)


def material_rows(own: OwnRows) -> tuple[MaterialRow, ...]:
    """All woods, then all sheets."""
    listed = (*species(own.species).values(), *sheets(own.sheets).values())
    return tuple(MaterialRow(row, row.key in own.keys) for row in listed)


def _figure(heading: str, of: str, of_sheet: str = "", figures: str = ".0f") -> Column:
    """A figure of woods and of sheets; a dash where one of them has none."""

    def value(each: MaterialRow) -> float:
        name = of if each.is_wood else of_sheet
        return float(getattr(each.row, name)) if name else -1.0

    def text(each: MaterialRow, _unit: str) -> str:
        return f"{value(each):{figures}}" if value(each) >= 0 else "–"

    return Column(plain(heading), text, value, is_number=True)


def _word(heading: str, say: Callable[[MaterialRow], str]) -> Column:
    return Column(plain(heading), lambda m, _: say(m), lambda m: natural(say(m)))


MATERIAL_COLUMNS = (
    _word("Material", lambda m: m.row.name),
    _word("Kind", lambda m: m.row.kind if isinstance(m.row, Species) else "sheet"),
    _figure("kg/m³", "density_kg_m3", "density_kg_m3"),
    _figure("Stiffness, MPa", "moe_mpa", "moe_along_mpa"),
    _figure("Bends, MPa", "mor_mpa", "mor_along_mpa", ".1f"),
    _figure("Shrinks, %", "shrinkage_tangential_pct", figures=".1f"),
    _word("From", lambda m: YOUR_OWN if m.is_own else OF_THE_TRADE),
)
