"""What the window tells of a dimension: why it is so; of a choice: what hangs on it."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from model.units import Mm

if TYPE_CHECKING:
    from model.bed import Bed

WHOLE_LINES = 1_000_000  # characters: the pane wraps lines itself


def reasons(bed: Bed, name: str, unit: str) -> Iterator[str]:
    """The chain behind a dimension; for a choice, all lengths that follow from it.

    Refused with BadInput: a name that nothing in this bed has.
    """
    from model.exports.why_text import lines

    yield from lines(bed, name, WHOLE_LINES)
    if name in bed.dimensions.book.choice_kinds:
        yield from _driven(bed, name, unit)


def _driven(bed: Bed, name: str, unit: str) -> Iterator[str]:
    from model.exports.why_text import show

    book = bed.dimensions.book
    driven = [each for each in book.kinds if each in book.drives[name] and book.kinds[each] == Mm]
    yield f"  {len(driven)} lengths hang on it." if driven else "  No length hangs on it."
    for each in driven:
        yield f"    {each} = {show(bed[each], unit)}. {book.reason(each)}"
