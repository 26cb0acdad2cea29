"""Thicknesses as they will be: a measured value beats the nominal one."""

from model.brief.deck import DeckKind
from model.brief.posts import PostBuild
from model.rules import rule
from model.units import Count, Measured, Mm


@rule
def frame_thickness(frame_stock: Mm, frame_stock_measured: Measured) -> Mm:
    """Rails and stiles are as thick as the stock that was measured, else as the stock is sold."""
    return frame_stock if frame_stock_measured is None else frame_stock_measured


@rule
def slat_thickness(slat_stock: Mm, slat_stock_measured: Measured) -> Mm:
    """Slats are as thick as measured, else as sold."""
    return slat_stock if slat_stock_measured is None else slat_stock_measured


@rule
def deck_sheet_thickness(deck_stock: Mm, deck_stock_measured: Measured) -> Mm:
    """Deck panels are as thick as measured, else as sold."""
    return deck_stock if deck_stock_measured is None else deck_stock_measured


@rule
def deck_thickness(deck: DeckKind, slat_thickness: Mm, deck_sheet_thickness: Mm) -> Mm:
    """The mattress lies on slats or on panels, whichever the deck is made of."""
    return slat_thickness if deck == "slats" else deck_sheet_thickness


@rule
def box_thickness(box_stock: Mm, box_stock_measured: Measured) -> Mm:
    """Box sides are as thick as the sheet that was measured, else as it is sold."""
    return box_stock if box_stock_measured is None else box_stock_measured


@rule
def bottom_thickness(bottom_stock: Mm, bottom_stock_measured: Measured) -> Mm:
    """Bottoms are as thick as the sheet that was measured; their grooves are cut to it."""
    return bottom_stock if bottom_stock_measured is None else bottom_stock_measured


@rule
def front_thickness(front_stock: Mm, front_stock_measured: Measured) -> Mm:
    """Fronts are as thick as measured, else as sold."""
    return front_stock if front_stock_measured is None else front_stock_measured


@rule
def panel_layer_thickness(panel_stock: Mm, panel_stock_measured: Measured) -> Mm:
    """Each layer of an end's panel is as thick as measured, else as sold."""
    return panel_stock if panel_stock_measured is None else panel_stock_measured


@rule
def panel_thickness(panel_layer_thickness: Mm, panel_layers: Count) -> Mm:
    """A panel of glued layers is as thick as all of them; its grooves are cut to that."""
    return panel_layers * panel_layer_thickness


@rule
def post_along(
    post_build: PostBuild, post_depth: Mm, post_layers: Count, frame_thickness: Mm
) -> Mm:
    """A laminated post is as deep along the bed as its layers make it."""
    return post_depth if post_build == "solid" else post_layers * frame_thickness


@rule
def mattress_across(mattress_piece_width: Mm, mattress_pieces: Count) -> Mm:
    """A mattress in two pieces is as wide as both together, as measured where it was."""
    return mattress_pieces * mattress_piece_width


@rule
def mattress_along(mattress_length: Mm, mattress_length_measured: Measured) -> Mm:
    """The mattress is as long as measured, else as its label says."""
    return mattress_length if mattress_length_measured is None else mattress_length_measured


@rule
def mattress_high(mattress_thickness: Mm, mattress_thickness_measured: Measured) -> Mm:
    """The mattress is as thick as measured, else as its label says."""
    return (
        mattress_thickness if mattress_thickness_measured is None else mattress_thickness_measured
    )


@rule
def mattress_piece_width(mattress_width: Mm, mattress_width_measured: Measured) -> Mm:
    """Each piece of the mattress is as wide as measured, else as its label says."""
    return mattress_width if mattress_width_measured is None else mattress_width_measured


@rule
def mattress_from_x(mattress_across: Mm) -> Mm:
    """The mattress lies centred across the bed."""
    return -mattress_across / 2
