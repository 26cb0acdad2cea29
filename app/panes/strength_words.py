"""What the strength pane says in words of a load, an effect, a piece."""

from __future__ import annotations

import html
from collections.abc import Sequence

from app.style import SPRUCE
from app.tables.cells import quantity_text
from app.tables.effects import EffectRow
from app.tables.loads import LoadRow, use_text
from model.brief import all_choices
from model.brief.words import full_label, in_unit
from model.structure.record import Carried
from model.structure.worst import ALL, LoadUse, worst_effects, worst_loads
from model.units import show_length

ALL_TITLE = "The worst of all loads"
ALL_REASON = "Each piece in the load that is hardest on it."
CAUTION = (
    "A maker's check of the loads listed here, not an engineer's certificate. Follow the local "
    "code, and ask a licensed or qualified person where the law or the load asks for one."
)


def load_rows(carried: Carried, labels: Sequence[str]) -> tuple[LoadRow, ...]:
    """All loads together, and each of them."""
    rows = [_load_row(carried, each, labels) for each in worst_loads(carried)]
    together = [
        row._replace(key=ALL, title=ALL_TITLE, reason=ALL_REASON, source="", choices=())
        for row in rows[:1]
    ]
    return (*together, *rows)


def _load_row(carried: Carried, worst: LoadUse, labels: Sequence[str]) -> LoadRow:
    case = carried.cases[worst.case]
    return LoadRow(
        case.key, case.title, worst.use, worst.piece, labels[worst.piece], worst.kind,
        case.reason, case.source, case.choices,
    )  # fmt: skip


def effect_rows(carried: Carried, labels: Sequence[str]) -> tuple[EffectRow, ...]:
    """Every effect on every piece, the hardest first."""
    return tuple(
        EffectRow(effect, labels[effect.piece], carried.cases[effect.case].title)
        for effect in worst_effects(carried)
    )


def load_text(row: LoadRow, unit: str) -> str:
    """A load in full: what it stands for, who gives it, and where an assumption is changed."""
    title, reason = (html.escape(in_unit(each, unit)) for each in (row.title, row.reason))
    told = f"<b>{title}.</b> {reason}"
    if not row.key:
        return told
    if not row.is_assumed:
        return f"{told} <i>Source of the load: {html.escape(row.source)}.</i>"
    known = all_choices()
    links = ", ".join(
        f'<a href="choice:{name}" style="color:{SPRUCE}">{html.escape(full_label(known[name]))}</a>'
        for name in row.choices
        if name in known
    )
    change = f" You can change: {links}." if links else ""
    return f"{told} <i>Assumed: no publication gives this load.</i>{change}"


def effect_text(row: EffectRow, unit: str) -> str:
    """An effect in full."""
    effect = row.effect
    value, limit = (quantity_text(n, effect.unit, unit) for n in (effect.value, effect.limit))
    where = f"{show_length(effect.at, unit)} from its near end"
    return (
        f"<b>{html.escape(row.words)}, {effect.kind}:</b> {value} of {limit}, "
        f"{use_text(effect.use)}, {where}. Load: {html.escape(in_unit(row.load, unit))}. "
        f"<i>Source of the limit: {html.escape(effect.source)}.</i>"
    )
