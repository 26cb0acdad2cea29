"""The bed of a design file, for every command that needs it built."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from model.errors import BadInput, BedError, CannotBuild

if TYPE_CHECKING:
    from model.bed import Bed, Design


def built(path: Path) -> Bed:
    """Read a design file and build its bed.

    Refused: a file that is no design; a bed that cannot be built, with what would work instead.
    """
    from model import designs
    from model.bed import solve

    design = designs.read(path)
    try:
        return solve(design)
    except CannotBuild as refusal:
        raise _with_a_way_out(design, refusal) from None


def _with_a_way_out(design: Design, refusal: CannotBuild) -> BedError:
    """The refusal, with what would work in its place, in the design's unit."""
    from model.book import open_book
    from model.brief import all_choices
    from model.mend import works
    from model.units import show_length, tape_grid

    mended = works(design, refusal, open_book())
    said = mended.sentence
    if mended.range and all_choices()[mended.choice].is_length and _reads_inches(design):
        tape = tape_grid("inch")  # inwards, so that what is said does work
        low, high = tape.up(mended.range[0]), tape.down(mended.range[1])
        if low <= high:
            span = f"from {show_length(low, 'inch')} to {show_length(high, 'inch')}"
            said = f"{refusal} {mended.choice} {span} would work."
    return BadInput(refusal.field, said)


def _reads_inches(design: Design) -> bool:
    return bool(design.value("shown_unit") == "inch")
