"""Pulls on the fronts, and the screws that hold pull and front. Read for left, right and foot."""

from model.brief.drawers import FrontStyle, PullLayout
from model.dimensions.fasteners import Fastener, longest_screw
from model.dimensions.spots import shifted
from model.errors import CannotBuild
from model.materials import Pull, PullScrew, pull_screw_for
from model.rules import rule
from model.units import Count, Mm, Places, ShopGrid, snapped

POCKET_CLEAR: Mm = 8.0  # from a pocket's mouth to the middle of a wide hole; from memory
WASHER: Mm = 1.0  # thick, under the head of a pull's screw in its wide hole; from memory
PACKER: Mm = 38.1
DRIVER_ROOM: Mm = (
    25.0  # 1 in from the bottom to a screw driven squarely; common practice, no source
)
ROWS_APART: Mm = (
    21.0  # 5 x 4.17 mm, No. 8; Source: NDS 2018 commentary, table C12.1.5.7, from memory
)
GROOVE_CLEAR: Mm = 3.1  # half the shank of a No. 8 and 1 mm, to the panel's groove; from memory
LEAST_HELD: Mm = 8.0  # height of rail behind which a front screw finds its place
TENON_CLEAR: Mm = 8.0  # from a stub tenon's shoulder to a screw; common practice, no source
PAIR_AT = 5  # a pair of pulls stands a fifth of the width from its ends; common practice


@rule
def has_pull(pull: Pull, front_count: Count) -> bool:
    """A cut-out and a grip of its own need no pull."""
    return front_count > 0 and pull.projection_mm > 0


@rule
def pull_length(pull: Pull) -> Mm:
    """The pull's size along the front."""
    return pull.length_mm


@rule
def pull_height(pull: Pull) -> Mm:
    """The pull's size up the front."""
    return pull.height_mm


@rule
def pull_projection(pull: Pull) -> Mm:
    """How far a pull stands out of its front."""
    return pull.projection_mm


@rule
def grip_width(
    front_style: FrontStyle,
    front_width: Mm,
    front_field_width: Mm,
    pull_length: Mm,
    pull_layout: PullLayout,
    front_count: Count,
) -> Mm:
    """What a front has for its pulls across: its width, or its panel's."""
    width = front_width if front_style == "slab" else front_field_width
    least = (
        pull_length if pull_layout == "centred" else _pair_needs(front_width, width, pull_length)
    )
    if front_count and width < least - 1e-6:
        raise CannotBuild("pull", "The pulls are longer than the fronts have room for.")
    return width


def _pair_needs(front: Mm, width: Mm, pull_length: Mm) -> Mm:
    """The least field that a pair needs at a fifth of the front from each end."""
    between = front * (1 - 2 / PAIR_AT)
    if between < pull_length:
        return width + 1
    return between + pull_length


@rule
def grip_height(
    front_style: FrontStyle,
    front_height: Mm,
    front_field_height: Mm,
    pull_height: Mm,
    front_count: Count,
) -> Mm:
    """What a front has for its pulls up: its height, or its panel's."""
    height = front_height if front_style == "slab" else front_field_height
    if front_count and height < pull_height - 1e-6:
        raise CannotBuild("pull", "The pull is higher than the fronts have room for.")
    return height


@rule
def pull_in(front_width: Mm, pull_layout: PullLayout, pull_length: Mm, grid: ShopGrid) -> Mm:
    """Pulls are centred, or a pair, each a fifth of the width from the front's end.

    Source: common practice, no source
    """
    middle = front_width / (2 if pull_layout == "centred" else PAIR_AT)
    return grid.near(middle - pull_length / 2)


@rule
def pull_places(front_places: Places, pull_in: Mm, has_pull: bool) -> Places:
    """The first or only pull of each front."""
    return shifted(front_places, pull_in) if has_pull else ()


@rule
def second_pull_places(
    pull_places: Places, pull_layout: PullLayout, front_width: Mm, pull_in: Mm, pull_length: Mm
) -> Places:
    """The second pull of a pair."""
    if pull_layout == "centred":
        return ()
    return shifted(pull_places, front_width - 2 * pull_in - pull_length)


@rule
def pull_middle(front_bottom: Mm, front_height: Mm) -> Mm:
    """Pulls sit half-way up the front, from the floor."""
    return front_bottom + front_height / 2


@rule
def pull_bottom(pull_middle: Mm, pull_height: Mm) -> Mm:
    """The pull's lower edge, from the floor."""
    return pull_middle - pull_height / 2


@rule
def pull_plane(front_panel_plane: Mm, pull_projection: Mm) -> Mm:
    """A pull stands out of the front's face, or of its panel's."""
    return front_panel_plane - pull_projection


@rule
def pull_grip(
    front_thickness: Mm, front_panel_recess: Mm, box_thickness: Mm, drawer_count: Count
) -> Mm:
    """What the pull's screws pass through: the front, and the box front behind it with a washer."""
    return front_thickness - front_panel_recess + (box_thickness + WASHER if drawer_count else 0.0)


@rule
def pull_packer_thickness(
    front_style: FrontStyle,
    front_thickness: Mm,
    front_panel_recess: Mm,
    front_panel_stock: Mm,
    pull_screw: PullScrew | None,
    drawer_count: Count,
) -> Mm:
    """A packer glued behind the panel of a framed front fills the air to the box front, or the
    pull's screws would bend the panel over it.
    """
    if front_style == "slab" or pull_screw is None or not drawer_count:
        return 0.0
    return snapped(front_thickness - front_panel_recess - front_panel_stock)


@rule
def pull_packer_width(front_field_height: Mm, grid: ShopGrid) -> Mm:
    """A packer is as wide up the front as its screws clamp, no wider than the panel shows.

    Source: common practice, no source (1 1/2 in)
    """
    return grid.down(min(PACKER, front_field_height))


@rule
def pull_packer_length(pull: Pull, pull_packer_width: Mm, grid: ShopGrid) -> Mm:
    """One packer serves both screws of a pull."""
    return grid.up(pull.hole_spacing_mm) + pull_packer_width


@rule
def pull_screw(pull_grip: Mm, pull: Pull, has_pull: bool) -> PullScrew | None:
    """Pull screws pass both thicknesses and bite into the pull."""
    return pull_screw_for(pull_grip, pull.least_thread_mm) if has_pull and pull.holes else None


@rule
def pull_holes(pull: Pull) -> Places:
    """Where a pull's screws are, from its end."""
    middle, apart = pull.length_mm / 2, pull.hole_spacing_mm
    return (middle - apart / 2, middle + apart / 2) if pull.holes == 2 else (middle,) * pull.holes


@rule
def hand_hole_width(pull: Pull) -> Mm:
    """A hand hole through front and box front, in place of a pull."""
    return pull.length_mm if pull.kind == "cut-out" else 0.0


@rule
def front_screw_heights(
    front_style: FrontStyle,
    box_floor: Mm,
    box_top: Mm,
    front_bottom: Mm,
    front_top: Mm,
    front_stile_width: Mm,
    front_groove_depth: Mm,
    drawer_count: Count,
    box_bottom: Mm,
    grid: ShopGrid,
) -> Places:
    """Front screws go from inside the box into solid wood, of a framed front into its rails, and as
    high above the drawer's bottom as a driver needs, where that wood reaches so high.
    """
    if front_style == "slab":
        quarter = (box_top - box_floor) / 4
        least = DRIVER_ROOM if 3 * quarter - DRIVER_ROOM >= ROWS_APART else quarter
        lower = grid.up(box_floor + max(quarter, least) - box_bottom)
        return (box_bottom + lower, box_bottom + grid.down(box_top - quarter - box_bottom))
    solid = front_stile_width - front_groove_depth
    low, high = front_bottom + solid, front_top - solid
    if drawer_count and min(low - box_floor, box_top - high) < LEAST_HELD:
        raise CannotBuild(
            "front_stile_width",
            "Screws from inside the box would miss the rails of the fronts.",
        )
    wished, most = box_floor + DRIVER_ROOM - box_bottom, low - GROOVE_CLEAR - box_bottom
    return (
        box_bottom + min(grid.up(wished), grid.down(most)),
        box_bottom + grid.near((high + box_top) / 2 - box_bottom),
    )


@rule
def front_screw_in(
    box_front_length: Mm,
    framed_places: Places,
    front_stile_width: Mm,
    box_front_places: Places,
    box_pocket_reach: Mm,
    grid: ShopGrid,
) -> Mm:
    """Front screws stand a sixth of the box front from its ends, and clear of a rail's tenon and of
    the pockets of a butted corner.

    Source: common practice, no source
    """
    pockets = box_pocket_reach + POCKET_CLEAR if box_pocket_reach else 0.0
    least = max(box_front_length / 6, min(pockets, box_front_length / 3))
    if not framed_places or not box_front_places:
        return grid.near(least)
    tenon_end = framed_places[0] + front_stile_width - box_front_places[0]
    return grid.near(max(least, tenon_end + TENON_CLEAR))


@rule
def front_screw(front_screw_most: Mm) -> Fastener:
    """The longest screw that holds a front and does not come through it."""
    return longest_screw(front_screw_most)
