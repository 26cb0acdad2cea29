"""The coats of a finish: how each goes on, what it takes, and what is done between."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from model.bed import Bed
from model.building.words import counted, plural
from model.cost.buy import Need
from model.cost.coats import Coat, Grit, abrasive_needs, coating_needs
from model.cost.surfaces import kind_of
from model.parts.marks import Mark
from model.shop.order import say

PRACTICE = "common practice, no source"


@dataclass(frozen=True, kw_only=True)
class Pass:
    """One going over: what is done, how much it takes ("" for what is not measured), and where the
    figures come from.
    """

    key: str
    title: str
    text: str
    amount: str = ""
    source: str = PRACTICE


def coat_passes(
    bed: Bed, done: list[Mark], on: tuple[Coat, ...], sanded: tuple[Grit, ...]
) -> Iterator[Pass]:
    """Every coating on the marks that are `done`, then what is rubbed down between the coats."""
    needs = {need.key: need for need in coating_needs(bed, on)}
    between = next((grit for grit in sanded if grit.is_between), None)
    for coat in on:
        row = coat.coating
        yield Pass(
            key=f"coat/{row.key}",
            title=f"{row.name}: {counted(coat.coats)} {plural('coat', coat.coats)}",
            text=_how(row.key, done, coat, between),
            amount=amount_of(needs[f"finish/{row.key}"]),
            source=row.source,
        )
    if between is not None:
        need = next(each for each in abrasive_needs((between,), bed["shown_unit"]))
        yield Pass(
            key="sand/between",
            title=f"Between coats: {between.abrasive.grit} grit, by hand",
            text="Light strokes until the surface is dull and smooth, edges left alone; wipe the "
            "dust off. Never after the last coat.",
            amount=amount_of(need),
            source=between.abrasive.source,
        )


def _how(key: str, done: list[Mark], coat: Coat, between: Grit | None) -> str:
    dry = "Let each coat dry as long as its label says"
    rub = ", and rub it down lightly before the next" if between is not None else ""
    if key == "sealer":
        boards = say.listed([m.mark for m in done if kind_of(m.made_of) == "fibreboard"])
        return (
            f"On the fibreboard parts, {boards}: faces once over, the sawn edges until they no "
            f"longer drink. {dry}{rub}."
        )
    if key == "primer":
        return (
            "All over, thin and even: it blocks the stains that knots and bark bleed through "
            f"paint. {dry}{rub}. Fill what it shows up, and prime the filling."
        )
    if key == "oil":
        return (
            "Flood it on, leave it for the time on its label, and wipe off all that has not gone "
            f"in. {dry} before the next."
        )
    return (
        "Thin coats, insides and edges first, then faces from end to end; both faces of wide parts "
        f"get as many coats, or they cup. {dry}{rub}."
    )


def cured(on: tuple[Coat, ...]) -> Iterator[Pass]:
    """The wait before fittings go on."""
    if on:
        yield Pass(
            key="cure",
            title="Let it harden",
            text="Dry to the touch is not hard: wait as long as the label says before fittings go "
            "on and the bed is put together, and let it air out before anybody sleeps in it.",
        )


def amount_of(need: Need) -> str:
    """`0.56 quarts: 2 coats on 12 square feet`, `11 discs: 104 square feet`."""
    told = f"{need.quantity:g} {plural(need.unit, 1 if need.quantity == 1 else 2)}"
    return f"{told}: {need.size}" if need.size else told
