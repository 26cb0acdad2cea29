"""What the client's page says and offers, as HTML: sizes, buttons of the drawers, finishes.

Every name goes through `escape`, and what others typed is written in the direction it is read.
"""

from __future__ import annotations

import base64
from html import escape
from itertools import groupby

from model.bed import Bed
from model.exports.client_finishes import Finishes
from model.exports.drawer_ways import DrawerWay, drawer_ways
from model.exports.summary import overall
from model.units import Mm, show_length, tape_grid

_ROWS = {"left": "Left side", "right": "Right side", "foot": "Foot"}

_BESIDE = 4  # buttons that have room beside the name of their row


def title(bed: Bed) -> str:
    """The name of the bed, and of the shop where it has one."""
    return " – ".join(each for each in (bed.design.name, bed.design.publisher.name) if each)


def shop(bed: Bed) -> str:
    """The shop's logo and name; nothing where none is set."""
    who = bed.design.publisher
    if not who.name and not who.logo:
        return ""
    logo = ""
    if who.logo:
        # Beside its name the logo says nothing more; alone it has no words that we know.
        content = base64.b64encode(who.logo).decode("ascii")
        logo = f'<img src="data:image/png;base64,{content}" alt="">'
    return f'<p class="shop" dir="auto">{logo}{escape(who.name)}</p>'


def described(bed: Bed) -> str:
    """The picture in words, for those who cannot see it."""
    count = len(drawer_ways(bed))
    drawers = f" with {count} {'drawer' if count == 1 else 'drawers'} under it" if count else ""
    return f"The bed {bed.design.name}{drawers}, seen from its right foot corner"


def drawer_buttons(bed: Bed) -> str:
    """A button for each drawer, row by row, and one for all; nothing without drawers."""
    ways = drawer_ways(bed)
    if not ways:
        return ""
    rows = [_row(row, tuple(inside)) for row, inside in groupby(ways, lambda way: way.row)]
    if len(ways) > 1:
        rows.append('<p class="row"><button type="button" data-all-drawers>Open all</button></p>')
    return "\n".join(["<fieldset>", "<legend>Drawers</legend>", *rows, "</fieldset>"])


def _row(row: str, ways: tuple[DrawerWay, ...]) -> str:
    buttons = "\n".join(
        f'<button type="button" data-drawer="{way.name}" aria-pressed="false" '
        f'aria-label="Open drawer {way.number}, {_ROWS[row].lower()}">{way.number}</button>'
        for way in ways
    )
    kind = "row many" if len(ways) > _BESIDE else "row"
    return f'<p class="{kind}"><span>{_ROWS[row]}</span>\n{buttons}</p>'


def finish_choice(finishes: Finishes) -> str:
    """Wood and paints, one of them chosen."""
    rows = [
        f'<label class="paint"><input type="radio" name="finish" data-finish="{at}" '
        f'data-colour="{each.swatch}"{" checked" if at == finishes.first else ""}>'
        f"<i></i><span>{escape(each.name)}</span></label>"
        for at, each in enumerate(finishes.all)
    ]
    inside = "\n".join(rows)
    legend = "<legend>Finish</legend>"
    return f'<fieldset>\n{legend}\n<div class="row paints">\n{inside}\n</div>\n</fieldset>'


def mattress_switch() -> str:
    """The mattress can be taken off, to see the slats."""
    words = "<span>Mattress</span>"
    return f'<label class="switch"><input type="checkbox" data-mattress checked>{words}</label>'


def sizes(bed: Bed) -> str:
    """Overall sizes, and what stands in the room when drawers are open."""
    length, width, height = overall(bed).values()
    across, along = bed["mattress_across"], bed["mattress_along"]
    rows = [
        ("Length", _shown(bed, length)),
        ("Width", _shown(bed, width)),
        ("Height", _shown(bed, height)),
        ("Sleeping height", _shown(bed, bed["deck_top"] + bed["mattress_high"])),
        ("Mattress", f"{_shown(bed, across)} × {_shown(bed, along)}"),
    ]
    for row, inside in groupby(drawer_ways(bed), lambda way: way.row):
        first, *others = inside
        come = "drawers come out" if others else "drawer comes out"
        rows.append((f"{row.capitalize()} {come}", _shown(bed, first.travel)))
    return "\n".join(f"<dt>{escape(name)}</dt><dd>{escape(size)}</dd>" for name, size in rows)


def _shown(bed: Bed, size: Mm) -> str:
    """As a tape is read, without a sign that it was rounded: nobody saws by this page."""
    unit = bed["shown_unit"]
    return show_length(size, unit, tape_grid(unit).step).removeprefix("~")
