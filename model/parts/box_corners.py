"""What corner joints and bottom grooves cut into the parts of a drawer box."""

from __future__ import annotations

from dataclasses import dataclass

from model.brief.drawers import BottomFit, BoxJoint
from model.joints.dado import dado
from model.joints.groove import groove
from model.joints.pocket import pocket, pocket_offsets
from model.joints.rabbet import rabbet
from model.joints.work import Work, gathered
from model.materials import PocketScrew
from model.part import Cut, Face, Point
from model.rules import rule
from model.units import Mm, Spans

ENDS = (Face.NEAR, Face.FAR)
ALLOWANCE = "dovetail allowance"


@dataclass(frozen=True, kw_only=True)
class BoxMake:
    """How all boxes of the bed are put together; lengths in mm, heights from the box's lower edge.

    `fingers` are the turns of front and side at a dovetailed corner; the back begins at `back_up`.
    """

    joint: BoxJoint
    bottom_fit: BottomFit
    thickness: Mm
    joint_depth: Mm
    set_in: Mm
    groove: tuple[Mm, Mm]
    groove_depth: Mm
    back_up: Mm
    fingers: Spans
    screw: PocketScrew | None

    @property
    def held_by(self) -> str:
        """The corner joint in words."""
        words = {"butt": "pocket screws", "dovetail": "dovetails"}
        return words.get(self.joint, self.joint)

    def side(self, size: Point, inner: Face) -> tuple[Cut, ...]:
        """The cuts of a box side whose inner face is `inner`; its near end is at the front."""
        return (
            *self._front_corner(size, inner),
            *self._rear_corner(size, inner),
            self._in_side(size, inner),
        )

    def front(self, size: Point, inner: Face) -> Work:
        """The joints of the box front, or of a back that is as high."""
        return Work(cuts=(self._in_end(size, inner), *self._fingers(size, 1, 0.0))) + self._pockets(
            size, inner, self.groove[1]
        )

    def back(self, size: Point, inner: Face) -> Work:
        """The joints of the box back; a cut-down one has no groove."""
        if self.bottom_fit == "groove":
            return self.front(size, inner)
        return Work(cuts=self._fingers(size, 1, self.back_up)) + self._pockets(size, inner, 0.0)

    def _front_corner(self, size: Point, inner: Face) -> tuple[Cut, ...]:
        if self.joint == "dovetail":
            return _finger_cuts(size, Face.NEAR, self.fingers[::2], self.thickness)
        if self.joint == "butt":
            return ()
        return (rabbet(size, inner, Face.NEAR, width=self.thickness, depth=self.joint_depth),)

    def _rear_corner(self, size: Point, inner: Face) -> tuple[Cut, ...]:
        up = (self.back_up, size[1])
        if self.joint == "dovetail":
            spans = _above(self.fingers[::2], self.back_up)
            return _finger_cuts(size, Face.FAR, spans, self.thickness)
        if self.joint == "butt":
            return ()
        depth = self.joint_depth
        if self.joint == "rabbet":
            return (rabbet(size, inner, Face.FAR, width=self.thickness, depth=depth, along=up),)
        ends = size[0] - self.set_in
        return (dado(size, inner, between=(ends - self.thickness, ends), depth=depth, across=up),)

    def _in_side(self, size: Point, inner: Face) -> Cut:
        along = None
        if self.joint == "dovetail":  # a groove run through would show in the corner
            wall = self.thickness - self.groove_depth
            rear = size[0] if self.bottom_fit == "under back" else size[0] - wall
            along = (wall, rear)
        return groove(size, inner, between=self.groove, depth=self.groove_depth, along=along)

    def _in_end(self, size: Point, inner: Face) -> Cut:
        wall = self.thickness - self.groove_depth
        along = (wall, size[0] - wall) if self.joint == "dovetail" else None
        return groove(size, inner, between=self.groove, depth=self.groove_depth, along=along)

    def _fingers(self, size: Point, turn: int, up: Mm) -> tuple[Cut, ...]:
        spans = tuple((low - up, high - up) for low, high in _above(self.fingers[turn::2], up))
        return tuple(c for end in ENDS for c in _finger_cuts(size, end, spans, self.thickness))

    def _pockets(self, size: Point, inner: Face, lower: Mm) -> Work:
        if self.screw is None:
            return Work()
        outer = Face.BACK if inner is Face.FACE else Face.FACE
        return gathered(
            pocket(
                size, end, outer, offset=up, screw=self.screw,
                into="box_near_sides" if end is Face.NEAR else "box_far_sides",
            )
            for end in ENDS
            for up in pocket_offsets(
                size[1], lower=lower, upper=0.0, bore=self.screw.pocket_diameter_mm
            )
        )  # fmt: skip


def _above(spans: Spans, up: Mm) -> Spans:
    return tuple((max(low, up), high) for low, high in spans if high > up + 1e-6)


def _finger_cuts(size: Point, end: Face, spans: Spans, depth: Mm) -> tuple[Cut, ...]:
    low, high = (size[0] - depth, size[0]) if end.is_high else (0.0, depth)
    return tuple(Cut(ALLOWANCE, end, (low, a, 0.0), (high, b, size[2])) for a, b in spans)


@rule
def box_make(
    box_joint: BoxJoint,
    bottom_fit: BottomFit,
    box_thickness: Mm,
    box_joint_depth: Mm,
    dado_set_in: Mm,
    bottom_up: Mm,
    bottom_thickness: Mm,
    bottom_groove_depth: Mm,
    box_height: Mm,
    box_back_height: Mm,
    finger_spans: Spans,
    box_pocket_screw: PocketScrew | None,
) -> BoxMake:
    """All boxes of the bed are made alike, at one setting of saw and router."""
    return BoxMake(
        joint=box_joint, bottom_fit=bottom_fit, thickness=float(box_thickness),
        joint_depth=float(box_joint_depth), set_in=float(dado_set_in),
        groove=(float(bottom_up), float(bottom_up + bottom_thickness)),
        groove_depth=float(bottom_groove_depth), back_up=float(box_height - box_back_height),
        fingers=finger_spans, screw=box_pocket_screw,
    )  # fmt: skip
