"""What the connectors cut into rails and end stiles of a long side. Read for left and right."""

from __future__ import annotations

from model.joints.connector import KnockDown, in_rail_end, in_stile_edge
from model.joints.work import Work
from model.part import Face, Point
from model.rules import rule
from model.units import Mm, Places


def _both_ends(knock: KnockDown, size: Point, up: Places) -> Work:
    return in_rail_end(knock, size, Face.NEAR, up) + in_rail_end(knock, size, Face.FAR, up)


@rule
def rail_connector_work(
    knock_down: KnockDown,
    rail_length: Mm,
    rail_width: Mm,
    frame_thickness: Mm,
    connector_in_rail: Places,
) -> Work:
    """A plain rail takes plates or bolts in both ends."""
    return _both_ends(knock_down, (rail_length, rail_width, frame_thickness), connector_in_rail)


@rule
def top_rail_connector_work(
    knock_down: KnockDown,
    rail_length: Mm,
    top_rail_width: Mm,
    frame_thickness: Mm,
    connector_in_top_rail: Places,
) -> Work:
    """The top rail of a face frame takes a bolt in both ends."""
    size = (rail_length, top_rail_width, frame_thickness)
    return _both_ends(knock_down, size, connector_in_top_rail)


@rule
def bottom_rail_connector_work(
    knock_down: KnockDown,
    rail_length: Mm,
    bottom_rail_width: Mm,
    frame_thickness: Mm,
    connector_in_bottom_rail: Places,
) -> Work:
    """The bottom rail of a face frame takes a bolt in both ends."""
    size = (rail_length, bottom_rail_width, frame_thickness)
    return _both_ends(knock_down, size, connector_in_bottom_rail)


@rule
def stile_connector_near(
    knock_down: KnockDown,
    stile_length: Mm,
    end_stile_least: Mm,
    frame_thickness: Mm,
    connector_in_stile: Places,
) -> Work:
    """The end stile at the foot post takes a plate in its outer edge, whatever its width."""
    size = (stile_length, end_stile_least, frame_thickness)
    return in_stile_edge(knock_down, size, Face.LOWER, connector_in_stile)


@rule
def stile_connector_far(
    knock_down: KnockDown,
    stile_length: Mm,
    last_end_stile: Mm,
    frame_thickness: Mm,
    connector_in_stile: Places,
) -> Work:
    """The end stile at the head post takes a plate in its outer edge."""
    size = (stile_length, last_end_stile, frame_thickness)
    return in_stile_edge(knock_down, size, Face.UPPER, connector_in_stile)
