"""What a design file gives of stock, prices and progress, read field by field.

Every refusal is a sentence that says where in the file it stands: `stock boards, row 3: ...`.
"""

from __future__ import annotations

import math
from collections.abc import Collection, Iterator, Sequence
from typing import Any

from model.errors import BadInput
from model.read_length import parse_length
from model.units import Mm

LONGEST_TEXT = 120  # characters: a name, not a page
LONGEST_KEY = 400  # a step of the work order tells operation, figures and part
LARGEST: Mm = 100_000.0  # mm: no wood is longer
DEAREST = 1e9  # of any currency; more is a slip of the keys
MOST_ROWS = 2000


class Given:
    """One record of a file: names and values in braces, of which only some names are known."""

    def __init__(self, record: Any, place: str, names: Collection[str]) -> None:
        self.place = place
        if not isinstance(record, dict):
            raise self.refused("must be names and values in braces {}.")
        for name in record:
            if name not in names:
                raise self.refused(f"“{_shown(name)}” is not known. Known: {', '.join(names)}.")
        self._record = record

    def refused(self, said: str) -> BadInput:
        """A refusal that says where it stands."""
        joint = " " if said.startswith("must") else ": "
        return BadInput(self.place.partition(",")[0].split()[0], f"{self.place}{joint}{said}")

    def has(self, name: str) -> bool:
        """Whether the field is there and not empty."""
        return self._record.get(name) is not None

    def text(self, name: str, default: str | None = "", longest: int = LONGEST_TEXT) -> str:
        """A text that can be printed; with `default` None it must be there."""
        value = self._record.get(name, default)
        if not isinstance(value, str) or (default is None and not value.strip()):
            raise self.refused(f"{name} must be a text.")
        if len(value) > longest:
            raise self.refused(f"{name} is longer than {longest} characters.")
        if not all(each.isprintable() or each == "\n" for each in value):
            raise self.refused(f"{name} holds characters that cannot be printed.")
        return value

    def word(self, name: str, words: Collection[str], default: str) -> str:
        """One of a few words."""
        value = self._record.get(name, default)
        if not isinstance(value, str) or value not in words:
            raise self.refused(f"{name} must be one of {', '.join(words)}.")
        return value

    def flag(self, name: str, default: bool = False) -> bool:
        """Yes or no."""
        value = self._record.get(name, default)
        if not isinstance(value, bool):
            raise self.refused(f"{name} must be true or false.")
        return value

    def whole(self, name: str, default: int | None, least: int = 0, most: int = 1_000_000) -> int:
        """A whole number in a range; with `default` None it must be there."""
        value = self._record.get(name, default)
        if type(value) is not int or not least <= value <= most:
            raise self.refused(f"{name} must be a whole number from {least} to {most}.")
        return value

    def number(
        self, name: str, default: float | None, least: float = 0.0, most: float = 1e12
    ) -> float:
        """A number in a range; with `default` None it must be there."""
        return self.checked(name, self._record.get(name, default), least, most)

    def maybe(self, name: str, least: float = 0.0, most: float = 1e12) -> float | None:
        """A number in a range, or None where nothing is given."""
        return self.number(name, None, least, most) if self.has(name) else None

    def length(self, name: str, default: Mm | None, least: Mm = 0.0, most: Mm = LARGEST) -> Mm:
        """A length in mm, or a text with its unit; with `default` None it must be there."""
        value = self._record.get(name, default)
        if isinstance(value, str):
            try:
                value = parse_length(value)
            except BadInput as trouble:
                raise self.refused(f"{name}: {trouble}") from None
        return self.checked(name, value, least, most)

    def checked(self, name: str, value: Any, least: float, most: float) -> float:
        """A value as a number in a range."""
        if isinstance(value, bool) or not isinstance(value, int | float):
            raise self.refused(f"{name} must be a number.")
        number = float(value) if abs(value) < 1e300 else math.inf
        if not math.isfinite(number) or not least <= number <= most:
            raise self.refused(f"{name} must be a number from {least:g} to {most:g}.")
        return number

    def listed(self, name: str, most: int = MOST_ROWS) -> list[Any]:
        """The rows of a list; none where it is left out."""
        value = self._record.get(name, [])
        if not isinstance(value, list):
            raise self.refused(f"{name} must be a list in brackets [].")
        if len(value) > most:
            raise self.refused(f"{name} holds {len(value)} rows; {most} are the most.")
        return value

    def texts(self, name: str, most: int = 20 * MOST_ROWS) -> tuple[str, ...]:
        """A list of texts."""
        found = self.listed(name, most)
        if not all(isinstance(e, str) and len(e) <= LONGEST_KEY and e.isprintable() for e in found):
            raise self.refused(f"{name} must be a list of short texts.")
        return tuple(found)

    def records(self, name: str, names: Sequence[str], most: int = MOST_ROWS) -> Iterator[Given]:
        """The rows of a list, each a record of its own."""
        for number, row in enumerate(self.listed(name, most), 1):
            yield Given(row, f"{self.place} {name}, row {number}", names)

    def record(self, name: str, names: Sequence[str]) -> Given:
        """A record inside this one; an empty one where it is left out."""
        return Given(self._record.get(name, {}), f"{self.place} {name}", names)


def spare(record: dict[str, Any], usual: dict[str, Any]) -> dict[str, Any]:
    """A record without what is as usual: the file says what the maker said."""
    return {name: v for name, v in record.items() if name not in usual or v != usual[name]}


def _shown(text: object) -> str:
    plain = "".join(each if each.isprintable() else "?" for each in str(text)[:60])
    return plain
