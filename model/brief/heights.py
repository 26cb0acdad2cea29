"""What the maker says of heights above the floor."""

from typing import Literal

from model.brief.declare import length, measured, option
from model.units import Measured, Mm

HeightFrom = Literal["rail height", "opening height", "sleeping height"]


class Heights:
    """Heights"""

    height_from: HeightFrom = option(
        "rail height", help="Which height is fixed; the others follow from it."
    )
    rail_height: Mm = length(
        400.05, cut=True, least=150, most=760, slider=True,
        why_least="Below this no rail stands clear of the floor.",
        why_most="Above this the bed counts as a high bed, which is not covered here.",
        help="Floor to the top edge of the side rail, where the rail height is fixed.",
    )  # fmt: skip
    wished_opening_height: Mm = length(
        203.2, cut=True, least=70, most=450, why_least="A lower drawer holds nothing.",
        why_most="A higher drawer is a chest.",
        help="Height of the drawer openings, where it is fixed.",
    )  # fmt: skip
    opening_height_measured: Measured = measured("the opening's height", least=40, most=500)
    wished_sleeping_height: Mm = length(
        609.6, least=300, most=1000, why_least="Lower is a mattress on the floor.",
        why_most="Higher needs a ladder.",
        help="Floor to mattress top, where it is fixed; 430 to 580 mm is easy to rise from.",
    )  # fmt: skip
    recess: Mm = length(
        38.1, cut=True, least=10, most=100, slider=True,
        why_least="The mattress would slide off the deck.",
        why_most="Bedding could no longer be tucked in.",
        help="How far the mattress sinks below the rail's top edge.",
    )  # fmt: skip
    floor_gap: Mm = length(
        19.05, least=0, most=200, why_least="The rail stands on the floor.",
        why_most="More leaves no room for the rail.",
        help="Floor to the bottom rail, glides counted: clear of rug and skirting.",
    )  # fmt: skip
    glide_height: Mm = length(
        4.7625, cut=True, least=0, most=40, why_least="The post stands on the floor.",
        why_most="Taller feet are posts.",
        help="Glide or leveller under each post.",
    )  # fmt: skip
