"""What is cut into both rails of a face frame. Read for left, right and foot."""

from model.dimensions.side_frames import Shoulders
from model.joints.end_joint import EndJoint
from model.joints.rail_work import RailWork
from model.rules import rule
from model.units import Mm, Places, Spans


@rule
def panel_grooves(
    closed_bays: Places,
    opening_width: Mm,
    blind_bays: Places,
    blind_bay: Mm,
    panel_groove_depth: Mm,
) -> Spans:
    """A closed bay has a stopped groove in both rails, into the stiles' ground like the panel."""
    closed = tuple((a, a + opening_width) for a in closed_bays)
    blind = tuple((a, a + blind_bay) for a in blind_bays)
    return tuple((a - panel_groove_depth, b + panel_groove_depth) for a, b in (*blind, *closed))


@rule
def frame_rail_work(
    frame_joinery: EndJoint,
    stile_spans: Spans,
    stile_shoulders: Shoulders,
    panel_grooves: Spans,
    panel_thickness: Mm,
    panel_groove_depth: Mm,
    run_from: Mm,
) -> RailWork:
    """Both rails of a face frame take the same stiles and panels."""
    return RailWork(
        joint=frame_joinery, stiles=stile_spans,
        shoulders=tuple(stile_shoulders[low] for low, _ in stile_spans), grooves=panel_grooves,
        groove_width=panel_thickness, groove_depth=panel_groove_depth, starts_at=run_from,
    )  # fmt: skip
