"""Does the glue of a face frame hold its stiles to its rails? Asked of every row."""

from collections.abc import Iterator, Mapping

from model.brief.shop import ShownUnit
from model.checks.record import Finding, check
from model.checks.strength.glue_findings import SOURCE, Longest, findings
from model.checks.strength.glued_ends import Woods, glued_ends
from model.checks.strength.joint_forces import forces_between, made_by
from model.checks.strength.stile_screws import RAILS
from model.dimensions.joinery import LEAST_WALL
from model.joints.end_joint import EndJoint
from model.materials import Material, StockGrade
from model.parts.pieces import Pieces
from model.structure.record import Carried, Unjudged
from model.units import Mm


@check(
    "strength",
    "Glue holds the stiles to their rails",
    source=SOURCE,
    remedies=("tenon_length", "frame_joint", "end_stile_least", "mid_stile", "frame_stock"),
)
def stile_glue_holds(
    strength: Carried | Unjudged,
    pieces: Pieces,
    materials: Mapping[str, Material],
    frame_joinery: EndJoint,
    stock_grade: StockGrade,
    bottom_rail_width: Mm,
    joint_relief: Mm,
    shown_unit: ShownUnit,
    row_name: str,
) -> Iterator[Finding]:
    """A face frame racks as the bed is sat on, pushed and dragged: tenons or dowels hold it."""
    if isinstance(strength, Unjudged) or frame_joinery.kind == "pocket screw":
        return
    stiles, rails = made_by(pieces, f"{row_name}.stiles"), made_by(pieces, *RAILS)
    joints = forces_between(strength, pieces, stiles, rails)
    ends, asked = glued_ends(joints, pieces, frame_joinery, Woods(materials, stock_grade))
    longest = Longest(bottom_rail_width - LEAST_WALL - joint_relief, shown_unit)
    title = "Glue of the stiles as the bed is moved"
    yield from findings(strength, pieces, ends, asked, title, longest)
