"""The parts list: one row for each mark, every size ready to be asked why."""

from __future__ import annotations

from app.tables.cells import natural, plain, size_text, sized
from app.tables.rows import Column


def _word(heading: str, name: str) -> Column:
    return Column(
        plain(heading), lambda m, _: str(getattr(m, name)), lambda m: natural(str(getattr(m, name)))
    )


def _size(name: str) -> Column:
    return Column(
        sized(name.capitalize()),
        lambda m, unit: size_text(getattr(m, name), unit),
        lambda m: float(getattr(m, name)),
        is_number=True,
        about=lambda m: str(getattr(getattr(m, name), "name", "")),
        tip=lambda m, unit: "Click to see why it is this size",
    )


PART_COLUMNS = (
    _word("Mark", "mark"),
    _word("Part", "name"),
    _word("Assembly", "assembly"),
    Column(plain("Pieces"), lambda m, _: f"{m.quantity}", lambda m: m.quantity, is_number=True),
    _size("length"),
    _size("width"),
    _size("thickness"),
    _word("Material", "material_name"),
)
