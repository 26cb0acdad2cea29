"""The columns of the tables of stock that the maker types in; see `model.stock.stock_rows`."""

from __future__ import annotations

from app.tables.cells import plain, sized
from app.tables.entries import Entry
from model.stock.stock_rows import BOARDS, SHEETS, SOLD, Table

_ENTRIES = {
    "name": Entry("name", plain("Board"), "What is chalked on it; may be left empty"),
    "thickness": Entry(
        "thickness",
        plain("Thickness"),
        "A yard's class such as 8/4, or as it measures, with its unit: 30 mm",
    ),
    "length": Entry("length", sized("Length"), "From end to end", is_number=True),
    "width": Entry(
        "width", sized("Width"), "Where it is narrowest, bark and sapwood off", is_number=True
    ),
    "quantity": Entry(
        "quantity", plain("Pieces"), "How many of them; empty: as many as needed", is_number=True
    ),
    "bad": Entry(
        "bad",
        plain("Bad spans"),
        "Knots and splits, from the left end: 300 to 420, or 300 to 420 x 0 to 60 (of its width); "
        "several parted by ;",
    ),
    "price": Entry(
        "price", plain("Price each"), "Empty where it is yours, or not known", is_number=True
    ),
    "planed": Entry("planed", plain("Planed"), "yes: it is used at the thickness it has"),
    "on_hand": Entry("on_hand", plain("On hand"), "yes: an offcut or sheet that is there already"),
}
_MATERIAL = {
    "boards": Entry("material", plain("Wood"), "As in the list of materials"),
    "sold": Entry("material", plain("Wood"), "As in the list of materials"),
    "sheets": Entry("material", plain("Sheet"), "As in the list of materials"),
}


def entries_of(table: Table) -> tuple[Entry, ...]:
    """What is typed in each column of a table of stock."""
    return tuple(
        _MATERIAL[table.key] if name == "material" else _ENTRIES[name] for name in table.columns
    )


__all__ = ["BOARDS", "SHEETS", "SOLD", "entries_of"]
