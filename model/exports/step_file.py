"""An exchange file of ISO 10303-21 in the making: records in the order in which they are added.

Source: ISO 10303-21:2016, clear text encoding; strings and figures are written so that readers of
the first edition take them too.
"""

from __future__ import annotations

from collections.abc import Iterable
from itertools import groupby
from typing import Any

_PLAIN = frozenset(chr(code) for code in range(32, 127))
_BASIC = 0xFFFF  # characters up to here take four digits, those above eight
_DECIMALS, _FINE = 6, 12  # of lengths in mm, and of figures without a unit


class Ref(int):
    """The number of a record that others refer to."""


class Word(str):
    """What stands in a record as it is: `.MILLI.`, `*`, or a value with its type."""

    __slots__ = ()


ANY = Word("*")


class StepFile:
    """Records of an exchange file. The same records in the same order give the same bytes."""

    def __init__(self) -> None:
        self._records: list[str] = []
        self._known: dict[str, Ref] = {}

    def add(self, kind: str, *values: Any) -> Ref:
        """Add a record of a kind with its values (see `_told`). Its number."""
        return self.record(f"{kind}({','.join(map(_told, values))})")

    def joined(self, **kinds: tuple[Any, ...]) -> Ref:
        """Add a record that is of several kinds at once, each with its values, by alphabet."""
        inside = (f"{kind}({','.join(map(_told, kinds[kind]))})" for kind in sorted(kinds))
        return self.record(f"({' '.join(inside)})")

    def record(self, text: str) -> Ref:
        """Add a record as it is written."""
        self._records.append(text)
        return Ref(len(self._records))

    def shared(self, text: str) -> Ref:
        """The record that is written so, added when first asked for."""
        found = self._known.get(text)
        if found is None:
            found = self._known[text] = self.record(text)
        return found

    def point(self, at: Iterable[float]) -> Ref:
        """A point, mm; the same for the same place."""
        return self.shared(f"CARTESIAN_POINT('',({','.join(map(length, at))}))")

    def direction(self, way: Iterable[float]) -> Ref:
        """A unit vector; the same for the same way."""
        return self.shared(f"DIRECTION('',({','.join(map(figure, way))}))")

    def axes(self, at: Iterable[float], normal: Iterable[float], first: Iterable[float]) -> Ref:
        """A place in space: its origin, its z and its x."""
        place = f"#{self.point(at)},#{self.direction(normal)},#{self.direction(first)}"
        return self.shared(f"AXIS2_PLACEMENT_3D('',{place})")

    def to_bytes(self, head: Iterable[tuple[str, tuple[Any, ...]]]) -> bytes:
        """The whole file, with the records of its heading."""
        heading = (f"{kind}({','.join(map(_told, values))});\n" for kind, values in head)
        body = (f"#{number}={text};\n" for number, text in enumerate(self._records, 1))
        parts = (
            "ISO-10303-21;\nHEADER;\n", *heading, "ENDSEC;\nDATA;\n", *body,
            "ENDSEC;\nEND-ISO-10303-21;\n",
        )  # fmt: skip
        return "".join(parts).encode("ascii")


def _told(value: Any) -> str:
    """A value as the file has it: `Ref` #7, bool .T., None $, text 'text', figures, rows of all."""
    if isinstance(value, Word):
        return value
    if isinstance(value, Ref):
        return f"#{value:d}"
    if value is None:
        return "$"
    if isinstance(value, bool):
        return ".T." if value else ".F."
    if isinstance(value, str):
        return f"'{encoded(value)}'"
    if isinstance(value, int):
        return str(value)
    if isinstance(value, float):
        return figure(value)
    return f"({','.join(map(_told, value))})"


def length(value: float) -> str:
    """A length to 1 nm, with the point that the format asks of every figure."""
    return _figure(value, _DECIMALS)


def figure(value: float) -> str:
    """A figure without a unit."""
    return _figure(value, _FINE)


def _figure(value: float, decimals: int) -> str:
    text = f"{value:.{decimals}f}".rstrip("0")
    return "0." if text == "-0." else text


def encoded(text: str) -> str:
    """A text as the format writes it: ' and \\ twice, what is not ASCII by its number.

    Characters of the basic plane follow \\X2\\ with four digits each, others \\X4\\ with eight.
    """
    runs = groupby(text, _digits)
    return "".join(_run(digits, "".join(each)) for digits, each in runs)


def _run(digits: int, text: str) -> str:
    """Characters that are written alike."""
    if not digits:
        return text.replace("\\", "\\\\").replace("'", "''")
    numbers = "".join(f"{ord(each):0{digits}X}" for each in text)
    return f"\\X{digits // 2}\\{numbers}\\X0\\"


def _digits(character: str) -> int:
    """With how many digits a character's number is written; 0 for one that stands as it is."""
    if character in _PLAIN:
        return 0
    return 4 if ord(character) <= _BASIC else 8
