"""Pages that are quick to draw: a square frame of two pieces, a link and some words on Letter."""

from __future__ import annotations

from model.cutting.record import Box
from model.drawings.paper import Drawing, Item, Ring, Stroke, Text, outline
from model.planset.page import LETTER, Link, Page

OUTER, INNER = Box(40.0, 100.0, 180.0, 240.0), Box(80.0, 140.0, 140.0, 200.0)
WAY = Box(20.0, 20.0, 60.0, 30.0)


def sample_page(key: str = "sides", size: str = '27 3/8"') -> Page:
    """A page with `piece/S1-1` around `piece/D1-2`, and a way to the page of S1."""
    items: tuple[Item, ...] = (
        Text((17.0, 260.0), "Sides", 4.6, "left", bold=True),
        outline(OUTER, "wide", "piece/S1-1"),
        outline(INNER, "narrow", "piece/D1-2"),
        Ring((160.0, 220.0), 3.0, "narrow", about="piece/S1-1"),
        Stroke(((20.0, 20.0), (60.0, 20.0)), "fine"),
        Text((40.0, 25.0), "S1", 2.0),
        Text((110.0, 90.0), size, 2.0),
    )
    drawing = Drawing(width=LETTER.width, height=LETTER.height, scale=1.0, items=items)
    return Page(key=key, title="Sides", drawing=drawing, links=(Link(WAY, "part/S1"),))
