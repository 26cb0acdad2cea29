"""Where a dimension comes from, as text for a plain terminal, down to the maker's choices."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from difflib import get_close_matches
from textwrap import wrap
from typing import Any

from model.bed import Bed
from model.errors import BadInput
from model.rules import Dim, Dimensions
from model.units import Measured, show_length

_SIZES = ("length", "width", "thickness")


def lines(bed: Bed, asked: str, columns: int) -> Iterator[str]:
    """The chain behind a dimension, a choice, or a size of a mark such as `S1.length`.

    Refused with BadInput, which names what sounds alike: a name that nothing has.
    """
    name = dimension_behind(bed, asked)
    unit = bed.design.value("shown_unit")
    for line in _knowing_lengths(bed.dimensions).why(name, lambda value: show(value, unit)):
        margin = " " * min(len(line) - len(line.lstrip()), columns // 2)
        going_on = margin + "      "
        yield from wrap(line.lstrip(), columns, initial_indent=margin, subsequent_indent=going_on)


def dimension_behind(bed: Bed, asked: str) -> str:
    """The full name of the dimension that is asked for."""
    if asked in bed.dimensions.values:
        return asked
    sizes = {f"{m.mark}.{size}": getattr(m, size) for m in bed.marks for size in _SIZES}
    known = {name.lower(): name for name in (*bed.dimensions.values, *sizes)}
    found = known.get(asked.lower(), "")
    if found in sizes:
        behind = getattr(sizes[found], "name", "")
        if not behind:
            raise BadInput(asked, f"{found} is {sizes[found]:g} mm, given by no rule of its own.")
        return str(behind)
    if found:
        return found
    near = get_close_matches(asked.lower()[:100], known, n=3)
    end = f". Did you mean {' or '.join(known[each] for each in near)}?" if near else "."
    raise BadInput(asked, f"There is no dimension called “{asked[:100]}”{end}")


def _knowing_lengths(dimensions: Dimensions) -> Dimensions:
    """The same, with measured lengths marked as lengths, so that they are shown as such."""
    measured = {
        name: Dim(value, name)
        for name, value in dimensions.values.items()
        if value is not None and dimensions.book.kinds[name] == Measured
    }
    return replace(dimensions, values={**dimensions.values, **measured})


def show(value: Any, unit: str) -> str:
    """A value as the maker reads it: lengths in the shown unit, rows of tables by their name."""
    if isinstance(value, Dim):
        return show_length(value, unit)
    if value is None:
        return "not given"
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, int | float):
        return f"{value:g}"
    if isinstance(value, str):
        return value
    if isinstance(value, tuple) and not hasattr(value, "_fields"):
        return ", ".join(dict.fromkeys(show(each, unit) for each in value)) or "none"
    return str(getattr(value, "name", f"a {type(value).__name__.lower()}"))
