"""A sheet part as a DXF file for a router: closed outlines and circles at true size, nothing else.

Layers name what is done: `outline`, `opening`, `pocket-6mm-face`, `hole-8mm-through`,
`hole-5mm-12mm-deep-back`. Grooves and rabbets are pockets that end at the outline: tool paths have
to run out beyond it. Corners stay sharp; nothing is added for the radius of a tool. What is to know
stands below the part on the layer `notes`.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from pathlib import Path
from typing import TYPE_CHECKING

from model.cutting.record import Box
from model.drawings.cell_loops import Loop
from model.drawings.dimensioning.told import Unit
from model.drawings.flat_bores import Bore
from model.drawings.flat_profile import FlatProfile, flat_profile
from model.drawings.letters import words_width
from model.drawings.part_sheet.grain_arrow import NONE, grain_of
from model.exports.dxf_frame import GREY, Layer, Lengths, add_layer, file_of, new_document
from model.exports.dxf_words import line
from model.part import Face
from model.parts.marks import Mark
from model.units import INCH, Mm

if TYPE_CHECKING:
    from ezdxf.document import Drawing as Document

OUTLINE, OPENING, NOTES = "outline", "opening", "notes"
_DECIMALS: dict[Unit, int] = {"mm": 3, "inch": 4}
_SIGNS: dict[Unit, str] = {"mm": "mm", "inch": "in"}
_HIGHEST: Mm = 10.0  # capitals of the notes
# Colours by number: 1 red, 3 green, 4 cyan, 5 blue, 6 magenta, so that jobs are told apart.
_THROUGH = 1
_POCKETS = {Face.FACE: 3, Face.BACK: 5}
_HOLES = {Face.FACE: 4, Face.BACK: 6}


def write(mark: Mark, path: Path, unit: Unit) -> None:
    """Write the file; `unit` is that of its lengths."""
    path.write_bytes(profile_file(mark, unit))


def profile_file(mark: Mark, unit: Unit) -> bytes:
    """The whole file."""
    lengths, profile = Lengths(unit), flat_profile(mark.part)
    document = new_document(lengths, {OUTLINE: Layer(), NOTES: Layer(GREY)})
    sheet = _Sheet(document, lengths)
    sheet.draw(profile)
    sheet.note(notes(mark, profile, unit), mark.part.size[0])
    per = lengths.per_wood
    return file_of(document, Box(0.0, 0.0, per * mark.part.size[0], per * mark.part.size[1]))


def notes(mark: Mark, profile: FlatProfile, unit: Unit) -> tuple[str, ...]:
    """What is to know at the machine, line by line."""
    return tuple(_notes(mark, profile, unit))


def _notes(mark: Mark, profile: FlatProfile, unit: Unit) -> Iterator[str]:
    part, up = mark.part, profile.up
    pieces = "1 piece" if mark.quantity == 1 else f"{mark.quantity} pieces"
    yield f"{mark.mark} {mark.name}, {pieces}"
    yield f"{mark.material_name}; {told(part.size[2], unit)} thick; {_grain(grain_of(mark))}"
    if part.layers > 1:
        yield f"Glued up of {part.layers} layers before it is routed."
    yield f"The {up} lies up, the near end at the left."
    if profile.works_below:
        other = Face.BACK if up is Face.FACE else Face.FACE
        yield (
            f"Layers that end in -{other} are work from below, drawn as seen through the sheet: "
            "turn the sheet over about its length and mirror them."
        )
    if profile.left_out:
        yield f"Not in this file: {', '.join(profile.left_out)}. See drawings/{mark.mark}.dxf."


def _grain(grain: str) -> str:
    ways = {"length": "grain from left to right", "width": "grain up and down", NONE: "no grain"}
    return ways.get(grain, "grain either way")


def told(length: Mm, unit: Unit) -> str:
    """A length in the name of a layer, in decimals: `6.35mm`, `0.25in`."""
    value = length / INCH if unit == "inch" else length
    return f"{value:.{_DECIMALS[unit]}f}".rstrip("0").rstrip(".") + _SIGNS[unit]


class _Sheet:
    def __init__(self, document: Document, lengths: Lengths) -> None:
        self._document, self._lengths = document, lengths
        self._space = document.modelspace()

    def draw(self, profile: FlatProfile) -> None:
        self._loops(profile.outline, OUTLINE, Layer())
        self._loops(profile.openings, OPENING, Layer(_THROUGH))
        for pocket in profile.pockets:
            name = f"pocket-{self._told(pocket.depth)}-{pocket.face}"
            self._loops(pocket.loops, name, Layer(_POCKETS[pocket.face]))
        for bore in profile.bores:
            self._bore(bore)

    def note(self, lines: Iterable[str], wide: Mm) -> None:
        """Below the part, no wider than it where that leaves letters."""
        lines = tuple(lines)
        longest = max(words_width(each, 1.0) for each in lines)
        height = max(min(_HIGHEST, wide / longest), 1.5)
        per = self._lengths.per_wood
        for number, each in enumerate(lines, 1):
            at = (0.0, -2.0 * number * height * per)
            self._space.add_text(
                line(each),
                dxfattribs={
                    "layer": NOTES, "style": "regular", "height": height * per, "insert": at,
                },
            )  # fmt: skip

    def _loops(self, loops: Iterable[Loop], name: str, layer: Layer) -> None:
        per = self._lengths.per_wood
        for loop in loops:
            add_layer(self._document, name, layer)
            points = [(x * per, y * per) for x, y in loop]
            self._space.add_lwpolyline(points, close=True, dxfattribs={"layer": name})

    def _bore(self, bore: Bore) -> None:
        name, layer = f"hole-{self._told(bore.diameter)}-through", Layer(_THROUGH)
        if bore.depth is not None:
            deep = self._told(bore.depth)
            name = f"hole-{self._told(bore.diameter)}-{deep}-deep-{bore.face}"
            layer = Layer(_HOLES[bore.face])
        add_layer(self._document, name, layer)
        per = self._lengths.per_wood
        at = (bore.at[0] * per, bore.at[1] * per)
        self._space.add_circle(at, bore.diameter / 2 * per, dxfattribs={"layer": name})

    def _told(self, length: Mm) -> str:
        return told(length, self._lengths.unit)
