"""Wood screws through one part into another: shank hole, pilot hole and the screw itself."""

from __future__ import annotations

from model.joints.work import Work
from model.materials import WoodScrew
from model.part import Face, Hole, Point, Screw
from model.units import Mm

SCREW_COVER: Mm = 3.0  # wood left in front of a point: 1/8 in; common practice, no source


def inward(face: Face) -> Point:
    """The unit vector from a face into the part."""
    step = -1.0 if face.is_high else 1.0
    return (
        step if face.axis == 0 else 0.0,
        step if face.axis == 1 else 0.0,
        step if face.axis == 2 else 0.0,
    )


def screwed(
    size: Point,
    face: Face,
    *,
    at: Point,
    screw: WoodScrew,
    length: Mm,
    into: str,
    sunk: Mm = 0.0,
    room: Mm = 0.0,
    cover: Mm = SCREW_COVER,
) -> Work:
    """A screw that enters this part at `at` on `face`, passes through it and bites `into` the next.

    `sunk` is the depth of a counterbore; `room` widens the shank hole, so that the part can be set
    or the wood can move.
    """
    toward, through = inward(face), size[face.axis]
    head = _moved(at, toward, sunk)
    hole = screw.shank_hole_mm + room
    holes = [Hole("shank hole", face, head, toward, hole, through - sunk)]
    if sunk > 0:
        holes.insert(0, Hole("counterbore", face, at, toward, screw.counterbore_mm, sunk))
    driven = Screw(f"wood screw {screw.key}", head, toward, length, screw.shank_mm, into, cover)
    return Work(holes=tuple(holes), screws=(driven,))


def pilot(face: Face, *, at: Point, screw: WoodScrew, depth: Mm, is_hardwood: bool = True) -> Hole:
    """The pilot hole for a screw that enters this part at `at` on `face`."""
    size = screw.pilot_hardwood_mm if is_hardwood else screw.pilot_softwood_mm
    return Hole("pilot hole", face, at, inward(face), size, depth)


def _moved(at: Point, toward: Point, way: Mm) -> Point:
    return (at[0] + way * toward[0], at[1] + way * toward[1], at[2] + way * toward[2])
