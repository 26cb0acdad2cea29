"""How this set of plans is read: marks, sizes, faces, pages and signs."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from model.bed import Bed
from model.parts.marks import LETTERS
from model.shop.order import say
from model.shop.order.aids import measure_text, measured


class Note(NamedTuple):
    """A heading, and what it explains."""

    title: str
    text: str


def how_to_use(bed: Bed) -> tuple[Note, ...]:
    """The notes, in the order in which they are met."""
    return (
        _order(),
        _marks(bed),
        *_mirrors(bed),
        _sizes(bed),
        *_measured(bed),
        _faces(),
        _rough(),
        _signs(),
        _views(bed),
        _scale(bed),
        _steps(),
    )


def _order() -> Note:
    return Note(
        "In which order",
        "Read the cautions first, then all of it once. Buy from the list of materials, cut from "
        "the board and sheet plans, work each mark by its own page, put the bed together step by "
        "step, and finish it by the schedule. The care sheet goes with the bed.",
    )


def _marks(bed: Bed) -> Note:
    letters: dict[str, list[str]] = {}
    known = {part.assembly for part in bed.pieces.parts if not part.hardware}
    for assembly, letter in LETTERS.items():
        if assembly in known:
            letters.setdefault(letter, []).append(assembly)
    told = say.listed([f"{letter} for {say.listed(of)}" for letter, of in letters.items()])
    first = next((mark for mark in bed.marks if mark.quantity > 1), bed.marks[0])
    to = "and" if first.quantity == 2 else "to"
    return Note(
        "Marks",
        f"All parts that are cut alike share one mark, a letter and a number: {told}. {first.mark} "
        f"is made {first.quantity} times; its pieces are {first.mark}-1"
        + (f" {to} {first.mark}-{first.quantity}" if first.quantity > 1 else "")
        + f". Strips and layers of a part that is glued up are {first.mark}/1 and so on. Write the "
        "mark on each piece in chalk, on the face, with an arrow to its near end, and leave it on "
        "until the piece is sanded.",
    )


def _mirrors(bed: Bed) -> Iterator[Note]:
    pairs = {
        frozenset((mark.mark, mark.handed.rpartition(" ")[2])): mark.mark
        for mark in bed.marks
        if mark.handed
    }
    handed = [say.listed(sorted(pair)) for pair in pairs]
    if handed:
        yield Note(
            "Mirror images",
            f"Of each other: {'; '.join(handed)}. Lay both side by side before you cut their "
            "joints: they are made the same way, but on opposite faces.",
        )


def _sizes(bed: Bed) -> Note:
    unit = bed["shown_unit"]
    grid = bed["grid"]
    units = "inches and fractions of an inch" if unit == "inch" else "millimetres"
    return Note(
        "Sizes",
        f"Sizes are in {units}, on a step of {grid.name} wherever the bed is free to choose. A "
        "size with ~ before it is rounded to be read: it is another part, a fitting or a sheet "
        "that decides it, so fit it to that and not to the figure. Length runs along the grain, "
        "then come width and thickness. Work from sizes that are printed, never from a ruler laid "
        "on a drawing.",
    )


def _measured(bed: Bed) -> Iterator[Note]:
    unit: str = bed["shown_unit"]
    told = [measure_text(each, unit) for each in measured(bed)]
    if told:
        yield Note(
            "Measured stock",
            f"Sizes hang on what these measure: {'; '.join(told)}. Measure what you have bought "
            "before the first cut: where it differs, grooves, rabbets and what goes into them or "
            "over them change by as much.",
        )


def _faces() -> Note:
    return Note(
        "Faces and datum",
        "Each part has a near end and a far end, a lower edge and an upper edge, a back and a "
        "face: beside the name of each view stands which of them lies above, and at which side the "
        "near end is. All joints and holes on a page are measured from near end and lower edge; "
        "keep to these two where you mark out, so that small errors do not add up. Mark both "
        "before you cut. In the work at the machines fence or stop stand at the end, edge or face "
        "that each line names: so one setting serves both ends, and mirror images too. A tenon or "
        "tongue counts as part of the length.",
    )


def _rough() -> Note:
    return Note(
        "Rough and finished",
        "A finished size is what a part measures when it is cut, jointed and planed, before "
        "sanding. A rough size is what is sawn from the board, with wood to mill away. Parts of "
        "sheet have no rough size. Milled stock is compared with its page before any joint is cut.",
    )


def _signs() -> Note:
    return Note(
        "Signs and lines",
        "Thick lines are edges that are seen, thin dashed lines edges behind. A chain of long and "
        "short dashes is a centre line. Hatching is wood cut through. ⌀ is the diameter of a hole, "
        "× stands between sizes and before a number of alike things. An arrow in a step shows the "
        "way a piece comes in.",
    )


def _views(bed: Bed) -> Note:
    angle = str(bed["views_stand"])
    left = "left" if angle == "third angle" else "right"
    return Note(
        "Views",
        f"Views are in {angle} projection: the view from the left stands at the {left} of the view "
        "from the front. Left and right are those of somebody who looks from the foot to the head.",
    )


def _scale(bed: Bed) -> Note:
    check = f"{4:g} inches" if bed["shown_unit"] == "inch" else "100 mm"
    return Note(
        "Scale and templates",
        "Each view names its scale. Full-size templates are printed at 100 %, with no fitting to "
        f"the page: lay a steel rule on the scale bar, {check} must measure {check}, before you "
        "paste or cut. Sheets of one template meet at their register marks.",
    )


def _steps() -> Note:
    return Note(
        "Steps",
        "The first steps are the chapters of the work order, in its order: all that it lists is "
        "done before the first glue-up of a frame. What is new in a step is drawn apart, what "
        "stands already is drawn in its place. Number of pieces, screws and clamps are those of "
        "the whole step; sentences speak of one of the alike things that are made in it. Put "
        "everything together dry before glue is spread, and compare diagonals while the glue is "
        "wet: both figures are printed.",
    )
