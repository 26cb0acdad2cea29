"""What fixes a front to its box: screws and holes. Read for left, right and foot."""

from __future__ import annotations

from model.dimensions.fasteners import Fastener
from model.dimensions.spots import shifted
from model.joints.pilot import screwed
from model.joints.work import Work, gathered
from model.materials import PullScrew
from model.part import Cut, Face, Hole, Point, Screw
from model.rules import rule
from model.units import Mm, Places

FRONTS = "front_slabs|front_rails|front_stiles"
OVERSIZE: Mm = (
    3.0  # of play in the box front's holes, to set the front by; common practice, no source
)


def for_pull(
    size: Point,
    *,
    screw: PullScrew | None,
    along: Places,
    up: Mm,
    into: str,
    hand_hole: tuple[Mm, Mm],
    middle: Mm,
    room: Mm = 0.0,
) -> Work:
    """What a pull asks of a board: bores for its screws, or a hand hole about `middle`.

    The screws start on the face, inside the box, and are counted where `into` names what they hold.
    `room` widens the bores, so that what the screws hold beyond this board can be set.
    """
    if screw is None:
        return Work(cuts=_hand_hole(size, middle, up, hand_hole))
    toward, deep = (0.0, 0.0, -1.0), size[2]
    heads = [(float(x), float(up), deep) for x in along]
    bore = screw.clearance_hole_mm + room
    driven = ("pull screw", toward, screw.length_mm, screw.diameter_mm)
    return Work(
        holes=tuple(Hole("pull hole", Face.FACE, head, toward, bore, deep) for head in heads),
        screws=tuple(
            Screw(driven[0], head, *driven[1:], into, cover=0.0) for head in heads if into
        ),
    )


def _hand_hole(size: Point, middle: Mm, up: Mm, hole: tuple[Mm, Mm]) -> tuple[Cut, ...]:
    if not hole[0]:
        return ()
    x, y = float(hole[0]) / 2, float(hole[1]) / 2
    low, high = (middle - x, up - y, 0.0), (middle + x, up + y, size[2])
    return (Cut("hand hole", Face.FACE, low, high),)


@rule
def pull_spots(
    pull_places: Places, second_pull_places: Places, pull_holes: Places, front_places: Places
) -> Places:
    """Where the pulls' screws go through a front, from its own end."""
    firsts = (pull_places[:1] + second_pull_places[:1]) if front_places else ()
    return tuple(at - front_places[0] + hole for at in firsts for hole in pull_holes)


@rule
def front_fixing(
    box_front_places: Places,
    front_places: Places,
    box_bottom: Mm,
    box_front_length: Mm,
    box_height: Mm,
    box_thickness: Mm,
    front_screw: Fastener,
    front_screw_in: Mm,
    front_screw_heights: Places,
    pull_screw: PullScrew | None,
    pull_spots: Places,
    pull_middle: Mm,
    hand_hole_width: Mm,
    pull_height: Mm,
) -> Work:
    """Fronts are screwed from inside the box through oversize holes; pull screws pass both, with as
    much play, or the front could be set no more once they are in.
    """
    if not box_front_places:
        return Work()
    size = (box_front_length, box_height, box_thickness)
    work = gathered(
        screwed(
            size, Face.FACE, at=(x, z - box_bottom, size[2]), screw=front_screw.screw,
            length=front_screw.length, into=FRONTS, room=OVERSIZE,
        )
        for x in (front_screw_in, box_front_length - front_screw_in)
        for z in front_screw_heights
    )  # fmt: skip
    start = front_places[0] - box_front_places[0]
    return work + for_pull(
        size, screw=pull_screw, along=shifted(pull_spots, start), up=pull_middle - box_bottom,
        into="pulls", hand_hole=(hand_hole_width, pull_height), middle=size[0] / 2, room=OVERSIZE,
    )  # fmt: skip
