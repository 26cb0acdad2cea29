"""Heights of guides and stops, from the floor up, and of the blocks behind fixed fronts."""

from model.errors import CannotBuild
from model.rules import rule
from model.units import Mm, ShopGrid

STOP_CATCH: Mm = 8.0  # how far a stop reaches below the rail's edge; common practice, no source
LEAST_STRIP: Mm = 2.0  # a guide strip that reaches down less steers nothing


@rule
def guide_drop(
    box_bottom_room: Mm, has_centre_runner: bool, has_drawers: bool, grid: ShopGrid
) -> Mm:
    """Guide strips reach down beside the centre runner, and still pass over the bottom rail."""
    drop = grid.down(box_bottom_room * 2 / 3)
    if has_drawers and has_centre_runner and drop < LEAST_STRIP:
        raise CannotBuild(
            "box_bottom_room", "Guide strips would not reach down beside the centre runner.",
        )  # fmt: skip
    return drop


@rule
def guide_height(bottom_up: Mm, guide_drop: Mm) -> Mm:
    """From the bottom's lower side down beside the runner."""
    return bottom_up + guide_drop


@rule
def guide_bottom(box_bottom: Mm, guide_drop: Mm) -> Mm:
    """The guide strips' lower edge, from the floor."""
    return box_bottom - guide_drop


@rule
def stop_height(bottom_up: Mm, box_bottom_room: Mm, grid: ShopGrid) -> Mm:
    """A stop under the bottom reaches below the upper edge of the bottom rail and catches there."""
    return grid.up(bottom_up + box_bottom_room + STOP_CATCH)


@rule
def stop_width(grid: ShopGrid) -> Mm:
    """Stops are this wide along the row.

    Source: common practice, no source
    """
    return grid.near(30.0)


@rule
def stop_bottom(bottom_under: Mm, stop_height: Mm) -> Mm:
    """The stop's lower edge, from the floor."""
    return bottom_under - stop_height


@rule
def rear_stop_height(has_centre_runner: bool, bearer_height: Mm, grid: ShopGrid) -> Mm:
    """A rear stop is as high as its bearer, or stands up from the centre runner."""
    return grid.near(40.0) if has_centre_runner else bearer_height


@rule
def rear_stop_bottom(has_centre_runner: bool, box_bottom: Mm, bearer_bottom: Mm) -> Mm:
    """A rear stop begins with its bearer, or stands on the centre runner."""
    return box_bottom if has_centre_runner else bearer_bottom


@rule
def rear_stop_width(has_centre_runner: bool, bearer_across: Mm, runner_width: Mm) -> Mm:
    """A rear stop reaches across the box side, or over the centre runner."""
    return bearer_across if has_centre_runner else runner_width


@rule
def block_behind(grid: ShopGrid) -> Mm:
    """Blocks that hold fixed fronts lap this thick behind their stiles.

    Source: common practice, no source (1/2 in)
    """
    return grid.near(12.7)
