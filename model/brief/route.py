"""What the maker says of the way the bed is carried in: its narrowest door, corner and stair."""

from typing import Literal

from model.brief.declare import flag, length, option
from model.units import Mm

Stairs = Literal["none", "straight", "with a turn"]


class WayIn:
    """Way in"""

    door_width: Mm = length(
        812.8, least=450, most=2000, why_least="Nobody passes.", why_most="Wider is a gate.",
        help=(
            "Clear width of the narrowest door, its leaf open. IRC R311.2 asks 813 mm of one outer "
            "door; a hinged leaf leaves about 51 mm less than its own width."
        ),
    )  # fmt: skip
    door_height: Mm = length(
        1981.2, least=1500, most=3000, why_least="Nobody passes.", why_most="Higher is a gate.",
        help="Clear height of the lowest door; IRC R311.2 asks 1981 mm of one outer door.",
    )  # fmt: skip
    has_corner: bool = flag(
        True, label="Square corner", help="Whether the way goes round a square corner."
    )
    corridor_before: Mm = length(
        914.4, least=450, most=5000, why_least="Nobody passes.", why_most="Wider is a room.",
        help="Clear width before the corner; IRC R311.6 (from memory) asks 914 mm of a hallway.",
    )  # fmt: skip
    corridor_after: Mm = length(
        914.4, least=450, most=5000, why_least="Nobody passes.", why_most="Wider is a room.",
        help="Clear width after the corner: of the corridor, or of a door that opens off it.",
    )  # fmt: skip
    ceiling: Mm = length(
        2133.6, least=1800, most=6000, why_least="Nobody stands.", why_most="Higher is a hall.",
        help="Lowest ceiling at the corner; IRC R305.1 (from memory) asks 2134 mm.",
    )  # fmt: skip
    stairs: Stairs = option("none", help="Whether the bed goes up or down stairs.")
    stair_width: Mm = length(
        800.1, least=450, most=3000, why_least="Nobody passes.", why_most="Wider is a hall.",
        help="Clear width between wall and handrail; IRC R311.7.1 asks 800 mm with one rail.",
    )  # fmt: skip
    stair_headroom: Mm = length(
        2032, least=1600, most=6000, why_least="Nobody passes.", why_most="Higher is a hall.",
        help="Least height over the edges of the steps; IRC R311.7.2 asks 2032 mm.",
    )  # fmt: skip
    stair_riser: Mm = length(
        196.85, least=80, most=300, why_least="Lower is a ramp.", why_most="Higher is a ladder.",
        help="Height of a step; IRC R311.7 allows 197 mm.",
    )  # fmt: skip
    stair_tread: Mm = length(
        254, least=120, most=500, why_least="Shorter is a ladder.", why_most="Longer is a landing.",
        help="Depth of a step; IRC R311.7 asks 254 mm.",
    )  # fmt: skip
    landing_depth: Mm = length(
        914.4, least=450, most=5000, why_least="Nobody turns.", why_most="Deeper is a room.",
        help="Clear depth of the landing where the stairs turn, from the last step to the wall.",
    )  # fmt: skip
