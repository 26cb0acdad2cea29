"""The coats of a finish: how each goes on, what it takes, and what is done between."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from model.bed import Bed
from model.building.joints import FLOATING
from model.building.words import counted, plural
from model.cost.buy import Need
from model.cost.coats import Coat, Grit, abrasive_needs, coating_needs
from model.cost.surfaces import kind_of
from model.parts.marks import Mark
from model.shop.order import say

PRACTICE = "common practice, no source"
SEALER = "sealer"


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
    """Every coating on the marks that are `done`, but for the sealer, which goes on before anything
    is glued; then what is rubbed down between the coats.
    """
    between = _between(sanded)
    yield from (_coated(bed, done, each, on, between) for each in on if each.coating.key != SEALER)
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


def sealed(
    bed: Bed, done: list[Mark], on: tuple[Coat, ...], sanded: tuple[Grit, ...]
) -> Iterator[Pass]:
    """The sealer on fibreboard, while its sawn edges can still be reached."""
    between = _between(sanded)
    yield from (_coated(bed, done, each, on, between) for each in on if each.coating.key == SEALER)


def _between(sanded: tuple[Grit, ...]) -> Grit | None:
    return next((grit for grit in sanded if grit.is_between), None)


def _coated(
    bed: Bed, done: list[Mark], coat: Coat, on: tuple[Coat, ...], between: Grit | None
) -> Pass:
    row = coat.coating
    needs = {need.key: need for need in coating_needs(bed, on)}
    return Pass(
        key=f"coat/{row.key}",
        title=f"{row.name}: {counted(coat.coats)} {plural('coat', coat.coats)}",
        text=_how(row.key, done, coat, between),
        amount=amount_of(needs[f"finish/{row.key}"]),
        source=row.source,
    )


def _sealing(done: list[Mark]) -> str:
    """Which parts are sealed, and which of them are shut in grooves."""
    boards = [mark for mark in done if kind_of(mark.made_of) == "fibreboard"]
    shut = [m.mark for m in boards if any(hold.joint in FLOATING for hold in m.part.held)]
    told = (
        f"On the fibreboard parts, {say.listed([m.mark for m in boards])}, while they are still "
        "single: faces once over, the sawn edges until they no longer drink. Glue faces stay bare."
    )
    if not shut:
        return told
    lies, it = ("lies in grooves", "its") if len(shut) == 1 else ("lie in grooves", "their")
    return (
        f"{told} {say.listed(shut)} {lies}: once the frame is glued, {it} edges are out of reach. "
        "Keep the coat thin where a part slides into a groove."
    )


def _how(key: str, done: list[Mark], coat: Coat, between: Grit | None) -> str:
    dry = "Let each coat dry as long as its label says"
    rub = ", and rub it down lightly before the next" if between is not None else ""
    if key == SEALER:
        return f"{_sealing(done)} {dry}{rub}."
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
