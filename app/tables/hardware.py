"""What is bought and not cut."""

from __future__ import annotations

from app.tables.cells import natural, plain, size_text, sized
from app.tables.rows import Column


def _size(name: str, axis: int) -> Column:
    return Column(
        sized(name), lambda h, unit: size_text(h.size[axis], unit), lambda h: h.size[axis], True
    )


HARDWARE_COLUMNS = (
    Column(plain("Code"), lambda h, _: h.code, lambda h: natural(h.code)),
    Column(plain("Pieces"), lambda h, _: f"{h.quantity}", lambda h: h.quantity, True),
    _size("Length", 0),
    _size("Width", 1),
    _size("Thickness", 2),
    Column(plain("Hardware"), lambda h, _: h.name, lambda h: natural(h.name)),
)
