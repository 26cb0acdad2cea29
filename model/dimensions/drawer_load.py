"""What a full drawer holds. Read for every row."""

from model.rules import rule
from model.units import Kg, KgPerM3, Mm, Pascal

GRAVITY = 9.80665  # m/s2: standard acceleration of free fall, CGPM 1901


@rule
def drawer_contents(
    drawer_fill: KgPerM3,
    drawer_floor_load: Pascal,
    drawer_inside_width: Mm,
    drawer_inside_depth: Mm,
    drawer_inside_height: Mm,
) -> Kg:
    """A full drawer holds the larger of its volume's worth of clothes and of what kitchen drawers
    are tested with.

    Source: 16 CFR 1261: 8.5 lb/ft3 of clothes; ANSI/KCMA A161.1: 15 lb/ft2 on the bottom
    """
    floor = drawer_inside_width * drawer_inside_depth / 1e6
    by_volume = drawer_fill * floor * drawer_inside_height / 1e3
    return max(by_volume, drawer_floor_load * floor / GRAVITY)
