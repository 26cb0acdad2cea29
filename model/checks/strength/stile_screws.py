"""Do the pocket screws of a face frame hold its stiles to its rails? Asked of every row."""

from collections.abc import Iterator, Mapping
from dataclasses import replace
from typing import NamedTuple

import numpy as np

from model.brief.shop import ShownUnit
from model.checks.record import Finding, advice, at_most, check
from model.checks.strength.joint_forces import (
    called,
    forces_between,
    lasting,
    made_by,
    uses,
)
from model.checks.strength.rail_ends import MOVE, in_use_and_moved
from model.checks.strength.stile_ends import Asked, StileEnd, stile_ends
from model.joints.end_joint import EndJoint
from model.joints.pocket import pocket_offsets, width_for_two
from model.materials import Material
from model.parts.pieces import Floats, Pieces
from model.solids.screwing import ScrewPoint
from model.structure.record import Carried, Unjudged
from model.units import INCH, Mm, show_length

RAILS = ("top_rail", "bottom_rail", "end_rail")
MOST_WIDE: Mm = 150.0  # a wider stile is a board: the sentence proposes none


@check(
    "strength",
    "Pocket screws hold the stiles to their rails",
    source=(
        "NDS 2018, 12.2.2, 12.3.1, 12.4.1 and end grain 12.5.2, from memory; glued end grain is "
        "not counted: Wood Handbook 2021, chapter 10"
    ),
    remedies=("frame_joint", "frame_stock", "frame_wood", "end_stile_least", "mid_stile"),
)
def pocket_screws_hold(
    strength: Carried | Unjudged,
    pieces: Pieces,
    screw_points: tuple[ScrewPoint, ...],
    materials: Mapping[str, Material],
    frame_joinery: EndJoint,
    frame_shoulder: Mm,
    shown_unit: ShownUnit,
    row_name: str,
) -> Iterator[Finding]:
    """A face frame racks as the bed is sat on, pushed and dragged: screws hold its corners."""
    points = [
        p for p in screw_points
        if p.rules[0] == f"{row_name}.stiles" and p.screw.kind == "pocket screw"
        and p.bite > p.screw.diameter
    ]  # fmt: skip
    if not points or isinstance(strength, Unjudged) or frame_joinery.screw is None:
        return
    stiles, rails = made_by(pieces, f"{row_name}.stiles"), made_by(pieces, *RAILS)
    ends, asked = stile_ends(
        forces_between(strength, pieces, stiles, rails), pieces, points, materials
    )
    if not ends:
        return
    time = lasting(strength.cases)
    use = used(ends, asked) / time[:, None]
    bores = Bores(frame_shoulder, frame_joinery.screw.pocket_diameter_mm)
    for _, title, others in in_use_and_moved(strength):
        is_moved = bool(title)
        case, worst = divmod(int(np.where(others, 0.0, use).argmax()), len(ends))
        found = at_most(100 * float(use[case, worst]), 100.0, tight=10.0, unit="%")
        said = f"{_said(ends, asked, pieces, case, worst)}, {called(strength.cases[case])}."
        if found.margin < 0 and not is_moved:
            asked_for = np.where(others[:, 0], np.inf, time)
            said += _wider(ends, asked, worst, asked_for, bores, shown_unit)
        yield _told(found, ends[worst], said, is_moved)


class Bores(NamedTuple):
    """How deep both edges of the stiles are cut, and how wide a pocket is."""

    cut: Mm
    bore: Mm


def used(ends: list[StileEnd], asked: Asked) -> Floats:
    """(c, e): share of what the worst screw of each end may bear for ten years."""
    lateral, drawn = np.array([(end.lateral, end.withdrawal) for end in ends]).T
    return uses(lateral, drawn, *asked.on_screws(ends))


def _said(ends: list[StileEnd], asked: Asked, pieces: Pieces, case: int, at: int) -> str:
    end = ends[at]
    across, drawn = (float(each[case, at]) for each in asked.on_screws(ends))
    screws = (
        f"Each of {len(end.spots)} pocket screws" if len(end.spots) > 1 else "The one pocket screw"
    )
    stile, rail = (pieces.labels[each] for each in end.pieces)
    return (
        f"{screws} between {stile} and {rail} bears {across:.0f} N sideways and {drawn:.0f} N "
        "outwards"
    )


def _told(found: Finding, end: StileEnd, said: str, is_moved: bool) -> Finding:
    """What is found at the worst end; of a bed that is moved it is advice."""
    if not is_moved:
        return replace(found, reason=said, pieces=end.pieces)
    return replace(
        advice(found),
        id="moved",
        title="Pocket screws of the stiles as the bed is moved",
        reason=said + (MOVE if found.margin < 0 else ""),
        pieces=end.pieces,
    )


def _wider(
    ends: list[StileEnd], asked: Asked, worst: int, time: Floats, bores: Bores, unit: ShownUnit
) -> str:
    """From which width of the stiles on two pocket screws in each end would do, where a screw is
    too few, or two are.
    """
    end, least = ends[worst], width_for_two(bores.cut, bores.cut, bores.bore)
    narrow = (
        f" The stile is {end.width:.1f} mm wide, and two pockets side by side want {least:.1f} mm."
        if end.width < least
        else ""
    )
    step = INCH / 4 if unit == "inch" else 5.0
    for i in range(int(end.width // step) + 1, int(MOST_WIDE // step) + 1):
        wide = [_as_wide(each, i * step, bores) for each in ends]
        if (used(wide, asked) <= time[:, None]).all():
            return f"{narrow} In stiles at least {show_length(i * step, unit)} wide, two would do."
    return f"{narrow} No wider stile would do: thicker stock takes longer screws."


def _as_wide(end: StileEnd, width: Mm, bores: Bores) -> StileEnd:
    """The end of a stile that is at least so wide, under what the frame asks of it as it is."""
    if end.width >= width:
        return end
    spots = pocket_offsets(width, lower=bores.cut, upper=bores.cut, bore=bores.bore)
    return end._replace(width=width, spots=spots)
