"""Rails of the long sides: one solid rail, or the two rails of a face frame. Read for left and
right.
"""

from model.frame import Frame
from model.joints.rail_work import RailWork
from model.joints.work import Work
from model.materials import Material
from model.part import Face, Hold, Made, Part
from model.rules import rule
from model.units import Mm


def to_posts(row_name: str) -> tuple[Hold, ...]:
    """A side hangs on its posts at foot and head, and comes off again."""
    return tuple(
        Hold(f"{end}.post_{row_name}", "bed-rail connector", knock_down=True)
        for end in ("foot", "head")
    )


@rule
def side_rail(
    is_framed: bool,
    frame: Frame,
    run_from: Mm,
    front_plane: Mm,
    side_rail_bottom: Mm,
    rail_length: Mm,
    rail_width: Mm,
    frame_thickness: Mm,
    frame_wood: Material,
    row_name: str,
    rail_connector_work: Work,
) -> Made:
    """A plain side is one solid rail between the posts."""
    if is_framed:
        return ()
    return (
        Part(
            name="side rail",
            assembly=f"{row_name} side",
            length=rail_length,
            width=rail_width,
            thickness=frame_thickness,
            lies="uzv",
            at=(run_from, front_plane, side_rail_bottom),
            frame=frame,
            material=frame_wood.key,
            cuts=rail_connector_work.cuts,
            holes=rail_connector_work.holes,
            screws=rail_connector_work.screws,
            held=to_posts(row_name),
        ),
    )


@rule
def top_rail(
    is_framed: bool,
    frame: Frame,
    run_from: Mm,
    front_plane: Mm,
    opening_top: Mm,
    rail_length: Mm,
    top_rail_width: Mm,
    frame_thickness: Mm,
    frame_wood: Material,
    row_name: str,
    frame_rail_work: RailWork,
    top_rail_connector_work: Work,
) -> Made:
    """The top rail runs the full length between the posts: it is the bed's side rail."""
    if not is_framed:
        return ()
    size = (rail_length, top_rail_width, frame_thickness)
    work = frame_rail_work.on_edge(size, Face.LOWER) + top_rail_connector_work
    return (
        Part(
            name="top rail",
            assembly=f"{row_name} side",
            length=rail_length,
            width=top_rail_width,
            thickness=frame_thickness,
            lies="uzv",
            at=(run_from, front_plane, opening_top),
            frame=frame,
            material=frame_wood.key,
            cuts=work.cuts,
            holes=work.holes,
            screws=work.screws,
            held=to_posts(row_name),
        ),
    )


@rule
def bottom_rail(
    is_framed: bool,
    frame: Frame,
    run_from: Mm,
    front_plane: Mm,
    frame_bottom: Mm,
    rail_length: Mm,
    bottom_rail_width: Mm,
    frame_thickness: Mm,
    frame_wood: Material,
    row_name: str,
    frame_rail_work: RailWork,
    bottom_rail_connector_work: Work,
) -> Made:
    """The bottom rail runs the full length between the posts, and ties the stiles."""
    if not is_framed:
        return ()
    size = (rail_length, bottom_rail_width, frame_thickness)
    work = frame_rail_work.on_edge(size, Face.UPPER) + bottom_rail_connector_work
    return (
        Part(
            name="bottom rail",
            assembly=f"{row_name} side",
            length=rail_length,
            width=bottom_rail_width,
            thickness=frame_thickness,
            lies="uzv",
            at=(run_from, front_plane, frame_bottom),
            frame=frame,
            material=frame_wood.key,
            cuts=work.cuts,
            holes=work.holes,
            screws=work.screws,
            held=to_posts(row_name),
        ),
    )
