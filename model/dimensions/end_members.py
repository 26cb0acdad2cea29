"""What stands between the posts of an end and is jointed to them, lowest first."""

from __future__ import annotations

from typing import NamedTuple

from model.rules import rule
from model.units import Mm, Places, Spans


class Member(NamedTuple):
    """One rail: its lower and upper edge above the floor, and its tenon's shoulders there, mm."""

    bottom: float
    top: float
    lower: float
    upper: float


Members = tuple[Member, ...]


@rule
def low_members(
    is_framed: bool,
    frame_bottom: Mm,
    opening_bottom: Mm,
    is_skirted: bool,
    skirting_bottom: Mm,
    end_rail_bottom: Mm,
    tenon_shoulder: Mm,
    stile_clear: Mm,
) -> Members:
    """Under the end rail there may be a face frame's bottom rail, or a skirting."""
    frame = Member(frame_bottom, opening_bottom, tenon_shoulder, stile_clear)
    skirting = Member(skirting_bottom, end_rail_bottom, tenon_shoulder, tenon_shoulder)
    return ((frame,) if is_framed else ()) + ((skirting,) if is_skirted else ())


@rule
def end_rail_member(
    end_rail_bottom: Mm, end_rail_top: Mm, stile_clear: Mm, grooved_shoulder: Mm
) -> Members:
    """The end rail, at the height of the side rails."""
    return (Member(end_rail_bottom, end_rail_top, stile_clear, grooved_shoulder),)


@rule
def upper_rail_member(
    has_upper_rail: bool,
    upper_rail_bottom: Mm,
    end_height_built: Mm,
    grooved_shoulder: Mm,
    tenon_shoulder: Mm,
) -> Members:
    """The upper rail, at the top of the end."""
    upper = Member(upper_rail_bottom, end_height_built, grooved_shoulder, tenon_shoulder)
    return (upper,) if has_upper_rail else ()


@rule
def end_members(
    low_members: Members, end_rail_member: Members, upper_rail_member: Members
) -> Members:
    """All rails of the end are jointed to its posts in the same way."""
    return low_members + end_rail_member + upper_rail_member


@rule
def post_grooves(
    is_grooved: bool, end_rail_top: Mm, upper_rail_bottom: Mm, panel_groove_depth: Mm
) -> Spans:
    """A post's groove begins and ends where the rails' grooves have their floors."""
    groove = (end_rail_top - panel_groove_depth, upper_rail_bottom + panel_groove_depth)
    return (groove,) if is_grooved else ()


@rule
def rail_across_left(rail_set_back: Mm, rail_back_plane: Mm) -> Places:
    """Where the left side's rail meets the left post's width, from its outer face."""
    return (rail_set_back, rail_back_plane)


@rule
def rail_across_right(post_width: Mm, rail_set_back: Mm, rail_back_plane: Mm) -> Places:
    """Where the right side's rail meets the right post's width, from its inner face."""
    return (post_width - rail_back_plane, post_width - rail_set_back)
