"""What the load does to every piece of the frame, the hardest first."""

from __future__ import annotations

from typing import NamedTuple

from app.style import verdict_icon
from app.tables.cells import natural, plain, quantity_text
from app.tables.loads import holds_icon, use_text
from app.tables.rows import Column
from model.brief.words import in_unit
from model.structure.record import Effect


class EffectRow(NamedTuple):
    """One effect on one piece, with the names of both as the maker reads them."""

    effect: Effect
    words: str
    load: str


def _quantity(name: str) -> Column:
    return Column(
        plain(name.capitalize()),
        lambda r, unit: quantity_text(getattr(r.effect, name), r.effect.unit, unit),
        lambda r: getattr(r.effect, name),
        is_number=True,
    )


EFFECT_COLUMNS = (
    Column(
        plain("Uses"), lambda r, _: use_text(r.effect.use), lambda r: -r.effect.use, True,
        icon=lambda r: verdict_icon(holds_icon(r.effect.use)),
    ),
    Column(plain("Piece"), lambda r, _: r.words, lambda r: natural(r.words)),
    Column(plain("What"), lambda r, _: r.effect.kind, lambda r: r.effect.kind),
    _quantity("value"),
    _quantity("limit"),
    Column(plain("Load"), lambda r, unit: in_unit(r.load, unit), lambda r: natural(r.load)),
    Column(plain("Source of the limit"), lambda r, _: r.effect.source, lambda r: r.effect.source),
)  # fmt: skip
