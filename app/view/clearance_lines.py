"""The clearances round what is selected: room beside and above a drawer, gaps between slats."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping
from typing import TYPE_CHECKING

from app.view.dimension_lines import NOWHERE, ROWS, Dimension3D, dimension_lines, known
from app.view.scene import OUTWARD

if TYPE_CHECKING:
    from model.bed import Bed

MOST = 3  # selected things that are measured at once; more arrows than that say less


def lines_to_draw(
    bed: Bed, selected: Collection[int], reach: Mapping[str, float]
) -> tuple[Dimension3D, ...]:
    """Clearances and dimensions; an opening's own lines make way for clearances and open fronts.

    `reach`: how far drawers stand out of each row, mm; lines on the floor run beyond them.
    """
    clearances = clearance_lines(bed, selected)
    dimensions = tuple(_beyond(line, reach) for line in dimension_lines(bed))
    if clearances or reach:
        dimensions = tuple(line for line in dimensions if not line.group.startswith("opening"))
    return clearances + dimensions


def _beyond(line: Dimension3D, reach: Mapping[str, float]) -> Dimension3D:
    if line.start[2] or line.end[2]:
        return line
    x, y, z = line.away
    row = "foot" if y < 0 else "left" if x < 0 else "right" if x > 0 else ""
    out_x, out_y, _ = OUTWARD.get(row, NOWHERE)
    far = reach.get(row, 0.0)
    return line._replace(away=(x + out_x * far, y + out_y * far, z))


def clearance_lines(bed: Bed, selected: Collection[int]) -> tuple[Dimension3D, ...]:
    """The clearances of the drawers, slats and mattress well that the selected pieces belong to."""
    pieces = bed.pieces
    groups = dict.fromkeys(pieces.groups[pieces.group[piece]] for piece in selected)
    drawers = [group for group in groups if group][:MOST]
    slats = [piece for piece in selected if pieces.parts[pieces.part[piece]].name == "slat"][:MOST]
    return (
        *(line for drawer in drawers for line in _of_drawer(bed, drawer)),
        *(line for slat in sorted(slats) for line in _of_slat(bed, int(pieces.place[slat]))),
    )


def _of_drawer(bed: Bed, drawer: str) -> Iterator[Dimension3D]:
    """Room beside, above and below the box in its opening, and between the frame and the floor."""
    row, _, number = drawer.rpartition("-")
    places, width = known(bed, f"{row}.opening_places"), known(bed, f"{row}.opening_width")
    room, plane = known(bed, f"{row}.box_side_room"), known(bed, f"{row}.front_plane")
    if not places or room is None or plane is None:
        return
    opening = places[int(number) - 1]
    low, high, middle = bed["box_bottom"], bed["box_top"], (bed["box_bottom"] + bed["box_top"]) / 2
    across, under = opening + width * 0.32, opening + width * 0.68
    for name, word, start, end in (
        (f"{row}.box_side_room", "side", (opening, middle), (opening + room, middle)),
        ("box_top_room_built", "above", (across, high), (across, bed["opening_top"])),
        ("box_bottom_room", "below", (across, bed["opening_bottom"]), (across, low)),
        ("frame_bottom", "floor", (under, 0.0), (under, bed["frame_bottom"])),
    ):
        a, b = (ROWS[row](bed, u, plane, z)[0] for u, z in (start, end))
        faces = ROWS[row](bed, 0.0, 0.0, 0.0)[1]
        yield Dimension3D(
            a, b, name, bed[name], word, faces=faces, is_clearance=True, key=f"{drawer} {word}"
        )


def _of_slat(bed: Bed, index: int) -> Iterator[Dimension3D]:
    """The gap on either side of a slat: to the next slat, or to the posts."""
    places, width = known(bed, "slat_places"), known(bed, "slat_width")
    if not places:
        return
    begin, end, last = places[index], places[index] + width, index + 1 == len(places)
    z = bed["deck_top"]
    before, after = ("slat_end_gap" if at_end else "slat_spacer" for at_end in (index == 0, last))
    for gap, name, y0, y1 in (
        (index, before, begin - bed[before], begin),
        (index + 1, after, end, end + bed[after]),
    ):
        yield Dimension3D(
            (0, y0, z), (0, y1, z), name, bed[name], "gap", is_clearance=True, key=f"gap {gap}"
        )
