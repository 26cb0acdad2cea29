"""Rails of the long sides: one solid rail, or the two rails of a face frame. Read for left and
right.
"""

from dataclasses import replace

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
def side_rail_blank(
    frame: Frame,
    run_from: Mm,
    front_plane: Mm,
    rail_length: Mm,
    rail_width: Mm,
    frame_thickness: Mm,
    frame_wood: Material,
    row_name: str,
) -> Part:
    """What all rails of a side have alike: they run between the posts and hang on both."""
    return Part(
        name="side rail",
        assembly=f"{row_name} side",
        length=rail_length,
        width=rail_width,
        thickness=frame_thickness,
        lies="uzv",
        at=(run_from, front_plane, 0.0),
        frame=frame,
        material=frame_wood.key,
        held=to_posts(row_name),
    )


def _at_height(blank: Part, bottom: Mm, work: Work) -> Part:
    """The rail with its lower edge at `bottom`, cut as its joints ask."""
    return replace(
        blank,
        at=(blank.at[0], blank.at[1], bottom),
        cuts=work.cuts,
        holes=work.holes,
        screws=work.screws,
    )


@rule
def side_rail(
    is_framed: bool, side_rail_blank: Part, side_rail_bottom: Mm, rail_connector_work: Work
) -> Made:
    """A plain side is one solid rail between the posts."""
    if is_framed:
        return ()
    return (_at_height(side_rail_blank, side_rail_bottom, rail_connector_work),)


@rule
def top_rail(
    is_framed: bool,
    side_rail_blank: Part,
    opening_top: Mm,
    top_rail_width: Mm,
    frame_rail_work: RailWork,
    top_rail_connector_work: Work,
) -> Made:
    """The top rail runs the full length between the posts: it is the bed's side rail."""
    if not is_framed:
        return ()
    rail = replace(side_rail_blank, name="top rail", width=top_rail_width)
    work = frame_rail_work.on_edge(rail.size, Face.LOWER) + top_rail_connector_work
    return (_at_height(rail, opening_top, work),)


@rule
def bottom_rail(
    is_framed: bool,
    side_rail_blank: Part,
    frame_bottom: Mm,
    bottom_rail_width: Mm,
    frame_rail_work: RailWork,
    bottom_rail_connector_work: Work,
) -> Made:
    """The bottom rail runs the full length between the posts, and ties the stiles."""
    if not is_framed:
        return ()
    rail = replace(side_rail_blank, name="bottom rail", width=bottom_rail_width)
    work = frame_rail_work.on_edge(rail.size, Face.UPPER) + bottom_rail_connector_work
    return (_at_height(rail, frame_bottom, work),)
