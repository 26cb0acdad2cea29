"""Fixed fronts of a dummy side: the blocks that hold them. Read for left and right."""

from model.dimensions.fasteners import COVER, Fastener, longest_screw
from model.dimensions.spots import shifted
from model.errors import CannotBuild
from model.rules import rule
from model.units import Mm, Places, ShopGrid

LEAST_BLOCK: Mm = 40.0


@rule
def block_lap(dummy_block_width: Mm, mid_stile: Mm, first_end_stile: Mm, grid: ShopGrid) -> Mm:
    """A block laps behind its stile by half its own width, or half a stile that two share."""
    return grid.down(min(dummy_block_width / 2, mid_stile / 2, first_end_stile))


@rule
def block_places(
    opening_places: Places, is_dummy: bool, block_lap: Mm, opening_width: Mm, dummy_block_width: Mm
) -> Places:
    """A block stands behind each stile's edge."""
    if is_dummy and 2 * (dummy_block_width - block_lap) > opening_width:
        raise CannotBuild(
            "dummy_block_width", "Two blocks are wider than the opening they stand in."
        )
    return shifted(opening_places, -block_lap) if is_dummy else ()


@rule
def block_far_places(
    block_places: Places, block_lap: Mm, opening_width: Mm, dummy_block_width: Mm
) -> Places:
    """The block at the opening's far edge."""
    return shifted(block_places, 2 * block_lap + opening_width - dummy_block_width)


@rule
def block_height(opening_top: Mm, block_bottom: Mm, is_dummy: bool, grid: ShopGrid) -> Mm:
    """A block fills the height beside its stile, clear of any bearer that ends there."""
    height = grid.down(opening_top - block_bottom)
    if is_dummy and height < LEAST_BLOCK:
        raise CannotBuild(
            "bearer_height", "The bearers leave no room for the blocks behind the fixed fronts."
        )
    return height


@rule
def block_depth(back_plane: Mm, block_behind: Mm, box_front_plane: Mm) -> Mm:
    """A block reaches from behind its stile to the front's back."""
    return back_plane + block_behind - box_front_plane


@rule
def block_rabbet(back_plane: Mm, box_front_plane: Mm) -> Mm:
    """What is rabbeted off a block so that it laps behind its stile."""
    return back_plane - box_front_plane


@rule
def block_screw(block_depth: Mm, front_thickness: Mm) -> Fastener:
    """The longest screw through a block that stays inside its front."""
    return longest_screw(block_depth + front_thickness - COVER)
