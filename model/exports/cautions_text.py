"""The cautions as text for a plain terminal."""

from __future__ import annotations

from collections.abc import Iterator
from textwrap import wrap

from model.bed import Bed
from model.checks.safety.cautions import cautions

_INDENT = "  "


def lines(bed: Bed, columns: int) -> Iterator[str]:
    """A heading, and every caution in a few lines of at most `columns` characters."""
    yield "Cautions"
    for each in cautions(bed.pieces, bed.materials):
        said = f"{each.title}. {each.text}"
        yield from wrap(said, columns, initial_indent=_INDENT, subsequent_indent=_INDENT * 2)
