"""Knock-down joint of a side and its posts: what plates or bolts need cut in each part.

How it is used: the rule `knock_down` gives the sizes, `connector_up` the heights. Then
`in_rail_end` works the end of a plain rail or, with bolts, of a face frame's rails; `in_stile_edge`
the outer edge of an end stile, which takes the plates of a face frame; `in_post` the post.
All heights (`up`) are counted along the part's own width or length.

Pieces fit like this. Plates come in two halves, one let flush into the post's inner face, with a
pocket for the hooks behind it, the other let flush into the rail's end; the halves touch. A bolt
goes from the floor of a counterbore in the post's outer face through the post and along the rail's
middle, through a nut that lies across the rail in a hole drilled from inside.
"""

from __future__ import annotations

from dataclasses import dataclass

from model.joints.groove import middle
from model.joints.pilot import pilot
from model.joints.slot import slot
from model.joints.work import Work, gathered
from model.materials import Connector, WoodScrew
from model.part import Face, Hole, Point
from model.units import Mm, Places

END_RELIEF: Mm = 3.0  # of a bolt's hole beyond the bolt; common practice, no source


@dataclass(frozen=True, kw_only=True)
class KnockDown:
    """The connector that was chosen, its plate screws, and what the bed makes of its bolts, in mm.

    `screw_length` is that of the plate screws; `bolt_hole` is the diameter of the hole that lets a
    bolt through; `counterbore` how deep its head is sunk; `in_rail` how far it goes into the rail.
    """

    row: Connector
    screw: WoodScrew | None
    bolt_hole: Mm
    screw_length: Mm
    counterbore: Mm
    in_rail: Mm


def plate_screws(length: Mm, count: int) -> Places:
    """Along a plate, from its lower end: in its outer quarters, clear of the pocket between."""
    half = (count + 1) // 2
    low = [length / 4 * (i + 0.5) / half for i in range(half)]
    return (*low, *(length - at for at in reversed(low[: count - half])))


def in_rail_end(knock: KnockDown, size: Point, end: Face, up: Places) -> Work:
    """An end of a rail (length along the bed, face inwards), at heights `up` of its width."""
    if not knock.row.is_plate:
        return gathered(_bolt_in_rail(knock, size, end, each) for each in up)
    across = middle(size[2], knock.row.plate_width_mm)
    return gathered(_plate(knock, size, end, each, across, upright=1) for each in up)


def in_stile_edge(knock: KnockDown, size: Point, edge: Face, up: Places) -> Work:
    """The outer edge of an end stile (length upright), at `up` of its length; plates only."""
    if not knock.row.is_plate:
        return Work()
    across = middle(size[2], knock.row.plate_width_mm)
    return gathered(_plate(knock, size, edge, each, across, upright=0) for each in up)


def in_post(knock: KnockDown, size: Point, rail: tuple[Mm, Mm], up: Places) -> Work:
    """A post (length upright, face inwards) that meets a rail between `rail` of its width."""
    centre = (rail[0] + rail[1]) / 2
    if not knock.row.is_plate:
        return Work(holes=tuple(h for each in up for h in _bolt_in_post(knock, size, centre, each)))
    half = knock.row.plate_width_mm / 2
    across = (centre - half, centre + half)
    return gathered(
        _plate(knock, size, Face.FACE, each, across, upright=0) + _pocket(knock, size, each, centre)
        for each in up
    )


def _plate(
    knock: KnockDown, size: Point, face: Face, up: Mm, across: tuple[Mm, Mm], *, upright: int
) -> Work:
    """The recess of one half, and the pilot holes for its screws at the recess's floor."""
    row = knock.row
    along = (up - row.plate_length_mm / 2, up + row.plate_length_mm / 2)
    cut = slot(
        size, face, depth=row.plate_thickness_mm, first=along, second=across, kind="plate recess"
    )
    at = [(across[0] + across[1]) / 2] * 3
    depth = row.plate_thickness_mm
    at[face.axis] = size[face.axis] - depth if face.is_high else depth
    holes = []
    for offset in plate_screws(row.plate_length_mm, row.screws_per_plate):
        at[upright] = along[0] + offset
        assert knock.screw is not None
        spot = (at[0], at[1], at[2])
        bite = knock.screw_length - depth
        holes.append(pilot(face, at=spot, screw=knock.screw, depth=bite))
    return Work(cuts=(cut,), holes=tuple(holes))


def _pocket(knock: KnockDown, size: Point, up: Mm, centre: Mm) -> Work:
    """Room for the hooks behind the post's plate: half as long and half as wide as the plate."""
    row = knock.row
    along = (up - row.plate_length_mm / 4, up + row.plate_length_mm / 4)
    across = (centre - row.plate_width_mm / 4, centre + row.plate_width_mm / 4)
    depth = row.plate_thickness_mm + row.pocket_depth_mm
    return Work(
        cuts=(slot(size, Face.FACE, depth=depth, first=along, second=across, kind="hook pocket"),)
    )


def _bolt_in_rail(knock: KnockDown, size: Point, end: Face, up: Mm) -> Work:
    row = knock.row
    mouth, toward = (size[0], -1.0) if end.is_high else (0.0, 1.0)
    depth = knock.in_rail + END_RELIEF
    nut_at = (mouth + toward * row.nut_from_end_mm, float(up), size[2])
    nut_deep = (size[2] + row.nut_length_mm) / 2
    bolt = Hole(
        "bolt hole",
        end,
        (mouth, float(up), size[2] / 2),
        (toward, 0.0, 0.0),
        knock.bolt_hole,
        depth,
    )
    nut = Hole("nut hole", Face.FACE, nut_at, (0.0, 0.0, -1.0), row.nut_diameter_mm, nut_deep)
    return Work(holes=(bolt, nut))


def _bolt_in_post(knock: KnockDown, size: Point, across: Mm, up: Mm) -> tuple[Hole, Hole]:
    row, into = knock.row, (0.0, 0.0, 1.0)
    head = (float(up), float(across), 0.0)
    floor = (float(up), float(across), float(knock.counterbore))
    return (
        Hole("counterbore", Face.BACK, head, into, row.counterbore_diameter_mm, knock.counterbore),
        Hole("bolt hole", Face.BACK, floor, into, knock.bolt_hole, size[2] - knock.counterbore),
    )


def through_nut(length: Mm, diameter: Mm, bolt: Mm) -> Hole:
    """The threaded hole across the middle of a nut."""
    middle_of_nut = (length / 2, 0.0, diameter / 2)
    return Hole("thread", Face.LOWER, middle_of_nut, (0.0, 1.0, 0.0), bolt, diameter)
