"""What the maker says of who sleeps in the bed, what lies on it, and how it is handled.

What a standard or handbook gives stands in `resources/loads.csv`; here is what no publication
gives, so that it is the maker's to change.
"""

from typing import Literal

from model.brief.declare import count, length, number, option
from model.units import Count, Kg, KgPerM2, KgPerM3, Mm, Newton, Pascal, Share

SleepersAre = Literal["adults", "a child", "a frail adult"]


class Sleepers:
    """Sleepers and loads"""

    sleepers: Count = count(
        2, least=1, most=2, why_least="Somebody sleeps in it.", why_most="Two share a bed.",
        help="How many sleep in the bed.",
    )  # fmt: skip
    sleepers_are: SleepersAre = option(
        "adults",
        help=(
            "Rules for children's, bunk and nursing beds bind no ordinary bed: they are notes, "
            "unless a child or a frail adult uses it."
        ),
    )
    first_sleeper: Kg = number(
        110, least=30, most=250, why_least="Lighter is a small child: not this kind of bed.",
        why_most="Heavier asks for a bed that is tested.",
        help="Weight of the sleeper on the left. EN 1725 tests for 110 kg each.",
    )  # fmt: skip
    second_sleeper: Kg = number(
        110, least=30, most=250, why_least="Lighter is a small child: not this kind of bed.",
        why_most="Heavier asks for a bed that is tested.",
        help="Weight of the sleeper on the right. EN 1725 tests for 110 kg each.",
    )  # fmt: skip
    mattress_weight: KgPerM2 = number(
        15, least=3, most=60, why_least="Lighter is an air bed.",
        why_most="Heavier is a water bed.",
        help="Mattress and bedding, for each square metre; weigh yours.",
    )  # fmt: skip
    drawer_fill: KgPerM3 = number(
        136, least=20, most=1000, why_least="Emptier is an empty drawer.",
        why_most="Heavier is full of water.",
        help="What fills the drawers. Clothes: 136 kg/m3 (16 CFR 1261); books about 350.",
    )  # fmt: skip
    drawer_floor_load: Pascal = number(
        718, least=100, most=3000, why_least="Less is an empty drawer.",
        why_most="More bends any slide.",
        help="Load on a drawer's bottom. ANSI/KCMA A161.1 tests kitchen drawers with 718 Pa.",
    )  # fmt: skip
    drawer_jerk: Share = number(
        1.0, least=0.2, most=5, why_least="Nobody stops a drawer as gently.",
        why_most="More breaks any slide.",
        help=(
            "How hard a full drawer is pulled or stopped, as a share of its weight; no published "
            "value. At 0.5 m/s, stopped within 13 mm, it is 1."
        ),
    )  # fmt: skip
    lean_force: Newton = number(
        200, least=0, most=1000, why_least="Nobody leans back.",
        why_most="More is a kick.",
        help="How hard each sleeper leans back on the headboard; no published value. A back that "
        "bears half the weight and slants by 20 degrees pushes with 200 N.",
    )  # fmt: skip
    lean_height: Mm = length(
        300, least=100, most=700, why_least="Lower is the pillow.",
        why_most="Higher is above the shoulders.",
        help="How far above the mattress sleepers lean on the headboard.",
    )  # fmt: skip
    push_force: Newton = number(
        300, least=0, most=1000, why_least="Nobody pushes.", why_most="More moves the bed.",
        help="Sideways push at the top of a side rail; no published value.",
    )  # fmt: skip
    lift_height: Mm = length(
        25, least=0, most=100, why_least="Floors are never that even.",
        why_most="More takes two people.",
        help="How far one corner is lifted, or the floor is out of level.",
    )  # fmt: skip
    mattress_gives: Mm = length(
        20, least=0, most=100, why_least="A bare bed.", why_most="Softer than any mattress.",
        help="How far the mattress gives under 25 kg: it breaks a fall onto the bed.",
    )  # fmt: skip
    drag_share: Share = number(
        0.4, least=0, most=1, why_least="The bed is never dragged.",
        why_most="More lifts it.",
        help="Share of the weight that pulls at one foot as the bed is dragged: 0.3 to 0.5.",
    )  # fmt: skip
    joint_play: Mm = length(
        0.2, least=0, most=3, why_least="Wedged tight.", why_most="A loose joint: mend it first.",
        help="Play of each knock-down joint as fitted; wobble is made of it.",
    )  # fmt: skip
