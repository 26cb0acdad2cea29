"""What a part is: a stock box in its own axes, the cuts that joints make in it, and where it lies.

A part's own axes are length (x), width (y), thickness (z), in mm, with the origin at a corner of
the stock box. Parts are laid in a frame (see `model.frame`), whose axes are called u, v and z.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import StrEnum
from functools import cached_property
from typing import Annotated, NamedTuple

from model.frame import BED, Frame
from model.units import Mm

Point = tuple[float, float, float]


class Face(StrEnum):
    """The six faces of a stock box. Length runs near to far, width lower to upper, thickness back
    to face.
    """

    NEAR = "near end"
    FAR = "far end"
    LOWER = "lower edge"
    UPPER = "upper edge"
    BACK = "back"
    FACE = "face"

    @property
    def axis(self) -> int:
        """0 for the ends (length), 1 for the edges (width), 2 for the two faces (thickness)."""
        return _AXES[self]

    @property
    def is_high(self) -> bool:
        """Whether the face lies at the far end of its axis."""
        return self in _HIGH


_AXES = {face: i // 2 for i, face in enumerate(Face)}
_HIGH = frozenset((Face.FAR, Face.UPPER, Face.FACE))


class Cut(NamedTuple):
    """A box cut: wood taken away between two corners, in the part's own axes."""

    kind: str
    face: Face
    low: Point
    high: Point


class Hole(NamedTuple):
    """A round cut: from `at`, the centre of its mouth, towards `toward` (unit vector), in the
    part's own axes.
    """

    kind: str
    face: Face
    at: Point
    toward: Point
    diameter: float
    depth: float


class Place(NamedTuple):
    """One piece of a part: how far it stands from the part's first place, and the drawer it
    belongs to.

    `drawer` counts from 1 along the row; 0 is a piece of the bed itself.
    """

    u: float = 0.0
    v: float = 0.0
    z: float = 0.0
    drawer: int = 0


class Hold(NamedTuple):
    """What a piece bears on or is joined to: the name of the rule that makes the other part.

    `by` is looked up in the part's own scope first, as a rule's need is; `a | b` means either will
    do; "floor" is the floor. `within` is the named clearance that the joint leaves; 0 is wood on
    wood. `knock_down` joints come apart and are never glued.
    """

    by: str
    joint: str
    within: float = 0.0
    glued: bool = False
    knock_down: bool = False


class Screw(NamedTuple):
    """One screw as axis and point, in the part's own axes: head at `at`, going `toward` into
    another part.

    `into` names the rule of the part that takes the point, looked up like `Hold.by`; `cover` is
    the wood that must remain in front of the point.
    """

    kind: str
    at: Point
    toward: Point
    length: float
    diameter: float
    into: str
    cover: float = 3.0


@dataclass(frozen=True, kw_only=True)
class Part:
    """One kind of piece: how it is cut, what cuts its joints make, where its pieces lie, what
    holds them.

    `lies` names the frame's axis ("u", "v" or "z") along which length, width and thickness run;
    `at` is the lower corner of the first piece in the frame. `length`, `width` and `thickness`
    must be named dimensions. `row` is the row whose drawers the pieces move with. `hardware` is
    the code of a bought thing, which is counted and proved but not cut; `layers` tells how many
    layers a glued-up part is made of, `eased` the radius of its long edges. What `is_round`
    (bolts, dowels) is a bar along its length with the diameter `width`.
    """

    name: str
    assembly: str
    length: Mm
    width: Mm
    thickness: Mm
    lies: str
    at: Point
    material: str
    frame: Frame = BED
    places: tuple[Place, ...] = (Place(),)
    cuts: tuple[Cut, ...] = ()
    holes: tuple[Hole, ...] = ()
    held: tuple[Hold, ...] = ()
    screws: tuple[Screw, ...] = ()
    row: str = ""
    hardware: str = ""
    layers: int = 1
    layer_thickness: Mm = 0.0
    taper: float = 0.0
    taper_length: Mm = 0.0
    eased: Mm = 0.0
    is_round: bool = False
    grain: str = "length"
    note: str = field(default="", compare=False)

    @cached_property
    def size(self) -> Point:
        """Length, width and thickness as cut."""
        return (float(self.length), float(self.width), float(self.thickness))


Made = Annotated[tuple[Part, ...], "parts"]
