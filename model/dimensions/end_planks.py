"""Ends of upright tongue-and-groove planks between two rails."""

from __future__ import annotations

from model.brief.ends import EndStyle
from model.rules import rule
from model.units import Count, Mm, Places, ShopGrid


@rule
def planks_across(between_posts: Mm, panel_hold: Mm) -> Mm:
    """The row of planks reaches into the grooves of both posts."""
    return between_posts + 2 * panel_hold


@rule
def plank_count(style: EndStyle, planks_across: Mm, plank_width: Mm, plank_gap: Mm) -> Count:
    """As many planks as come nearest to the wished width."""
    count = round((planks_across + plank_gap) / (plank_width + plank_gap))
    return max(2, count) if style == "planks" else 0


@rule
def inner_plank_count(plank_count: Count) -> Count:
    """All but the first and the last have a tongue and a groove."""
    return max(plank_count - 2, 0)


@rule
def plank_cover(planks_across: Mm, plank_count: Count, plank_gap: Mm, grid: ShopGrid) -> Mm:
    """All planks show alike, so that one rip fence setting serves them."""
    return grid.near((planks_across + plank_gap) / max(plank_count, 1) - plank_gap)


@rule
def edge_plank_cover(
    planks_across: Mm, plank_cover: Mm, inner_plank_count: Count, plank_gap: Mm, grid: ShopGrid
) -> Mm:
    """The first and last plank share what rounding the others left over."""
    inner = inner_plank_count * (plank_cover + plank_gap) + plank_gap
    return grid.down((planks_across - inner) / 2)


@rule
def planks_built(
    plank_cover: Mm, edge_plank_cover: Mm, inner_plank_count: Count, plank_gap: Mm
) -> Mm:
    """The row of planks as cut, from groove to groove of the posts."""
    return 2 * edge_plank_cover + inner_plank_count * (plank_cover + plank_gap) + plank_gap


@rule
def plank_float_built(between_posts: Mm, panel_groove_depth: Mm, planks_built: Mm) -> Mm:
    """Room for movement in each post's groove, with what the grid left over."""
    return (between_posts + 2 * panel_groove_depth - planks_built) / 2


@rule
def plank_tongue(plank_gap: Mm, grid: ShopGrid) -> Mm:
    """A tongue crosses the gap and still goes a quarter inch into its groove.

    Source: common practice, no source
    """
    return grid.near(6.35 + plank_gap)


@rule
def plank_tongue_thickness(panel_thickness: Mm, grid: ShopGrid) -> Mm:
    """A tongue takes the middle third of its plank.

    Source: common practice, no source
    """
    return max(grid.near(panel_thickness / 3), grid.step)


@rule
def plank_cut_width(plank_cover: Mm, plank_tongue: Mm) -> Mm:
    """A plank is cut as wide as it shows, and its tongue."""
    return plank_cover + plank_tongue


@rule
def first_plank_width(edge_plank_cover: Mm, plank_tongue: Mm) -> Mm:
    """The first plank has a plain edge in the post's groove and a tongue at the other."""
    return edge_plank_cover + plank_tongue


@rule
def first_plank_from(planks_built: Mm) -> Mm:
    """The row of planks lies in the middle of the end."""
    return -planks_built / 2


@rule
def inner_plank_places(
    first_plank_from: Mm,
    edge_plank_cover: Mm,
    plank_cover: Mm,
    plank_gap: Mm,
    inner_plank_count: Count,
) -> Places:
    """Where each plank between the first and the last begins."""
    first = first_plank_from + edge_plank_cover + plank_gap
    return tuple(first + i * (plank_cover + plank_gap) for i in range(inner_plank_count))


@rule
def last_plank_from(planks_built: Mm, edge_plank_cover: Mm) -> Mm:
    """The last plank's plain edge goes into the right post's groove."""
    return planks_built / 2 - edge_plank_cover
