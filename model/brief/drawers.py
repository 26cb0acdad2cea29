"""What the maker says of the drawers: slides, boxes, fronts, and what carries them."""

from typing import Literal

from model.brief.declare import flag, length, material_of, measured, option, row_of
from model.materials import Material, Pull, Slide, pulls, slides
from model.units import Measured, Mm

BoxJoint = Literal["butt", "rabbet", "dado", "dovetail"]
BottomFit = Literal["groove", "under back"]
FrontStyle = Literal["slab", "frame and panel"]
FrontFit = Literal["overlay", "inset"]
PullLayout = Literal["centred", "pair"]
BearerFixing = Literal["brackets", "screws"]
RearSupport = Literal["none", "skid"]


class Slides:
    """Slides and bearers"""

    slide: Slide = row_of(slides, "side_mount_full", help="What the drawers run on.")
    slide_length: Measured = measured("the longest slide that fits", least=200, most=1200)
    slide_thickness_measured: Measured = measured("the slide's thickness", least=6, most=25)
    slide_play: Mm = length(
        0.3, least=0.1, most=3, why_least="Without play the drawer binds.",
        why_most="With more the drawer drops off its slides.",
        help="Side play at each slide or guide, beyond the slide's thickness.",
    )  # fmt: skip
    bearer_wood: Material = material_of("yellow_poplar", help="Bearers, runners, guides, legs.")
    bearer_stock: Mm = length(
        19.05, least=15, most=45, why_least="Too thin for slide screws.",
        why_most="Thicker does not fit behind a stile.", help="Thickness of the slide bearers.",
    )  # fmt: skip
    bearer_height: Mm = length(
        63.5, cut=True, least=50, most=200, why_least="Too low for the slide.",
        why_most="Higher meets the deck.", help="Height of the slide bearers.",
    )  # fmt: skip
    bearer_fixing: BearerFixing = option("brackets", help="What holds a bearer's ends.")
    bearer_leg_span: Mm = length(
        1016, least=400, most=2500, why_least="Closer legs are in the way.",
        why_most="A longer bearer sags.", help="Longest stretch of a bearer without a leg.",
    )  # fmt: skip
    divider_stock: Mm = length(
        19.05, least=15, most=45, why_least="Too thin to screw to.",
        why_most="Thicker takes the drawer's room.",
        help="Lengthwise divider where bearers meet no stile.",
    )  # fmt: skip
    divider_end_clearance: Mm = length(
        2, least=0, most=12, why_least="The cross member touches both rails.",
        why_most="A shorter one holds nothing.",
        help="Between the foot drawers' cross member and each side rail.",
    )  # fmt: skip
    runner_stock: Mm = length(
        19.05, cut=True, least=12, most=30, why_least="Too thin to screw to the bearer.",
        why_most="Thicker stands on the floor.",
        help="Height of runners and skids under box sides.",
    )  # fmt: skip
    rear_support: RearSupport = option(
        "none", help="A skid under the back of a box that is longer than its slide."
    )
    has_dust_back: bool = flag(False, help="A thin panel behind half-depth drawers.")


class Boxes:
    """Drawer boxes"""

    box_sheet: Material = material_of("birch_ply_12", help="Sides, front and back of the boxes.")
    box_stock: Mm = length(
        12, least=9, most=22, why_least="Too thin for a groove.", why_most="Thicker is too heavy.",
        help="Thickness of box sides, front and back.",
    )  # fmt: skip
    box_stock_measured: Measured = measured("the box stock", least=8, most=24)
    box_joint: BoxJoint = option("rabbet", help="Corner joint of the boxes.")
    bottom_fit: BottomFit = option(
        "groove", help="Bottom in a groove all round, or under a cut-down back."
    )
    bottom_sheet: Material = material_of("birch_ply_6_5", help="Box bottoms.")
    bottom_stock: Mm = length(
        6.5, least=3, most=15, why_least="Thinner bottoms drop out.",
        why_most="Thicker is too heavy.",
        help="Thickness of box bottoms.",
    )  # fmt: skip
    bottom_stock_measured: Measured = measured("the bottom stock", least=2.5, most=16)
    bottom_up: Mm = length(
        9.525, cut=True, least=5, most=30, why_least="The groove would break out.",
        why_most="More wastes the drawer's height.",
        help="From the box's lower edge up to the bottom.",
    )  # fmt: skip
    bottom_room: Mm = length(
        0.79375, least=0, most=4, why_least="The bottom fills its groove.",
        why_most="More lets the bottom drop out.",
        help="Room at each edge of the bottom, in its groove.",
    )  # fmt: skip
    box_bottom_room: Mm = length(
        6.35, cut=True, least=2, most=25, why_least="The box would drag on the rail.",
        why_most="More wastes the drawer's height.", help="Box above the opening's floor.",
    )  # fmt: skip
    box_top_room: Mm = length(
        15.875, least=6, most=60, why_least="The box could not be tilted out.",
        why_most="More wastes the drawer's height.", help="Box below the opening's top.",
    )  # fmt: skip
    box_rear_room: Mm = length(
        12.7, cut=True, least=5, most=100, why_least="The box would meet what is behind it.",
        why_most="More wastes the drawer's depth.", help="Behind the closed box.",
    )  # fmt: skip


class Fronts:
    """Drawer fronts"""

    front_style: FrontStyle = option("slab", help="One board, or a frame with a panel.")
    front_fit: FrontFit = option(
        "overlay", help="In front of the frame, or flush inside its opening."
    )
    front_material: Material = material_of("mdf_3_4in", help="Slab fronts.")
    front_stock: Mm = length(
        19.05, least=12, most=32, why_least="Too thin for the pull's bolts.",
        why_most="Thicker is too heavy.", help="Thickness of the fronts.",
    )  # fmt: skip
    front_stock_measured: Measured = measured("the front stock", least=10, most=35)
    overlay: Mm = length(
        12.7, cut=True, least=4, most=100, why_least="Less lets the opening show.",
        why_most="More meets the next front.", help="How far an overlay front covers the frame.",
    )  # fmt: skip
    front_gap_least: Mm = length(
        3.175, least=1, most=20, why_least="Fronts would rub.",
        why_most="More looks like a mistake.",
        help="The least gap between two fronts.",
    )  # fmt: skip
    inset_reveal: Mm = length(
        2.38125, least=1, most=8, why_least="Fronts would rub.",
        why_most="More looks like a mistake.",
        help="Gap round an inset front.",
    )  # fmt: skip
    front_stile_width: Mm = length(
        57.15, cut=True, least=30, most=120, why_least="Too narrow for its groove.",
        why_most="Wider leaves no panel.", help="Stiles and rails of framed fronts.",
    )  # fmt: skip
    front_panel_material: Material = material_of("mdf_9", help="Panels of framed fronts.")
    front_panel_stock: Mm = length(
        9, least=5, most=19, why_least="Thinner panels drum.",
        why_most="Thicker stands out of the frame.", help="Panels of framed fronts.",
    )  # fmt: skip
    front_groove_width: Mm = length(
        6.35, least=3, most=10, why_least="Too thin for a tongue.",
        why_most="Wider leaves no wall.", help="Groove that holds the panel; the tongue fills it.",
    )  # fmt: skip
    front_groove_depth: Mm = length(
        9.525, cut=True, least=5, most=18, why_least="Shallower lets the panel drop out.",
        why_most="Deeper weakens the stile.", help="Depth of the grooves in framed fronts.",
    )  # fmt: skip
    pull: Pull = row_of(pulls, "bar_128", help="What the drawer is opened with.")
    pull_layout: PullLayout = option("centred", help="One in the middle, or a pair.")
    pull_count_from: Mm = length(
        609.6, least=300, most=1500, why_least="One hand suffices.", why_most="One hand does not.",
        label="Pair from this width", help="Fronts wider than this want a pair.",
    )  # fmt: skip
