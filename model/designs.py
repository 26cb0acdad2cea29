"""Design files: what the maker decided, as JSON that a person can read.

`{"format": "bedwright-design", "version": 1, "name": ..., "choices": {full name: value}}`. Lengths
are mm, or text with a unit; every choice is written, so that a design stays the same bed when a
later program has other defaults. `own` holds the maker's own woods and sheets, `stock` what there
is to cut from, `prices` the price list, `progress` the plans in use and what is done, `publisher`
the shop's name and logo, each where there is any, so that the design opens elsewhere; `kept` what
a later version had to say and this one does not use.
"""

from __future__ import annotations

import json
import math
import os
import stat
import unicodedata
from collections.abc import Iterable, Mapping
from difflib import get_close_matches
from pathlib import Path
from typing import Any

from model import publisher
from model.bed import Design
from model.brief import all_choices
from model.brief.declare import Choice
from model.cost.read_prices import prices_of_table
from model.errors import BadInput
from model.exports.files import replace_file, told_in_a_sentence
from model.exports.plain import json_bytes
from model.materials import OwnRows
from model.materials.own_rows import record_of_rows, rows_of_record, rows_of_table
from model.stock import price_record, progress_record, stock_record
from model.stock.prices import Prices

FORMAT = "bedwright-design"
VERSION = 1
SUFFIX = ".bedwright"

_KEYS = (
    "format", "version", "name", "choices", "own", "stock", "prices", "progress", "publisher",
    "kept",
)  # fmt: skip
_LARGEST = 4_000_000  # bytes: a design with its plans has some hundred kB; more is another file
_LONGEST_NAME = 120  # characters: a name must fit the head of a page
_LONGEST_TEXT = 200  # characters: more is a slip of the clipboard, not a value
_DEEPEST = 20  # levels inside `kept`
_HUGE = 1e12  # mm: past this, figures only serve to break something
_TURNING = frozenset("\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069")


# ---------------------------------------------------------------- reading


def read(path: Path | str) -> Design:
    """The design in a file. Refused with BadInput: whatever is not a whole, sound design."""
    return from_bytes(_content(Path(path)))


def from_bytes(content: bytes) -> Design:
    """The design that a file's bytes hold; refused as `read` refuses."""
    record = _record(content)
    _check_format(record)
    for key in record:
        if key not in _KEYS:
            raise BadInput(key, f"{_shown(key)} is no part of a design{nearest(key, _KEYS)}")
    own = rows_of_record(record.get("own", {}), "own")
    return Design(
        name=checked_name(record.get("name", Design.name)),
        choices=_choices(record.get("choices", {}), own),
        own=own,
        stock=stock_record.stock_of(record.get("stock", {})),
        prices=price_record.prices_of(record.get("prices", {})),
        progress=progress_record.progress_of(record.get("progress", {})),
        publisher=publisher.publisher_of(record.get("publisher", {})),
        kept=_kept(record.get("kept", {})),
    )


def read_own(path: Path | str) -> OwnRows:
    """The woods or sheets in a table of the maker's own; refused with BadInput: what is none."""
    return rows_of_table(_table(path), Path(path).name)


def read_prices(path: Path | str, start: Prices, unit: str = "mm") -> Prices:
    """A price list with the rows of a table in it; refused with BadInput: what is none. Rows that
    name no measure are told as lengths are shown in `unit`.
    """
    return prices_of_table(_table(path), Path(path).name, start, unit)


def _table(path: Path | str) -> str:
    try:
        return _content(Path(path)).decode("utf-8-sig")
    except UnicodeDecodeError:
        raise BadInput("file", f"{path} is not text in UTF-8; save the table as CSV.") from None


def _content(path: Path) -> bytes:
    with told_in_a_sentence(f"{path} cannot be read"):
        # A pipe or a device could keep us reading for ever: look before opening.
        if not stat.S_ISREG(path.stat().st_mode) and not path.is_dir():
            raise BadInput("file", f"{path} cannot be read: it is a device, not a file.")
        with path.open("rb") as file:
            content = file.read(_LARGEST + 1)
    if len(content) > _LARGEST:
        raise BadInput(
            "file", f"{path} is larger than {_LARGEST // 1000} kB; that is no design file."
        )
    return content


def _record(content: bytes) -> dict[str, Any]:
    try:
        text = content.decode("utf-8-sig")
        record = json.loads(text, object_pairs_hook=_no_key_twice, parse_int=_whole)
    except UnicodeDecodeError:
        raise BadInput("file", "The file is not a design: it is not text in UTF-8.") from None
    except json.JSONDecodeError as trouble:
        raise BadInput("file", _not_json(text, trouble)) from None
    except RecursionError:
        raise BadInput("file", "The file is not a design: its brackets go too deep.") from None
    if not isinstance(record, dict):
        raise BadInput("file", "The file is not a design: it does not begin with a brace {.")
    return record


def _not_json(text: str, trouble: json.JSONDecodeError) -> str:
    if not text.strip():
        return "The file is empty; a design was never written to it."
    if trouble.pos >= len(text.rstrip()):
        return "The file ends too early: the rest of the design is missing."
    where = f"line {trouble.lineno}, column {trouble.colno}"
    return f"The file is not a design: {where} is not understood ({trouble.msg})."


def _no_key_twice(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    record: dict[str, Any] = {}
    for key, value in pairs:
        if key in record:
            raise BadInput(key, f"{_shown(key)} is given twice; which one counts is not known.")
        record[key] = value
    return record


def _whole(figures: str) -> float:
    """A whole number; one with hundreds of figures is endless, and its field will be told so."""
    return (
        int(figures)
        if len(figures) < 20
        else math.copysign(math.inf, -1 if figures[0] == "-" else 1)
    )


def _check_format(record: Mapping[str, Any]) -> None:
    if record.get("format") != FORMAT:
        raise BadInput("format", f'The file is not a Bedwright design: "format" is not "{FORMAT}".')
    version = record.get("version")
    if type(version) is not int or version < 1:
        raise BadInput("version", "version must be a whole number from 1 up.")
    if version > VERSION:
        raise BadInput(
            "version",
            f"version is {version}: a newer Bedwright saved this design. This one reads designs "
            f"up to version {VERSION}: open it with the newer program.",
        )


def checked_name(name: object) -> str:
    """A design's name, fit for a page's head and a table's cell; refused with BadInput."""
    if not isinstance(name, str):
        raise BadInput("name", "name must be a text.")
    name = name.strip()
    if not name:
        raise BadInput("name", "name is empty; give the design a name.")
    if len(name) > _LONGEST_NAME:
        raise BadInput("name", f"name is longer than {_LONGEST_NAME} characters.")
    if any(unicodedata.category(c) in ("Cc", "Cs", "Zl", "Zp") or c in _TURNING for c in name):
        raise BadInput("name", "name holds characters that cannot be printed.")
    return name


def _choices(choices: Any, own: OwnRows) -> dict[str, Any]:
    if not isinstance(choices, dict):
        raise BadInput("choices", "choices must be a list of names and values in braces {}.")
    known = all_choices(own)
    for name in choices:
        if name not in known:
            raise unknown_choice(name)
    checked = {n: checked_value(c, choices[n]) for n, c in known.items() if n in choices}
    return {n: value for n, value in checked.items() if value != known[n].default}


def unknown_choice(name: str) -> BadInput:
    """The refusal of a choice that there is not, with the names that come nearest."""
    known = all_choices()
    return BadInput(name, f"There is no choice called {_shown(name)}{nearest(name, known)}")


def checked_value(choice: Choice, value: Any, unit: str = "mm") -> Any:
    """A value as the design keeps it: mm, whole number, yes or no, or key; refused with BadInput.

    `unit` is that of a length that is written without one.
    """
    name = choice.name
    if isinstance(value, dict | list):
        raise BadInput(name, f"{name} takes one value, not a list of them.")
    if isinstance(value, str) and len(value) > _LONGEST_TEXT:
        raise BadInput(name, f"{name} is a text of {len(value)} characters; that is no value.")
    if isinstance(value, int | float) and not isinstance(value, bool) and not abs(value) < _HUGE:
        raise BadInput(name, f"{name} is not a number that a bed could have.")
    if value is None and not choice.may_be_empty:
        raise BadInput(name, f"{name} is empty; leave it out to get the usual value.")
    return choice.checked(value, unit)


def _kept(kept: Any) -> dict[str, Any]:
    if not isinstance(kept, dict):
        raise BadInput("kept", "kept must be a list of names and values in braces {}.")
    if _is_deeper(kept, _DEEPEST):
        raise BadInput("kept", f"kept is nested more than {_DEEPEST} levels deep.")
    try:
        json_bytes(kept)
    except ValueError:  # NaN, or half of a character
        raise BadInput("kept", "kept holds what cannot be written again.") from None
    return kept


def _is_deeper(value: Any, most: int) -> bool:
    inside: Iterable[Any] = ()
    if isinstance(value, dict):
        inside = value.values()
    elif isinstance(value, list):
        inside = value
    return most < 0 or any(_is_deeper(each, most - 1) for each in inside)


def _shown(text: str) -> str:
    """A name that somebody typed, short and printable enough for a sentence."""
    plain = "".join(each if each.isprintable() else "?" for each in text[:60])
    return f"“{plain}{'…' if len(text) > 60 else ''}”"


def nearest(name: str, known: Iterable[str]) -> str:
    """The end of a sentence about an unknown name: the known names that look most like it."""
    near = get_close_matches(name[:_LONGEST_TEXT], list(known), n=3)
    return f". Did you mean {' or '.join(near)}?" if near else "."


# ---------------------------------------------------------------- writing


def to_bytes(design: Design) -> bytes:
    """A design as its file holds it: every choice in the order of the panes, given or not."""
    record: dict[str, Any] = {
        "format": FORMAT,
        "version": VERSION,
        "name": checked_name(design.name),
        "choices": {name: design.value(name) for name in all_choices()},
    }
    travelling = {
        "own": record_of_rows(design.own),
        "stock": stock_record.record_of(design.stock),
        "prices": price_record.record_of(design.prices),
        "progress": progress_record.record_of(design.progress),
        "publisher": publisher.record_of(design.publisher),
        "kept": dict(design.kept),
    }
    return json_bytes(record | {name: held for name, held in travelling.items() if held})


def write(design: Design, path: Path | str) -> None:
    """Save a design in one step; what was there before stays whole if that fails (BadInput)."""
    replace_file(Path(os.path.abspath(path)), to_bytes(design))
