"""DXF files opened again, and what is measured in them."""

from __future__ import annotations

import io
import math
from collections.abc import Iterator
from fractions import Fraction
from typing import Any, NamedTuple

from ezdxf import bbox, filemanagement
from ezdxf.render.dim_base import format_text

INSUNITS = {1: 25.4, 4: 1.0}  # mm to a unit. Source: DXF reference, header variable $INSUNITS


class Told(NamedTuple):
    """A dimension: what a reader measures, mm, and the words that it shows."""

    size: float
    words: str
    is_override: bool


def opened(content: bytes) -> Any:
    """The document, which the reader's auditor finds nothing wrong with and mends nothing in."""
    document = filemanagement.read(io.StringIO(content.decode("utf-8").replace("\r\n", "\n")))
    auditor = document.audit()
    assert [each.message for each in (*auditor.errors, *auditor.fixes)] == []
    return document


def mm_per_unit(document: Any) -> float:
    return INSUNITS[document.header["$INSUNITS"]]


def extents(
    document: Any, *kinds: str, on: str = "", but: str = ""
) -> tuple[float, float, float, float]:
    """The box around all of some kinds that is on a layer, or not on one, mm."""
    some = [
        each for each in document.modelspace()
        if (not kinds or each.dxftype() in kinds)
        and each.dxf.layer != but and (not on or each.dxf.layer == on)
    ]  # fmt: skip
    box, mm = bbox.extents(some, fast=False), mm_per_unit(document)
    (x0, y0, _), (x1, y1, _) = box.extmin, box.extmax
    return (x0 * mm, y0 * mm, x1 * mm, y1 * mm)


def dimensions(document: Any) -> Iterator[Told]:
    """All of them, in their order."""
    mm = mm_per_unit(document)
    for each in document.modelspace().query("DIMENSION"):
        style = each.override()
        value = each.get_measurement() * style.get("dimlfac", 1.0)
        words = each.dxf.get("text", "") or "<>"
        has_figures = "<>" in words
        yield Told(value * mm, words.replace("<>", shown(value, style)), not has_figures)


def shown(value: float, style: Any) -> str:
    """What a dimension without words of its own shows: decimals or fractions by its style.

    Source: DXF reference, DIMLUNIT 2 decimal and 5 fractional, DIMDEC as the power of two that a
    fraction goes down to; decimals by the reader's own formatting.
    """
    if style.get("dimlunit") == 2:
        point = chr(style.get("dimdsep"))
        return format_text(value, None, style.get("dimdec"), style.get("dimzin"), point)
    parts = 2 ** style.get("dimdec")
    steps = Fraction(math.floor(value * parts + 0.5), parts)
    whole = int(steps)
    rest = steps - whole
    return f"{whole} {rest}" if whole and rest else str(rest or whole)


def plain(words: str) -> str:
    """Words without the codes of the file."""
    for code, sign in (("%%c", "⌀"), ("%%d", "°"), ("%%p", "±"), ("\\{", "{"), ("\\}", "}")):
        words = words.replace(code, sign)
    return words


def area(points: list[tuple[float, float]]) -> float:
    """Of a loop, positive where it turns left. Source: the shoelace formula."""
    ends = zip(points, points[1:] + points[:1], strict=True)
    return sum(a[0] * b[1] - b[0] * a[1] for a, b in ends) / 2
