"""`quote.txt`: what the client is asked, as plain text."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from textwrap import wrap

from model.bed import Bed
from model.cost.cost_sheet import cost_sheet
from model.cost.costing import Costing, costing_of
from model.cost.money import shown
from model.cost.quote import Quote, quote
from model.exports.shopping_csv import EXAMPLE
from model.units import show_length

COLUMNS = 80

_FINISHES = {
    "painted": "painted",
    "clear": "with a clear finish",
    "oil": "oiled",
    "none": "without finish",
}


def write(bed: Bed, path: Path) -> None:
    """Write the quote; a draft says what is missing."""
    path.write_bytes(content(bed, costing_of(bed)))


def content(bed: Bed, costing: Costing) -> bytes:
    """The bytes of the file."""
    return ("\n".join(lines(bed, costing)) + "\n").encode("utf-8")


def lines(bed: Bed, costing: Costing, columns: int = COLUMNS) -> Iterator[str]:
    """The quote in lines of at most so many characters."""
    asked = quote(cost_sheet(costing), costing)
    yield f"{'DRAFT of a quote' if asked.is_draft else 'Quote'}: {bed.design.name}"
    if asked.is_example:
        yield f"With {EXAMPLE}: invented for the demo."
    yield ""
    for sentence in description(bed):
        yield from wrap(sentence, columns)
    yield ""
    yield from _amounts(asked, columns)
    yield ""
    yield from _terms(asked, columns)


def description(bed: Bed) -> Iterator[str]:
    """What is sold, in sentences for the client."""
    unit = bed["shown_unit"]
    size = (
        f"{show_length(bed['mattress_across'], unit)} x {show_length(bed['mattress_along'], unit)}"
    )
    high = show_length(bed["deck_top"] + bed["mattress_high"], unit)
    yield f"A bed for a mattress of {size}, {_FINISHES[bed['finish']]}."
    thick = show_length(bed["mattress_high"], unit)
    yield f"Sleeping height with a mattress {thick} thick: {high}."
    yield f"Frame of {bed['frame_wood'].name}."
    drawers = len({group for group in bed.pieces.groups if group})
    if drawers:
        yield f"{drawers} {'drawer' if drawers == 1 else 'drawers'} under the bed."
    parts = "wood and fittings" if bed["finish"] == "none" else "wood, fittings and finish"
    yield f"Included: all {parts}. Not included: the mattress."


def _amounts(asked: Quote, columns: int) -> Iterator[str]:
    for line in asked.lines:
        yield _amount(line.name, shown(line.amount, asked.currency), columns)
    yield _amount("Sum", shown(asked.net, asked.currency), columns)
    if asked.tax_share:
        name = f"Tax, {round(asked.tax_share * 100, 6):g} %"
        yield _amount(name, shown(asked.tax, asked.currency), columns)
        yield _amount("Total with tax", shown(asked.total, asked.currency), columns)


def _amount(name: str, amount: str, columns: int) -> str:
    room = columns - len(amount) - 2
    return f"{name[:room]:<{room}}  {amount}"


def _terms(asked: Quote, columns: int) -> Iterator[str]:
    if asked.is_draft:
        yield from wrap("This is a draft; its sums are incomplete:", columns)
        for sentence in asked.missing:
            yield from wrap(sentence, columns, initial_indent="- ", subsequent_indent="  ")
    elif asked.valid_days:
        yield f"Date: ____________   This quote stands for {asked.valid_days} days from its date."
    for paragraph in asked.terms.splitlines():
        yield from wrap(paragraph, columns) or [""]
