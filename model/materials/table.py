"""How a table of the trade becomes records.

A row class names the columns and their kinds: a field is a column of the same name, so that a
figure has one name in the CSV, in the record and in a message. Tables are read once, when first
asked for; a maker's own rows are read by the same code and refused with the same sentences.
"""

from __future__ import annotations

import csv
import io
import math
import types
from collections.abc import Iterable, Mapping
from dataclasses import MISSING, fields
from functools import lru_cache
from typing import (
    Annotated,
    Any,
    ClassVar,
    Literal,
    Protocol,
    TypeVar,
    Union,
    get_args,
    get_origin,
    get_type_hints,
)

from model.errors import BadInput


class Keyed(Protocol):
    """A row that can be asked for by its key."""

    __dataclass_fields__: ClassVar[dict[str, Any]]

    @property
    def key(self) -> str: ...


Row = TypeVar("Row", bound=Keyed)


class _Unreadable(Exception):
    """What a cell should have been, for the sentence about it."""


def shipped(name: str, row: type[Row]) -> dict[str, Row]:
    """The rows of a table that comes with the program, by key."""
    from importlib.resources import files  # here, because most runs need few tables or none

    return rows_of(files("resources").joinpath(name).read_text(encoding="utf-8"), row, name)


def rows_of(text: str, row: type[Row], name: str) -> dict[str, Row]:
    """The rows of a CSV text with a heading line, by key, in their order.

    `name` is what the sentences call the table. Refused: a missing or unknown column, a cell of the
    wrong kind, a key that stands twice.
    """
    reader = csv.DictReader(io.StringIO(text.removeprefix("\ufeff")))
    _check_headings(reader.fieldnames or (), row, name)
    found: dict[str, Row] = {}
    for cells in reader:
        made = _row(cells, row, f"{name}, line {reader.line_num}")
        if made.key in found:
            raise BadInput(name, f"{name}, line {reader.line_num}: “{made.key}” stands twice.")
        found[made.key] = made
    return found


def cell_of(text: str, row: type[Keyed], column: str, place: str) -> Any:
    """One cell as its column has it; refused with the sentence that a whole table gets.

    `place` says where it stands: `my_woods.csv, line 3`.
    """
    try:
        return _value(text.strip(), _kinds(row)[column])
    except _Unreadable as wanted:
        shown = f"is “{text}”, not" if text.strip() else "is empty; it takes"
        sentence = f"{place}: {column} {shown} {wanted}."
        raise BadInput(place.partition(",")[0], sentence) from None


def beside(rows: Mapping[str, Row], own: Iterable[Row]) -> Mapping[str, Row]:
    """The table with the maker's own rows after it; one of the same key takes the other's place."""
    return types.MappingProxyType({**rows, **{row.key: row for row in own}})


def row_of(rows: Mapping[str, Row], key: str, field: str) -> Row:
    """The row with that key; the sentence names the nearest keys when there is none."""
    if key in rows:
        return rows[key]
    from difflib import get_close_matches

    near = get_close_matches(key, rows, n=4, cutoff=0.4) or list(rows)[:4]
    raise BadInput(
        field, f"There is no {field} called “{key}”. Some that exist: {', '.join(near)}."
    )


def _check_headings(headings: Iterable[str], row: type[Row], name: str) -> None:
    known = {field.name: field.default is MISSING for field in fields(row)}
    given = tuple(headings)
    if missing := [column for column, needed in known.items() if needed and column not in given]:
        raise BadInput(name, f"{name} lacks the column “{missing[0]}”.")
    if unknown := [column for column in given if column not in known]:
        raise BadInput(
            name,
            f"{name} has a column “{unknown[0]}” that is not known. Known: {', '.join(known)}.",
        )


def _row(cells: dict[str | Any, str | Any], row: type[Row], place: str) -> Row:
    if None in cells or None in cells.values():
        raise BadInput(
            place.partition(",")[0], f"{place}: the row and the headings differ in length."
        )
    return row(**{column: cell_of(text, row, column, place) for column, text in cells.items()})


@lru_cache
def _kinds(row: type[Any]) -> dict[str, Any]:
    return get_type_hints(row)


def _value(text: str, kind: Any) -> Any:
    if get_origin(kind) is Annotated:
        return _value(text, get_args(kind)[0])
    if get_origin(kind) in (Union, types.UnionType):
        return _value(text, get_args(kind)[0]) if text else None
    if get_origin(kind) is Literal:
        return _one_of(text, get_args(kind))
    if get_origin(kind) is tuple:
        return tuple(_value(part.strip(), get_args(kind)[0]) for part in text.split(";") if part)
    if kind is float:
        return _number(text)
    if kind is int:
        return _whole(text)
    return text


def _one_of(text: str, words: tuple[str, ...]) -> str:
    if text not in words:
        raise _Unreadable(f"one of {', '.join(words)}")
    return text


def _number(text: str) -> float:
    try:
        number = float(text)
    except ValueError:
        raise _Unreadable("a number") from None
    if not math.isfinite(number) or number < 0:
        raise _Unreadable("a number of zero or more")
    return number


def _whole(text: str) -> int:
    if not text.isascii() or not text.isdigit():
        raise _Unreadable("a whole number")
    return int(text)
