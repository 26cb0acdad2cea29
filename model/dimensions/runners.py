"""Heights of what carries the boxes: bearers, runners and kickers, from the floor up."""

from model.brief.drawers import BearerFixing, RearSupport
from model.dimensions.brackets import HOLES
from model.dimensions.fasteners import COVER, Fastener, longest_screw
from model.errors import CannotBuild
from model.materials import Slide, wood_screw
from model.mechanics.fasteners.spacing import screw_distances
from model.rules import rule
from model.units import Count, Mm, ShopGrid

# Wood above and below a line of slide screws: 2.5 x 3.51 mm, No. 6.
# Source: NDS 2018 commentary, table C12.1.5.7, from memory
SCREW_BACKING: Mm = 8.8
JOINT_CLEAR: Mm = 6.0  # from a No. 8 of a bracket to the joint of rail and stile; from memory
LEAST_SEAT: Mm = 3.0  # of a runner against the rail that a bracket holds it to
# The same, held by screws in its middle: No. 6, 2.5 x 3.51 mm to either edge.
LEAST_SCREWED: Mm = 17.6  # Source: NDS 2018 commentary, table C12.1.5.7, from memory
LEAST_KICKER: Mm = 6.0  # a thinner strip bends; common practice, no source


@rule
def has_centre_runner(slide: Slide) -> bool:
    """A centre runner carries the box in its middle; all others have a bearer on each side."""
    return slide.kind == "centre runner"


@rule
def has_wooden_runners(slide: Slide) -> bool:
    """Wooden runners carry the box under both sides."""
    return slide.kind == "wooden runner"


@rule
def has_skids(is_side_mount: bool, rear_support: RearSupport) -> bool:
    """Skids may bear the back of a box that is longer than its slide."""
    return is_side_mount and rear_support == "skid"


@rule
def runner_bottom(
    has_wooden_runners: bool, has_skids: bool, box_bottom: Mm, runner_stock: Mm, has_drawers: bool
) -> Mm:
    """A runner or skid lies under the box side, its top at the box's lower edge."""
    bottom = box_bottom - runner_stock
    if has_drawers and (has_wooden_runners or has_skids) and bottom < 0:
        raise CannotBuild(
            "runner_stock", "The runners under the boxes would stand below the floor."
        )
    return bottom


@rule
def bearer_rise(has_centre_runner: bool, bearer_height: Mm, bearer_stock: Mm) -> Mm:
    """Bearers stand on edge; a centre runner lies flat, so that the box sits steadier."""
    return bearer_stock if has_centre_runner else bearer_height


@rule
def bearer_across(has_centre_runner: bool, bearer_height: Mm, bearer_stock: Mm) -> Mm:
    """How wide a bearer is along the row."""
    return bearer_height if has_centre_runner else bearer_stock


@rule
def slide_up_most(
    box_height: Mm, slide_section: Mm, has_skids: bool, bearer_height: Mm, runner_stock: Mm
) -> Mm:
    """A slide may hang as high on its box as the box side is, and no higher than the bearer, which
    begins at the skids' lower edge, backs its screws.
    """
    side = box_height - slide_section / 2
    return min(side, bearer_height - runner_stock - SCREW_BACKING) if has_skids else side


@rule
def slide_bearer_bottom(
    opening_bottom: Mm,
    slide_centre: Mm,
    bearer_height: Mm,
    bracket_drop: Mm,
    grid: ShopGrid,
) -> Mm:
    """A bearer stands level with the opening, so that its brackets find the bottom rail, or as much
    higher as the screws of its slide need wood above them, those of brackets clear of the joint
    between rail and stile.
    """
    needs = slide_centre + SCREW_BACKING - bearer_height - opening_bottom
    if needs > 0 and bracket_drop:
        for share in HOLES:
            below = bracket_drop * share
            needs = below + JOINT_CLEAR if abs(needs - below) < JOINT_CLEAR else needs
    return opening_bottom + max(0.0, grid.up(needs))


@rule
def bearer_bottom(
    has_centre_runner: bool,
    has_wooden_runners: bool,
    has_skids: bool,
    box_bottom: Mm,
    bearer_stock: Mm,
    runner_bottom: Mm,
    slide_bearer_bottom: Mm,
) -> Mm:
    """Bearers begin at the lower edge of their runner, or lie round their slide."""
    if has_centre_runner:
        return box_bottom - bearer_stock
    return runner_bottom if has_wooden_runners or has_skids else slide_bearer_bottom


@rule
def bearer_screw_up(
    has_centre_runner: bool,
    opening_bottom: Mm,
    bearer_bottom: Mm,
    bearer_stock: Mm,
    bearer_fixing: BearerFixing,
    has_drawers: bool,
) -> Mm:
    """A flat runner meets the bottom rail with its lower part: its screws leave it there."""
    if not has_centre_runner:
        return bearer_stock / 2
    seat = min(opening_bottom - bearer_bottom, bearer_stock)
    if has_drawers and seat < LEAST_SEAT:
        raise CannotBuild(
            "box_bottom_room", "The boxes run so high that their runner misses the bottom rail.",
        )  # fmt: skip
    if has_drawers and bearer_fixing == "screws" and seat < LEAST_SCREWED:
        raise CannotBuild(
            "bearer_fixing",
            f"The centre runners meet {seat:.1f} mm of the bottom rail; screws that do not split "
            f"it want {LEAST_SCREWED:.1f} mm.",
            involved=("bearer_stock",),
        )
    return seat / 2


@rule
def bearer_top(
    bearer_bottom: Mm,
    bearer_rise: Mm,
    opening_top: Mm,
    is_side_mount: bool,
    slide_centre: Mm,
    has_drawers: bool,
) -> Mm:
    """A bearer ends below the opening's top, and backs the screws of what it carries."""
    top = bearer_bottom + bearer_rise
    if has_drawers and top > opening_top + 1e-6:
        raise CannotBuild(
            "bearer_height",
            f"The bearers would stand {top - opening_top:.1f} mm higher than the drawer opening.",
        )
    if has_drawers and is_side_mount and top < slide_centre + SCREW_BACKING - 1e-6:
        raise CannotBuild(
            "bearer_height", "The bearers are too low for the slides' screws.",
        )  # fmt: skip
    return top


@rule
def runner_width(slide_side_space: Mm, box_thickness: Mm, grid: ShopGrid) -> Mm:
    """A runner reaches from its bearer to a little past the box side.

    Source: common practice, no source (3 mm past the side)
    """
    return grid.up(slide_side_space + box_thickness + 3)


@rule
def runner_screw(runner_width: Mm, runner_stock: Mm, bearer_stock: Mm) -> Fastener:
    """The thickest screw that does not split a runner's edges holds it to its bearer's face: no
    longer than three times what it holds, its point inside.

    Source: common practice, no source
    """
    gauges = tuple(
        gauge for gauge in ("8", "6", "4")
        if screw_distances(wood_screw(gauge).shank_mm, has_pilot=True).edge <= runner_stock / 2
    )  # fmt: skip
    return longest_screw(
        min(runner_width + bearer_stock - COVER, 3 * runner_width), gauges or ("4",)
    )


@rule
def kicker_room(slide: Slide, grid: ShopGrid) -> Mm:
    """Air between the box side and the kicker above it, which keeps an open drawer from tipping."""
    return grid.up(slide.room_above_mm)


@rule
def kicker_bottom(
    box_top: Mm, kicker_room: Mm, bearer_top: Mm, has_wooden_runners: bool, has_drawers: bool
) -> Mm:
    """The kicker's lower edge, from the floor."""
    bottom = box_top + kicker_room
    if has_drawers and has_wooden_runners and bottom < bearer_top:
        raise CannotBuild(
            "bearer_height",
            "The guides beside the boxes would stand higher than the kickers above.",
        )
    return bottom


@rule
def kickers_cross_beam(has_beam: bool, centre_reserve: Mm, foot_drawer_count: Count) -> bool:
    """Kickers lie under the beam where drawers may reach the middle, or come from the foot."""
    return has_beam and (centre_reserve == 0 or foot_drawer_count > 0)


@rule
def kicker_height_most(
    box_top_room_built: Mm,
    kicker_room: Mm,
    kickers_cross_beam: bool,
    beam_bottom: Mm,
    kicker_bottom: Mm,
) -> Mm:
    """Kickers end below the top rail, clear of cleats, and below a centre beam that they cross."""
    below_rail = box_top_room_built - kicker_room
    return min(below_rail, beam_bottom - kicker_bottom) if kickers_cross_beam else below_rail


@rule
def kicker_height(
    kicker_height_most: Mm,
    has_wooden_runners: bool,
    has_drawers: bool,
    grid: ShopGrid,
) -> Mm:
    """Kickers are as thick as the room above the boxes lets them be."""
    height = grid.down(kicker_height_most)
    if has_drawers and has_wooden_runners and height < LEAST_KICKER:
        raise CannotBuild("box_top_room", "No kicker fits above the boxes.")
    return height


@rule
def kicker_post_height(kicker_bottom: Mm, kicker_height: Mm, bearer_top: Mm) -> Mm:
    """Short posts on the bearer hold a kicker by its edge, and end flush with its top."""
    return kicker_bottom + kicker_height - bearer_top
