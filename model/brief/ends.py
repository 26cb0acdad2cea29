"""What the maker says of the headboard and the footboard."""

from typing import Literal

from model.brief.declare import count, flag, length, material_of, measured, option
from model.materials import Material
from model.units import Count, Measured, Mm

EndStyle = Literal["panel", "planks", "slats", "low rail", "none"]


class End:
    """End"""

    scopes = ("head", "foot")
    defaults = {"head.style": "panel", "foot.style": "panel", "foot.height": 641.35}

    style: EndStyle = option("panel", help="What stands between the posts.")
    height: Mm = length(
        1219.2, cut=True, least=300, most=1800, slider=True, why_least="Lower than the bed itself.",
        why_most="Taller does not pass a door.", help="Floor to the top of the upper rail.",
    )  # fmt: skip
    low_rail_rise: Mm = length(
        76.2, cut=True, least=0, most=150, why_least="The rail ends level with the side rails.",
        why_most="A single rail this wide moves too much; take another style.",
        help="How far a low rail stands above the side rails.",
    )  # fmt: skip
    upper_rail_width: Mm = length(
        88.9, cut=True, least=40, most=250, why_least="Too narrow for a joint.",
        why_most="Wider boards move too much.", help="Width of the upper rail.",
    )  # fmt: skip
    mid_stiles: Count = count(
        1, least=0, most=5, why_least="One panel fills the frame.", why_most="More is a fence.",
        help="Stiles between the panels of a frame-and-panel end.",
    )  # fmt: skip
    mid_stile_width: Mm = length(
        69.85, cut=True, least=35, most=150, why_least="Too narrow for two grooves.",
        why_most="Wider is a panel.", help="Width of the stiles between the panels.",
    )  # fmt: skip
    plank_width: Mm = length(
        88.9, cut=True, least=50, most=200, why_least="Narrower is a slat.",
        why_most="Wider planks move too much.", help="About how wide each plank shows.",
    )  # fmt: skip
    spindle_width: Mm = length(
        38.1, cut=True, least=15, most=120, why_least="Too thin to hold.",
        why_most="Wider is a plank.",
        help="Width of the open slats.",
    )  # fmt: skip
    spindle_gap_most: Mm = length(
        60.325, least=20, most=230, why_least="Closer is a panel.",
        why_most="A wider gap lets a head through.", help="The largest gap between open slats.",
    )  # fmt: skip
    cap_thickness: Mm = length(
        0, least=0, most=45, why_least="No cap board.", why_most="Thicker is a beam.",
        help="A board on top of posts and upper rail; 0 for none.",
    )  # fmt: skip


class Ends:
    """Ends"""

    end_rail_width: Mm = length(
        190.5, cut=True, least=60, most=300, why_least="Too narrow for a joint.",
        why_most="Wider boards move too much.",
        help="Rail between the posts at the height of the side rails.",
    )  # fmt: skip
    panel_material: Material = material_of("mdf_1_4in", help="Panels of the ends.")
    panel_stock: Mm = length(
        6.35, least=4, most=19, why_least="Thinner panels drum.",
        why_most="Thicker panels need no frame.", help="Thickness of each layer of the panel.",
    )  # fmt: skip
    panel_stock_measured: Measured = measured("the panel stock", least=3, most=20)
    panel_layers: Count = count(
        1, least=1, most=2, why_least="A panel has one layer.",
        why_most="More layers are not glued flat.",
        help="Two: a decorative skin glued on a backer.",
    )  # fmt: skip
    panel_groove_depth: Mm = length(
        9.525, cut=True, least=5, most=20, why_least="Shallower lets the panel drop out.",
        why_most="Deeper weakens the frame.",
        help="Depth of the grooves that hold panels and planks.",
    )  # fmt: skip
    panel_float: Mm = length(
        3.175, least=0, most=8, why_least="The panel fills its groove.",
        why_most="More lets the panel drop out.", help="Room for movement at each edge of a panel.",
    )  # fmt: skip
    plank_gap: Mm = length(
        1, least=0, most=4, why_least="Planks touch.", why_most="The tongues would show.",
        help="Room for movement between two planks.",
    )  # fmt: skip
    cap_overhang: Mm = length(
        12.7, cut=True, least=0, most=50, why_least="The cap ends flush.",
        why_most="More catches a shoulder.",
        help="How far the cap board stands out over posts and rail.",
    )  # fmt: skip
    has_skirting: bool = flag(
        False, help="A board that closes the headboard down to the floor gap."
    )
