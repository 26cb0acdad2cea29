"""Headboard and footboard: heights and rails, whatever style stands between them."""

from __future__ import annotations

from model.brief.ends import EndStyle
from model.brief.posts import FrameJoint
from model.dimensions.joinery import LEAST_WALL
from model.errors import CannotBuild
from model.rules import rule
from model.units import Count, Mm, ShopGrid

LEAST_CLEAR: Mm = 40.0  # between two rails, to reach in with a clamp; common practice, no source


@rule
def has_upper_rail(style: EndStyle) -> bool:
    """Panels, planks and slats stand between the end rail and an upper rail."""
    return style in ("panel", "planks", "slats")


@rule
def is_grooved(style: EndStyle) -> bool:
    """Panels and planks are held in grooves of rails and posts."""
    return style in ("panel", "planks")


@rule
def lower_rail_width(is_framed: bool, top_rail_width: Mm, end_rail_width: Mm) -> Mm:
    """With drawers at the foot, the end rail is the top rail of the face frame."""
    return top_rail_width if is_framed else end_rail_width


@rule
def end_rail_bottom(rail_top: Mm, lower_rail_width: Mm, floor_gap: Mm) -> Mm:
    """The end rail lies level with the side rails' top edge and reaches down from there."""
    if rail_top - lower_rail_width < floor_gap:
        raise CannotBuild(
            "end_rail_width", "The end rail would reach down into the floor gap.",
        )  # fmt: skip
    return rail_top - lower_rail_width


@rule
def height_least(has_upper_rail: bool, rail_top: Mm, upper_rail_width: Mm) -> Mm:
    """An end stands at least level with the side rails, with room under an upper rail."""
    return rail_top + (upper_rail_width + LEAST_CLEAR if has_upper_rail else 0.0)


@rule
def end_height_built(
    style: EndStyle,
    height: Mm,
    height_least: Mm,
    rail_top: Mm,
    low_rail_rise: Mm,
    grid: ShopGrid,
) -> Mm:
    """The end is as high as wished, on the grid; a low rail or no style follows the side rails."""
    if style == "none":
        return rail_top
    if style == "low rail":
        return rail_top + low_rail_rise
    if height < height_least - grid.step:
        raise CannotBuild("height", "The end would be lower than its rails stack up.")
    return max(grid.near(height), grid.up(height_least))


@rule
def post_top(end_height_built: Mm) -> Mm:
    """Posts end level with the highest rail between them."""
    return end_height_built


@rule
def end_rail_top(style: EndStyle, rail_top: Mm, end_height_built: Mm) -> Mm:
    """A low rail is one board up to the end's height; others end level with the side rails."""
    return end_height_built if style == "low rail" else rail_top


@rule
def end_rail_high(end_rail_top: Mm, end_rail_bottom: Mm) -> Mm:
    """The end rail's width, from its lower to its upper edge."""
    return end_rail_top - end_rail_bottom


@rule
def end_rail_length(between_posts: Mm, end_joint_adds: Mm) -> Mm:
    """Rails between the posts are cut as long as their shoulders stand apart, and both tenons."""
    return between_posts + 2 * end_joint_adds


@rule
def end_rail_from(end_rail_length: Mm) -> Mm:
    """End rails lie in the middle of the bed."""
    return -end_rail_length / 2


@rule
def upper_rail_bottom(end_height_built: Mm, upper_rail_width: Mm) -> Mm:
    """The upper rail's top edge is the end's height."""
    return end_height_built - upper_rail_width


@rule
def clear_height(has_upper_rail: bool, upper_rail_bottom: Mm, end_rail_top: Mm) -> Mm:
    """What shows of panels, planks or slats between the two rails."""
    return upper_rail_bottom - end_rail_top if has_upper_rail else 0.0


@rule
def grooved_shoulder(is_grooved: bool, panel_groove_depth: Mm, tenon_shoulder: Mm) -> Mm:
    """Beside a groove the tenon stands back by its depth: the panel's corner goes there."""
    return panel_groove_depth if is_grooved else tenon_shoulder


@rule
def stile_clear(
    is_framed: bool, end_joint: FrameJoint, tenon_shoulder: Mm, frame_joint_reach: Mm
) -> Mm:
    """In a face frame, dowels and pockets of the rails keep clear of the end stiles' joints."""
    in_the_way = is_framed and end_joint in ("dowel", "pocket screw")
    return max(tenon_shoulder, frame_joint_reach) if in_the_way else tenon_shoulder


@rule
def bottom_rail_clear(
    is_framed: bool,
    end_joint: FrameJoint,
    bottom_rail_width: Mm,
    stile_clear: Mm,
    tenon_shoulder: Mm,
    dowel_diameter: Mm,
) -> Mm:
    """What the stiles' joints leave of the foot's bottom rail holds a dowel."""
    room = bottom_rail_width - stile_clear - tenon_shoulder
    if is_framed and end_joint == "dowel" and room < dowel_diameter:
        raise CannotBuild(
            "bottom_rail_width", "Beside the stiles' joints the bottom rail cannot hold a dowel.",
        )  # fmt: skip
    return room


@rule
def end_rail_clear(
    is_framed: bool,
    end_joint: FrameJoint,
    end_rail_high: Mm,
    stile_clear: Mm,
    grooved_shoulder: Mm,
    dowel_diameter: Mm,
) -> Mm:
    """What joints and grooves leave of the end rail's ends holds a dowel."""
    room = end_rail_high - stile_clear - grooved_shoulder
    if end_joint == "dowel" and room < dowel_diameter:
        raise CannotBuild(
            "top_rail_width" if is_framed else "end_rail_width",
            "Beside joints and grooves the end rail has no room for a dowel.",
        )  # fmt: skip
    return room


@rule
def rail_edge_reach(
    style: EndStyle,
    mid_stiles: Count,
    panel_groove_depth: Mm,
    end_joint_reach: Mm,
    joint_relief: Mm,
) -> Mm:
    """How deep grooves and joints go into the rails' edges that face each other."""
    if style == "panel" and mid_stiles:
        return max(panel_groove_depth, end_joint_reach)
    reaches = {"slats": panel_groove_depth + joint_relief}
    return reaches.get(style, panel_groove_depth if style in ("panel", "planks") else 0.0)


@rule
def upper_rail_wall(has_upper_rail: bool, upper_rail_width: Mm, rail_edge_reach: Mm) -> Mm:
    """Above what goes into its lower edge, the upper rail keeps wood."""
    if has_upper_rail and upper_rail_width - rail_edge_reach < LEAST_WALL:
        raise CannotBuild(
            "upper_rail_width", "The joints would come through the upper rail.",
        )  # fmt: skip
    return upper_rail_width - rail_edge_reach


@rule
def end_rail_wall(
    end_rail_high: Mm, rail_edge_reach: Mm, is_framed: bool, frame_joint_reach: Mm
) -> Mm:
    """Between what goes into its two edges, the end rail keeps wood."""
    wall = end_rail_high - rail_edge_reach - (frame_joint_reach if is_framed else 0.0)
    if wall < LEAST_WALL:
        raise CannotBuild(
            "top_rail_width" if is_framed else "end_rail_width",
            "The joints in the end rail's two edges would meet.",
        )  # fmt: skip
    return wall


@rule
def post_wall(post_width: Mm, end_joint_reach: Mm) -> Mm:
    """Behind the end rails' joints the post keeps wood."""
    if post_width - end_joint_reach < LEAST_WALL:
        raise CannotBuild(
            "tenon_length", "The end rails' tenons would come through the posts.",
            involved=("post_width",),
        )  # fmt: skip
    return post_width - end_joint_reach
