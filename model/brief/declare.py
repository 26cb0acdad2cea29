"""How a choice is declared: one field with default, range, why each end of the range, and help.

The pane, the command line, the design file and the range errors are all built from these
declarations.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from typing import Annotated, Any, Literal, get_args, get_origin, get_type_hints

from model.errors import BadInput
from model.materials import OwnRows, materials
from model.read_length import parse_length
from model.units import Count, Measured, Mm, Share, ShopGrid

NO_REASON = ""


@dataclass(frozen=True, kw_only=True)
class Choice:
    """One thing that the maker can decide.

    `name` is the full name (`left.drawers`); `kind` the annotation that rules must use for it;
    `table` maps a key to its row where the choice picks from a table. `slider` marks
    the key ones; `cut` those that a saw or a fence is set to, so that rules receive them on the
    shop grid; `takes_own` those that a row of the maker's own may be picked for. Lengths are mm.
    """

    name: str = ""
    kind: Any = None
    topic: str = ""
    label: str = ""
    default: Any
    least: float | None = None
    most: float | None = None
    why_least: str = NO_REASON
    why_most: str = NO_REASON
    options: tuple[str, ...] = ()
    table: Callable[[], Mapping[str, Any]] | None = None
    help: str
    slider: bool = False
    cut: bool = False
    takes_own: bool = False

    @property
    def is_length(self) -> bool:
        return self.kind in (Mm, Measured)

    @property
    def unit(self) -> str:
        """What stands behind the number: `mm`, `kg`, `N`; "" where there is none."""
        if self.is_length:
            return "mm"
        is_number = get_origin(self.kind) is Annotated and self.kind not in (Count, Share)
        return str(get_args(self.kind)[1]) if is_number else ""

    @property
    def is_count(self) -> bool:
        return bool(self.kind == Count)

    @property
    def is_flag(self) -> bool:
        return self.kind is bool

    @property
    def may_be_empty(self) -> bool:
        """A measured value may be left out: then the nominal one is used."""
        return bool(self.kind == Measured)

    @property
    def keys(self) -> tuple[str, ...]:
        """The keys that an option or table choice can take."""
        return tuple(self.table()) if self.table is not None else self.options

    def with_own(self, own: OwnRows) -> Choice:
        """The same choice with the maker's own materials to pick from."""
        if not self.takes_own:
            return self
        rows = materials(own)
        return replace(self, table=lambda: rows)

    def checked(self, value: Any, unit: str = "mm") -> Any:
        """The value in the form that a design keeps: mm, int, bool or key. Refused: a sentence
        that names the field.
        """
        if self.is_flag:
            return self._checked_flag(value)
        if self.keys:
            return self._checked_key(value)
        if self.may_be_empty and (value is None or (isinstance(value, str) and not value.strip())):
            return None
        return self._checked_number(value, unit)

    def _checked_flag(self, value: Any) -> bool:
        words = {"yes": True, "no": False, "true": True, "false": False, "on": True, "off": False}
        if isinstance(value, bool):
            return value
        if isinstance(value, str) and value.strip().lower() in words:
            return words[value.strip().lower()]
        raise BadInput(self.name, f"{self.name} is yes or no, not {value!r}.")

    def _checked_key(self, value: Any) -> str:
        if isinstance(value, str) and value in self.keys:
            return value
        raise BadInput(
            self.name, f"{self.name} cannot be {value!r}. It can be: {', '.join(self.keys)}."
        )

    def _checked_number(self, value: Any, unit: str) -> float | int:
        if isinstance(value, bool) or not isinstance(value, int | float | str):
            raise BadInput(self.name, f"{self.name} is a number, not {value!r}.")
        number = self._parsed(value, unit) if isinstance(value, str) else value
        if not _is_finite(number):
            raise BadInput(self.name, f"{self.name} is not a finite number.")
        if self.is_count:
            if number != int(number):
                raise BadInput(self.name, f"{self.name} is a whole number, not {value}.")
            number = int(number)
        self._check_range(number)
        return number if self.is_count else float(number)

    def _parsed(self, text: str, unit: str) -> float:
        if self.is_length:
            try:
                return parse_length(text, unit)
            except BadInput as problem:
                raise BadInput(self.name, f"{self.name}: {problem}") from None
        try:
            return float(text.replace(",", "."))
        except ValueError:
            raise BadInput(self.name, f"{self.name} is a number, not {text!r}.") from None

    def _check_range(self, number: float) -> None:
        if self.least is not None and number < self.least - 1e-9:
            raise self._beyond(number, "least", self.least, self.why_least)
        if self.most is not None and number > self.most + 1e-9:
            raise self._beyond(number, "most", self.most, self.why_most)

    def _beyond(self, number: float, end: str, limit: float, why: str) -> BadInput:
        sign = f" {self.unit}" if self.unit else ""
        said = f"{self.name} is {number:g}{sign}; the {end} is {limit:g}{sign}. {why}"
        return BadInput(self.name, said.strip())

    def given(self, value: Any, grid: ShopGrid) -> Any:
        """What the rules receive for a checked value: a table's row, a length on the grid, or the
        value itself.
        """
        if self.table is not None:
            return self.table()[value]
        return grid.near(value) if self.cut else value


def _is_finite(number: float) -> bool:
    try:
        return math.isfinite(number)
    except OverflowError:  # a whole number beyond what a float can hold, from a spoilt file
        return False


def length(
    default: float,
    *,
    least: float,
    most: float,
    help: str,
    why_least: str = NO_REASON,
    why_most: str = NO_REASON,
    label: str = "",
    slider: bool = False,
    cut: bool = False,
) -> Any:
    """A length in mm; `cut` when a saw or fence is set to it."""
    return Choice(
        default=float(default), least=least, most=most, why_least=why_least, why_most=why_most,
        help=help, label=label, slider=slider, cut=cut,
    )  # fmt: skip


def measured(of: str, *, least: float, most: float, label: str = "") -> Any:
    """A measured length that, once given, is used in place of the nominal `of`."""
    return Choice(
        default=None, least=least, most=most, label=label,
        help=f"Measured with a caliper or tape, it is used in place of {of}.",
        why_least="Less than the tool can have measured here.",
        why_most="More than the tool can have measured here.",
    )  # fmt: skip


def count(
    default: int,
    *,
    least: int,
    most: int,
    help: str,
    why_least: str = NO_REASON,
    why_most: str = NO_REASON,
    label: str = "",
    slider: bool = False,
) -> Any:
    """A whole number."""
    return Choice(
        default=default, least=least, most=most, why_least=why_least, why_most=why_most,
        help=help, label=label, slider=slider,
    )  # fmt: skip


def number(
    default: float,
    *,
    least: float,
    most: float,
    help: str,
    why_least: str = NO_REASON,
    why_most: str = NO_REASON,
    label: str = "",
) -> Any:
    """A number that is no length; its annotation (Kg, Newton, Share) is its unit."""
    return Choice(
        default=float(default), least=least, most=most, why_least=why_least, why_most=why_most,
        help=help, label=label,
    )  # fmt: skip


def option(default: str, *, help: str, label: str = "") -> Any:
    """One word of a short list; the list is the field's Literal annotation."""
    return Choice(default=default, help=help, label=label)


def flag(default: bool, *, help: str, label: str = "") -> Any:
    """Yes or no."""
    return Choice(default=default, help=help, label=label)


def row_of(
    table: Callable[[], Mapping[str, Any]], default: str, *, help: str, label: str = ""
) -> Any:
    """A row of a table, picked by its key; rules receive the whole row."""
    return Choice(default=default, help=help, label=label, table=table)


def material_of(default: str, *, help: str, label: str = "") -> Any:
    """A wood or a sheet, the maker's own among them; rules receive its whole row."""
    return Choice(default=default, help=help, label=label, table=materials, takes_own=True)


def choices_of(topic: type) -> tuple[Choice, ...]:
    """The choices that a topic declares, once for every side or end named in its `scopes`."""
    title = (topic.__doc__ or topic.__name__).strip().rstrip(".")
    scopes: tuple[str, ...] = getattr(topic, "scopes", ("",))
    found = []
    for scope in scopes:
        for name, kind in get_type_hints(topic, include_extras=True).items():
            declared = getattr(topic, name)
            if not isinstance(declared, Choice):
                continue
            own = getattr(topic, "defaults", {}).get(f"{scope}.{name}", declared.default)
            options = get_args(kind) if get_origin(kind) is Literal else ()
            found.append(
                replace(
                    declared,
                    name=f"{scope}.{name}".lstrip("."),
                    kind=kind,
                    options=options,
                    default=own,
                    topic=f"{scope} {title}".strip().capitalize(),
                    label=declared.label or name.replace("_", " ").capitalize(),
                )  # fmt: skip
            )
    return tuple(found)
