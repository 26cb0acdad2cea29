"""Do the drawers run, come out far enough, and stay clear? Asked of every row: left, right,
foot.
"""

from dataclasses import replace

from model.brief.drawers import FrontFit, PullLayout
from model.checks.record import Finding, advice, at_least, at_most, between, check
from model.dimensions.pulls import DRIVER_ROOM
from model.materials import Slide
from model.units import INCH, Count, Measured, Mm, Places, Share

SLIDE_MAKER = (
    "a slide maker's help page: slide thickness plus 0.2 to 0.5 mm, a heavier series 0.5 to 0.9 mm"
)


@check(
    "fit",
    "Side play of the slides",
    about="slide_play_built",
    source=SLIDE_MAKER,
    remedies=("slide_play",),
)
def box_runs_free(
    drawer_count: Count, slide: Slide, slide_play_built: Mm, drawer_inside_width: Mm
) -> Finding | None:
    """A box pinched by its slides binds; a loose one drops off them."""
    if not drawer_count:
        return None
    return between(slide_play_built, slide.play_low_mm, slide.play_high_mm)


@check("fit", "Room over the box", about="box_top_room_built", remedies=("box_top_room",))
def box_tilts_out(drawer_count: Count, slide: Slide, box_top_room_built: Mm) -> Finding | None:
    """A box is lifted or tilted off its slides; under half an inch above it, it cannot be."""
    if not drawer_count:
        return None
    return at_least(box_top_room_built, slide.room_above_mm, tight=1)


@check("fit", "Room under the box", about="box_bottom_room", remedies=("box_bottom_room",))
def box_clears_rail(drawer_count: Count, slide: Slide, box_bottom_room: Mm) -> Finding | None:
    """A box that hangs close to the rail drags on it when it is full."""
    return at_least(box_bottom_room, min(slide.room_below_mm, 6.0)) if drawer_count else None


@check("fit", "Room behind the box", about="box_rear_room", remedies=("box_rear_room",))
def box_clears_back(drawer_count: Count, box_rear_room: Mm) -> Finding | None:
    """Half an inch behind the closed box keeps the front from standing off."""
    return at_least(box_rear_room, 12.7) if drawer_count else None


@check(
    "fit",
    "Room to drive the front's screws from inside the box",
    about="front_screw_heights",
    source="common practice, no source (1 in above the bottom)",
    remedies=("front_stile_width", "bottom_up"),
)
def front_screws_are_reached(
    drawer_count: Count, front_screw_heights: Places, box_floor: Mm
) -> Finding | None:
    """A driver's chuck meets the drawer's bottom before it stands square to a screw that is near
    to it; a long bit reaches lower ones.
    """
    if not drawer_count:
        return None
    found = at_least(min(front_screw_heights) - box_floor, DRIVER_ROOM)
    if found.margin >= 0:
        return found
    said = (
        f"The lower screws stand {found.value:.1f} mm above the bottom of the drawer, too near for "
        "a chuck: bore their pilot holes with the front off the box, through marks made in the "
        "oversize holes, and drive them with a long bit, 150 mm or more."
    )
    return replace(advice(found), reason=said)


@check(
    "fit",
    "Wood behind the panel where the pull's screws clamp it",
    about="pull_packer_thickness",
    source="common practice, no source",
    remedies=("front_panel_stock",),
)
def pull_is_backed(
    drawer_count: Count, pull_packer_thickness: Mm, pull_packer_length: Mm, pull_packer_width: Mm
) -> Finding | None:
    """Screws that draw a panel across the air to the box front bend it, and split it in the end."""
    if not drawer_count or not pull_packer_thickness:
        return None
    said = (
        f"Glue a packer {pull_packer_thickness:.1f} mm thick, {pull_packer_length:.0f} x "
        f"{pull_packer_width:.0f} mm, to the back of the panel behind each pull, and bore it with "
        "the panel."
    )
    return replace(advice(at_most(pull_packer_thickness, 0.5)), reason=said)


@check("fit", "How much of the drawer comes out", about="access")
def drawer_access(drawer_count: Count, access: Share) -> Finding | None:
    """What stays in the dark is reached with the arm only, or not at all."""
    return advice(at_least(100 * access, 75.0, unit="%")) if drawer_count else None


@check("fit", "Part of the box that stays inside", about="box_depth")
def drawer_in_the_dark(drawer_count: Count, box_depth: Mm, access: Share) -> Finding | None:
    """A box deeper than its slide's travel keeps its last part under the bed."""
    return advice(at_most(box_depth * (1 - access), 6 * INCH)) if drawer_count else None


@check(
    "fit",
    "Load stays between the slide's ends",
    about="slide_closed",
    remedies=("rear_support", "depth", "slide"),
)
def load_on_slide(
    drawer_count: Count, has_skids: bool, slide_closed: Mm, box_depth: Mm
) -> Finding | None:
    """The middle of an evenly filled box must lie over its slide, closed and open, or its back
    sinks.
    """
    if not drawer_count or has_skids:
        return None
    return at_least(slide_closed - box_depth / 2, 0.0, tight=50)


@check(
    "fit",
    "Width against depth: does it rack?",
    about="box_width",
    source="a hardware shop's answer: width up to 1.5 times the slide's length; beyond 2 habit",
    remedies=("depth", "slide"),
)
def drawer_racks(drawer_count: Count, box_width: Mm, slide_closed: Mm) -> Finding | None:
    """Drawers wider than one and a half times their slide get jerky: one side drags."""
    if not drawer_count:
        return None
    ratio = box_width / slide_closed
    return (
        advice(at_most(ratio, 1.5, unit="times"))
        if ratio <= 2
        else at_most(ratio, 2.0, unit="times")
    )


@check(
    "fit",
    "Slide is a length that is sold",
    about="slide_closed",
    source="a repairer's blog: 22 and 24 in are in stock, 23 in is not",
    remedies=("slide_length",),
)
def slide_is_sold(
    drawer_count: Count, slide: Slide, slide_closed: Mm, slide_length: Measured
) -> Finding | None:
    """Slides come in steps; a length between them must be ordered or cut down."""
    if not drawer_count or slide.is_cut_to_length or not slide.lengths_mm:
        return None
    nearest = min(abs(slide_closed - length) for length in slide.lengths_mm)
    return at_most(nearest, 0.5)


@check(
    "fit",
    "Drawer open against the wall",
    about="room",
    source="room = travel and what stands out; 12 to 18 in to stand: common practice",
    remedies=("depth", "slide", "pull"),
)
def drawer_opens_in_room(
    drawer_count: Count, room: Mm, travel: Mm, pull_reach: Mm
) -> Finding | None:
    """The open drawer, its front and its pull must stay clear of the wall."""
    return at_least(room - travel - pull_reach, 0.0) if drawer_count else None


@check(
    "fit",
    "Standing room at the open drawer",
    about="room",
    source=(
        "HUD Manual of Acceptable Practices vol. 4, 1973: 36 in before a chest; 12 in to "
        "stand: common practice"
    ),
)
def stand_at_drawer(drawer_count: Count, room: Mm, travel: Mm, pull_reach: Mm) -> Finding | None:
    """Who opens a drawer stands behind it."""
    if not drawer_count:
        return None
    return advice(at_least(room - travel - pull_reach, 12 * INCH))


@check(
    "fit",
    "Bottom's groove leaves a wall",
    about="bottom_groove_depth",
    source=(
        "a router teacher: half the thickness; a router forum: a third; wall of 6 mm: "
        "common practice"
    ),
    remedies=("box_stock", "bottom_room"),
)
def bottom_groove_wall(
    drawer_count: Count, box_thickness: Mm, bottom_groove_depth: Mm
) -> Finding | None:
    """A groove deeper than half the box side lets its wall break out."""
    return (
        at_least(box_thickness - bottom_groove_depth, min(6.0, box_thickness / 2))
        if drawer_count
        else None
    )


@check(
    "fit",
    "Bottom sits in its groove",
    about="bottom_groove_depth",
    remedies=("bottom_room", "box_stock"),
)
def bottom_in_groove(
    drawer_count: Count, bottom_groove_depth: Mm, bottom_across_room: Mm
) -> Finding | None:
    """The bottom must reach far enough into its groove not to drop out."""
    return (
        at_least(bottom_groove_depth - bottom_across_room, 3.0, tight=0.5) if drawer_count else None
    )


@check("fit", "Foot room under the front", about="front_bottom")
def front_clears_floor(drawer_count: Count, front_bottom: Mm) -> Finding | None:
    """A front must pass over rug pile and skirting when the drawer is out."""
    return advice(at_least(front_bottom, 12.7)) if drawer_count else None


@check(
    "fit",
    "Shins pass the pulls",
    about="pull_reach",
    source="pulls stand out 25 to 38 mm: common practice, no source",
)
def shin_room(drawer_count: Count, pull_reach: Mm) -> Finding | None:
    """What stands out beyond the posts meets the shins of who makes the bed."""
    return advice(at_most(pull_reach, 60.0)) if drawer_count else None


@check("fit", "Two pulls on a wide front", about="front_width")
def wide_front_has_pair(
    drawer_count: Count, pull_layout: PullLayout, front_width: Mm, pull_count_from: Mm
) -> Finding | None:
    """A wide drawer opened at its middle pulls askew; from about 24 in two pulls are usual."""
    if not drawer_count or pull_layout == "pair":
        return None
    return advice(at_most(front_width, pull_count_from))


@check(
    "fit",
    "Gap between the fronts",
    about="front_gap",
    source="an article on drawer fronts: 1/8 in",
    remedies=("front_gap_least", "overlay", "mid_stile"),
)
def fronts_clear(front_count: Count, front_fit: FrontFit, front_gap: Mm) -> Finding | None:
    """Fronts that stand too close rub as soon as a slide gives."""
    if front_count < 2 or front_fit == "inset":
        return None
    return at_least(front_gap, 3.0)


@check(
    "fit",
    "Gap round the inset fronts",
    about="inset_reveal",
    source="a furniture forum: 1/16 in each side; the wood's own movement comes on top",
)
def inset_clear(
    front_count: Count, front_fit: FrontFit, outside_moves: bool, inset_reveal: Mm
) -> Finding | None:
    """A front of sheet keeps still, but a slide gives; solid fronts are followed over the year."""
    if not front_count or front_fit != "inset" or outside_moves:
        return None
    return at_least(inset_reveal, INCH / 16)


@check(
    "fit",
    "Box runs clear through its opening",
    about="box_side_room",
    source=(
        "a newspaper column: an old box had to lose an inch for its slides; side space = "
        "slide and play"
    ),
    remedies=("slide_play",),
)
def box_leaves_side_space(
    drawer_count: Count, box_side_room: Mm, slide_thickness: Mm
) -> Finding | None:
    """Beside the box there must be room for the slide on both sides."""
    return at_least(box_side_room, slide_thickness) if drawer_count else None
