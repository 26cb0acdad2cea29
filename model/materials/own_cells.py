"""What rows of the maker's own have in common, whatever they describe."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Collection, Mapping

from model.errors import BadInput

OWN_FIGURE = "the maker's own figure"
_LONGEST_KEY = 40
_LONGEST_CELL = 300


def known_columns(cells: Mapping[str, str], known: Collection[str], place: str) -> dict[str, str]:
    """The cells that say something; refused: a column that is not known, a cell that is a page."""
    file = place.partition(",")[0]
    if unknown := [column for column in cells if column not in known]:
        figures = ", ".join(sorted(column for column in known if "source_" not in column))
        raise BadInput(
            file,
            f"{place}: there is no column “{(unknown[0] or '')[:60]}”. Known: {figures}; and the "
            "same with source_ before them.",
        )
    if long := [column for column, text in cells.items() if len(text) > _LONGEST_CELL]:
        raise BadInput(file, f"{place}: {long[0]} is longer than {_LONGEST_CELL} characters.")
    if odd := [column for column, text in cells.items() if not text.strip().isprintable()]:
        raise BadInput(file, f"{place}: {odd[0]} holds characters that cannot be printed.")
    return {column: text.strip() for column, text in cells.items() if text.strip()}


def key_from(name: str) -> str:
    """A key that a design can hold: `My ash (2019)` is my_ash_2019."""
    plain = unicodedata.normalize("NFKD", name).encode("ascii", "ignore").decode().lower()
    return re.sub(r"[^a-z0-9]+", "_", plain).strip("_")[:_LONGEST_KEY] or "own"


def checked_key(key: str, place: str) -> str:
    """The key, if a design file and a command line can hold it."""
    if key != key_from(key):
        raise BadInput(
            place.partition(",")[0],
            f"{place}: the key “{key[:60]}” is not made of small letters, figures and "
            f"underscores, such as {key_from(key)}.",
        )
    return key
