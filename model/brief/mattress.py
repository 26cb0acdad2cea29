"""What the maker says of the mattress and of the room around it."""

from typing import Literal

from model.brief.declare import count, length, measured, option
from model.units import Count, Measured, Mm

MattressKind = Literal["foam", "hybrid", "spring", "latex"]


class Mattress:
    """Mattress"""

    mattress_width: Mm = length(
        1524, least=600, most=2200, slider=True,
        why_least="No adult mattress is sold narrower.", why_most="No mattress is sold wider.",
        help="Across the bed; of each piece, where the mattress comes in two.",
    )  # fmt: skip
    mattress_length: Mm = length(
        2032, least=1500, most=2300, slider=True,
        why_least="No adult mattress is sold shorter.", why_most="No mattress is sold longer.",
        help="From foot to head.",
    )  # fmt: skip
    mattress_thickness: Mm = length(
        254, least=100, most=460, slider=True,
        why_least="A thinner one is a topper.", why_most="No mattress is sold thicker.",
        help="Sold from 152 to 457 mm, most 254 to 305 mm.",
    )  # fmt: skip
    mattress_pieces: Count = count(
        1, least=1, most=2, help="Two pieces side by side count as their sum.",
        why_least="A bed holds a mattress.", why_most="More than two do not lie still.",
    )  # fmt: skip
    mattress_width_measured: Measured = measured("the mattress width", least=300, most=2300)
    mattress_length_measured: Measured = measured("the mattress length", least=1400, most=2400)
    mattress_thickness_measured: Measured = measured("the mattress thickness", least=80, most=480)
    mattress_tolerance: Mm = length(
        12.7, least=0, most=40, why_least="A size cannot be better than exact.",
        why_most="Measure the mattress instead.",
        help="How far the mattress may differ from its size, either way.",
    )  # fmt: skip
    side_fit: Mm = length(
        12.7, least=0, most=38.1, why_least="The mattress must drop in.",
        why_most="A wider gap swallows a hand.", slider=True,
        help="Room beside the mattress, each side, to tuck the bedding.",
    )  # fmt: skip
    end_fit: Mm = length(
        12.7, least=0, most=38.1, why_least="The mattress must drop in.",
        why_most="A wider gap swallows a hand.",
        help="Room at the foot and at the head, each end.",
    )  # fmt: skip
    mattress_kind: MattressKind = option("foam", help="Foam asks for closer slats than springs do.")
