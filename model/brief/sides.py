"""What the maker says of the sides: what stands between the posts, and what is beside the bed."""

from typing import Literal

from model.brief.declare import count, length, measured, option
from model.units import Count, Measured, Mm

SideKind = Literal["drawer", "plain", "closed frame", "dummy"]
DepthKind = Literal["full", "half", "slide"]


class Side:
    """Side"""

    scopes = ("left", "right")

    side: SideKind = option(
        "drawer",
        help=(
            "Drawers; one solid rail; a face frame closed by panels; or a frame with fixed fronts."
        ),
    )


class Row:
    """Row"""

    scopes = ("left", "right", "foot")
    defaults = {"foot.drawers": 0}

    drawers: Count = count(
        3, least=0, most=6, slider=True, why_least="No drawers.",
        why_most="Narrower drawers hold nothing.",
        help="Drawers in the row; on a closed or dummy side, bays of its frame.",
    )  # fmt: skip
    opening_width_measured: Measured = measured("the opening's width", least=100, most=2200)
    depth: DepthKind = option("half", help="Across the bed, half of it, or as long as the slide.")
    room: Mm = length(
        1016, least=0, most=3000, why_least="The bed stands against a wall.",
        why_most="More is another room.", help="Free floor in front of the row, to a wall.",
    )  # fmt: skip


class Nightstand:
    """Nightstand"""

    scopes = ("left", "right")

    nightstand_width: Mm = length(
        0, least=0, most=800, why_least="No nightstand.", why_most="Wider is a dresser.",
        help="How far a nightstand reaches from the head towards the foot; 0 for none.",
    )  # fmt: skip
    nightstand_gap: Mm = length(
        50.8, least=0, most=500, why_least="It touches the bed.", why_most="It is out of the way.",
        help="Between the bed and the nightstand's side.",
    )  # fmt: skip


class SideFrames:
    """Rails and face frames"""

    rail_width: Mm = length(
        184.15, cut=True, least=90, most=350, why_least="Too narrow to carry a sleeper.",
        why_most="Wider boards move too much.", help="Width of a solid side rail.",
    )  # fmt: skip
    top_rail_width: Mm = length(
        114.3, cut=True, least=60, most=250, slider=True,
        why_least="Too narrow to carry a sleeper.",
        why_most="Wider leaves no opening.", help="Upper rail of a face frame.",
    )  # fmt: skip
    bottom_rail_width: Mm = length(
        57.15, cut=True, least=25, most=150, why_least="Too narrow for a joint.",
        why_most="Wider leaves no opening.", help="Lower rail of a face frame.",
    )  # fmt: skip
    end_stile_least: Mm = length(
        50.8, cut=True, least=25, most=250, why_least="Too narrow for a connector.",
        why_most="Wider leaves no opening.", help="The least width of the stiles at both ends.",
    )  # fmt: skip
    mid_stile: Mm = length(
        50.8, cut=True, least=20, most=200, why_least="Too narrow for a joint.",
        why_most="Wider leaves no opening.", help="Stiles between openings.",
    )  # fmt: skip
    dummy_block_width: Mm = length(
        38.1, cut=True, least=20, most=100, why_least="Too narrow to screw to.",
        why_most="Wider fills the opening.", help="Blocks that hold a fixed front.",
    )  # fmt: skip
