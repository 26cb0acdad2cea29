"""One cell of a table of stock, read as makers write it, and shown again.

Lengths without a unit are in the unit of their column; a thickness may be a yard's class (`8/4`); a
bad span is `300 to 420`, over the whole width, or `300 to 420 x 0 to 60` of it; several are parted
by semicolons. `300-420` reads the same.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from difflib import get_close_matches
from typing import Any

from model.errors import BadInput
from model.materials import Material
from model.read_length import parse_length
from model.stock.given import DEAREST
from model.stock.rows import Span
from model.stock.stock_record import MOST, MOST_SPANS, THINNEST
from model.units import INCH, Mm, show_bare

YES = ("yes", "y", "x", "true", "1", "on")
NO = ("", "no", "n", "false", "0", "off")


class BadCell(BadInput):
    """A cell that cannot be read: `row` counts from 0 under the headings, `column` is its name."""

    __slots__ = ("_column", "_row")

    def __init__(self, table: str, sentence: str, row: int, column: str) -> None:
        super().__init__(table, sentence)
        self._row, self._column = row, column

    @property
    def row(self) -> int:
        """The row of the table, from 0."""
        return self._row

    @property
    def column(self) -> str:
        """The name of the column, "" where the whole row is at fault."""
        return self._column

    def __reduce__(self) -> tuple[Any, ...]:
        return type(self), (self.field, self.sentence, self._row, self._column)


class Row:
    """The cells of one row by the name of their column; `units` says how bare lengths are meant."""

    def __init__(
        self, cells: Mapping[str, str], number: int, table: str, units: Mapping[str, str]
    ) -> None:
        self._cells = {name: text.strip() for name, text in cells.items()}
        self._number, self._table, self._units = number, table, units

    def refused(self, column: str, said: str) -> BadCell:
        """A refusal that says in which row and column."""
        place = f"{self._table}, row {self._number + 1}"
        return BadCell(self._table, f"{place}: {said}", self._number, column)

    def text(self, column: str, longest: int = 60) -> str:
        """A short text."""
        text = self._cells.get(column, "")
        if len(text) > longest or not text.isprintable():
            raise self.refused(column, f"{column} is longer than {longest} characters.")
        return text

    def length(self, column: str, least: Mm, most: Mm) -> Mm:
        """A length in a range."""
        text = self._cells.get(column, "")
        if not text:
            raise self.refused(column, f"{column} is empty.")
        return self._in_range(column, self._parsed(column, text), least, most)

    def thickness(self, column: str, most: Mm) -> Mm:
        """A length, or a yard's class in quarters of an inch, whatever the unit of the column."""
        text = self._cells.get(column, "")
        quarters = re.fullmatch(r"(\d{1,3})/([248])", text)
        if quarters is None:
            return self.length(column, THINNEST, most)
        inches = int(quarters[1]) / int(quarters[2])
        return self._in_range(column, round(inches * INCH, 6), THINNEST, most)

    def _parsed(self, column: str, text: str) -> Mm:
        try:
            return parse_length(text, self._units.get(column, "mm"))
        except BadInput as trouble:
            raise self.refused(column, f"{column}: {trouble}") from None

    def _in_range(self, column: str, mm: Mm, least: Mm, most: Mm) -> Mm:
        if not least <= mm <= most:
            raise self.refused(
                column, f"{column} is {mm:g} mm; it can be from {least:g} to {most:g} mm."
            )
        return mm

    def quantity(self, column: str) -> int | None:
        """A whole number from 1 up, None where the cell is empty."""
        text = self._cells.get(column, "")
        if not text:
            return None
        if not text.isascii() or not text.isdigit() or not 1 <= int(text[:9]) <= MOST:
            raise self.refused(column, f"{column} must be a whole number from 1 to {MOST}.")
        return int(text)

    def price(self, column: str) -> float | None:
        """A sum of money without its sign, None where the cell is empty."""
        text = self._cells.get(column, "")
        if not text:
            return None
        plain = text.replace(",", ".") if "." not in text else text.replace(",", "")
        if not re.fullmatch(r"\d{1,9}(\.\d{1,4})?", plain) or float(plain) > DEAREST:
            raise self.refused(
                column, f"{column} is “{text[:30]}”; write a plain sum such as 12.50."
            )
        return float(plain)

    def flag(self, column: str) -> bool:
        """Yes or no; empty is no."""
        text = self._cells.get(column, "").lower()
        if text not in YES + NO:
            raise self.refused(column, f"{column} is yes or no, not “{text[:30]}”.")
        return text in YES

    def material(self, column: str, known: Mapping[str, Material], kind: str) -> str:
        """The key of a wood or a sheet, from its key or its name."""
        text = self._cells.get(column, "")
        if not text:
            raise self.refused(column, f"{column} is empty.")
        names = {
            word: key for key, row in known.items() if row.kind == kind for word in _words(row)
        }
        wanted = _plain(text)
        if wanted in names:
            return names[wanted]
        near = get_close_matches(wanted, names, n=3, cutoff=0.5)
        meant = list(dict.fromkeys(known[names[word]].name for word in near))
        ending = f" Did you mean {' or '.join(meant)}?" if meant else ""
        what = "sheet" if kind == "sheet" else "wood"
        raise self.refused(column, f"there is no {what} called “{text[:60]}”.{ending}")

    def bad(self, column: str, length: Mm, width: Mm) -> tuple[Span, ...]:
        """The bad spans of a board."""
        spans = _parted(self._cells.get(column, ""))
        if len(spans) > MOST_SPANS:
            raise self.refused(column, f"{column} holds {len(spans)} spans; {MOST_SPANS} at most.")
        return tuple(self._span(column, each, length, width) for each in spans)

    def _span(self, column: str, text: str, length: Mm, width: Mm) -> Span:
        sides = re.split(r"\s*[x×*]\s*", text.strip().lower())
        if len(sides) > 2:
            raise self._no_span(column, text)
        x0, x1 = self._from_to(column, sides[0], text)
        y0, y1 = self._from_to(column, sides[1], text) if len(sides) == 2 else (0.0, width)
        if x1 > length + 1e-6 or y1 > width + 1e-6:
            raise self.refused(column, f"the bad span “{text.strip()}” reaches over the board.")
        return x0, y0, x1, y1

    def _from_to(self, column: str, side: str, whole: str) -> tuple[Mm, Mm]:
        """The first reading of `a-b` or `a to b` in which b lies behind a: 12-3/8-16 has one."""
        for low, high in _splits(side):
            try:
                x0, x1 = (parse_length(e, self._units.get(column, "mm")) for e in (low, high))
            except BadInput:
                continue
            if x0 < x1:
                return x0, x1
        raise self._no_span(column, whole)

    def _no_span(self, column: str, text: str) -> BadCell:
        return self.refused(
            column,
            f"“{text.strip()[:60]}” is no bad span; write 300 to 420, or 300 to 420 x 0 to 60 for "
            "part of the width, and semicolons between spans.",
        )


def _words(material: Material) -> Iterator[str]:
    """What a wood or sheet may be called: its key, its name, the name without its brackets."""
    yield _plain(material.key)
    yield _plain(material.name)
    yield _plain(re.sub(r"\(.*?\)", "", material.name))


def _plain(text: str) -> str:
    return " ".join(re.sub(r"[^\w./]+|_", " ", text.casefold()).split())


def _parted(text: str) -> list[str]:
    return [each for each in re.split(r"[;\n]", text) if each.strip()]


def _splits(side: str) -> Iterator[tuple[str, str]]:
    if " to " in side:
        low, _, high = side.partition(" to ")
        yield low, high
    for dash in re.finditer(r"[-\u2013\u2014]", side):
        yield side[: dash.start()], side[dash.end() :]


# ---------------------------------------------------------------- showing


def shown_thickness(mm: Mm, is_rough: bool, unit: str) -> str:
    """A rough class as a yard says it, every other thickness as a length."""
    quarters = mm / INCH * 4
    if is_rough and abs(quarters - round(quarters)) < 1e-3 and round(quarters) >= 3:
        return f"{round(quarters)}/4"
    return show_bare(mm, unit)


def shown_bad(bad: tuple[Span, ...], width: Mm, unit: str) -> str:
    """Bad spans as they are typed."""
    return "; ".join(_shown_span(span, width, unit) for span in bad)


def _shown_span(span: Span, width: Mm, unit: str) -> str:
    x0, y0, x1, y1 = span
    along = f"{show_bare(x0, unit)} to {show_bare(x1, unit)}"
    if y0 <= 0 and y1 >= width:
        return along
    return f"{along} x {show_bare(y0, unit)} to {show_bare(y1, unit)}"
