"""Do the pocket screws of a face frame hold its stiles to its rails? Asked of every row."""

from collections.abc import Iterator, Mapping
from dataclasses import replace

import numpy as np

from model.checks.record import Finding, advice, at_most, check
from model.checks.strength.joint_forces import (
    called,
    forces_between,
    lasting,
    made_by,
)
from model.checks.strength.rail_ends import MOVE, in_use_and_moved
from model.checks.strength.screwed_ends import ScrewedEnd, said_of, screwed_ends, used
from model.joints.end_joint import EndJoint
from model.joints.pocket import width_for_two
from model.materials import Material
from model.parts.pieces import Pieces
from model.solids.screwing import ScrewPoint
from model.structure.record import Carried, Unjudged
from model.units import Mm

RAILS = ("top_rail", "bottom_rail", "end_rail")


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
    ends, asked = screwed_ends(
        forces_between(strength, pieces, stiles, rails), pieces, points, materials
    )
    if not ends:
        return
    time = lasting(strength.cases)
    use = used(ends, asked) / time[:, None]
    bore = frame_joinery.screw.pocket_diameter_mm
    least = width_for_two(frame_shoulder, frame_shoulder, bore)
    for _, title, others in in_use_and_moved(strength):
        is_moved = bool(title)
        case, worst = divmod(int(np.where(others, 0.0, use).argmax()), len(ends))
        found = at_most(100 * float(use[case, worst]), 100.0, tight=10.0, unit="%")
        said = f"{said_of(ends, asked, pieces, case, worst)}, {called(strength.cases[case])}."
        if found.margin < 0:
            said += _too_narrow(ends[worst], least)
        yield _told(found, ends[worst], said, is_moved)


def _told(found: Finding, end: ScrewedEnd, said: str, is_moved: bool) -> Finding:
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


def _too_narrow(end: ScrewedEnd, least: Mm) -> str:
    """Why there is only one screw: two bores beside each other want so much width."""
    if len(end.spots) > 1 or end.width >= least:
        return ""
    return f" The stile is {end.width:.1f} mm wide; two pockets side by side want {least:.1f} mm."
