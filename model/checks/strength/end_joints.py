"""Do the joints of headboard and footboard hold their rails? Asked of head and foot."""

from collections.abc import Iterator, Mapping
from dataclasses import replace

import numpy as np

from model.brief.shop import ShownUnit
from model.checks.record import Finding, advice, at_most, check
from model.checks.strength.glue_findings import SOURCE, Longest, findings
from model.checks.strength.glued_ends import Woods, glued_ends
from model.checks.strength.joint_forces import (
    JointForces,
    called,
    forces_between,
    lasting,
    made_by,
)
from model.checks.strength.rail_ends import MOVE, in_use_and_moved
from model.checks.strength.screwed_ends import said_of, screwed_ends, used
from model.dimensions.joinery import LEAST_WALL
from model.joints.end_joint import EndJoint
from model.materials import Material, StockGrade
from model.parts.pieces import Pieces
from model.solids.screwing import ScrewPoint
from model.structure.record import Carried, Unjudged
from model.units import Mm

MEMBERS = ("end_rail", "upper_rail", "bottom_rail", "panel_stiles")
MATES = ("post_left", "post_right", "end_rail", "upper_rail")
REMEDIES = ("end_joint", "tenon_length", "end_rail_width", "frame_stock", "frame_wood")


def _joints(carried: Carried, pieces: Pieces, *, is_head: bool) -> JointForces:
    """The ends of an end's rails on its posts, and of its stiles on its rails."""
    end = "head" if is_head else "foot"
    members, mates = (
        made_by(pieces, *(f"{end}.{name}" for name in names)) for names in (MEMBERS, MATES)
    )
    return forces_between(carried, pieces, members, mates)


@check("strength", "Glue holds the rails to their posts", source=SOURCE, remedies=REMEDIES)
def end_glue_holds(
    strength: Carried | Unjudged,
    pieces: Pieces,
    materials: Mapping[str, Material],
    end_joinery: EndJoint,
    stock_grade: StockGrade,
    post_width: Mm,
    joint_relief: Mm,
    shown_unit: ShownUnit,
    is_head: bool,
) -> Iterator[Finding]:
    """Who leans on a headboard, pushes or lifts the bed works at the joints of rails and posts."""
    if isinstance(strength, Unjudged) or end_joinery.kind == "pocket screw":
        return
    joints = _joints(strength, pieces, is_head=is_head)
    woods = Woods(materials, stock_grade)
    ends, asked = glued_ends(joints, pieces, end_joinery, woods, tilts=True)
    longest = Longest(post_width - LEAST_WALL - joint_relief, shown_unit)
    title = "Glue of rails and posts as the bed is moved"
    yield from findings(strength, pieces, ends, asked, title, longest)


@check(
    "strength",
    "Pocket screws hold the rails to their posts",
    source="NDS 2018, 12.2.2, 12.3.1, 12.4.1 and end grain 12.5.2, from memory",
    remedies=REMEDIES,
)
def end_screws_hold(
    strength: Carried | Unjudged,
    pieces: Pieces,
    screw_points: tuple[ScrewPoint, ...],
    materials: Mapping[str, Material],
    end_joinery: EndJoint,
    is_head: bool,
) -> Iterator[Finding]:
    """Glue on the rails' end grain is not counted: the screws alone hold a screwed end."""
    if isinstance(strength, Unjudged) or end_joinery.kind != "pocket screw":
        return
    points = [p for p in screw_points if p.screw.kind == "pocket screw" and p.bite > 0]
    joints = _joints(strength, pieces, is_head=is_head)
    ends, asked = screwed_ends(joints, pieces, points, materials, tilts=True)
    if not ends:
        return
    use = used(ends, asked) / lasting(strength.cases)[:, None]
    for _, title, others in in_use_and_moved(strength):
        case, worst = divmod(int(np.where(others, 0.0, use).argmax()), len(ends))
        found = at_most(100 * float(use[case, worst]), 100.0, tight=10.0, unit="%")
        said = f"{said_of(ends, asked, pieces, case, worst)}, {called(strength.cases[case])}."
        yield replace(
            advice(found) if title else found,
            id="moved" if title else "",
            title="Pocket screws of rails and posts as the bed is moved" if title else "",
            reason=said + (MOVE if title and found.margin < 0 else ""),
            pieces=ends[worst].pieces,
        )
