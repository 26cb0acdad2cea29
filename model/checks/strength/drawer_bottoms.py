"""Does a full drawer's bottom stay up, whole, and in its groove? Asked of every row.

The bottom is a plate that rests on four edges, its edges free to draw in: small sag, no membrane.
"""

from dataclasses import replace
from math import pi

from model.checks.record import Finding, advice, at_least, at_most, check
from model.materials import Allowed, Material, StockGrade
from model.materials.row_allowable import allowed_of
from model.mechanics.duration import LoadTime
from model.mechanics.plate import Bent
from model.units import Count, Mm, Mpa, Pascal

TEST_LOAD = "ANSI/KCMA A161.1: 15 lb/ft2 (718 Pa) on the bottom"
SHELF_SHARE = 192.0  # span over sag: 1/16 in for each foot
SHELF_MOST: Mm = 6.35  # 1/4 in
LEAST_BITE: Mm = 1.5  # left in a groove, however the bottom lies; common practice, no source
PA_PER_MPA = 1e6
PEAK_SHEAR = 1.5  # of a rectangular section; Source: Wood Handbook 2021, equation 9-14


@check(
    "strength",
    "Bottom sags clear of what is under it",
    about="bottom_sag",
    source=f"{TEST_LOAD}: the bottom must not sag into the way; creep: NDS 2018, 3.5.2",
    remedies=("bottom_stock", "bottom_sheet", "bottom_up"),
)
def bottom_clears(drawer_count: Count, bottom_sag: Mm, bottom_sag_room: Mm) -> Finding | None:
    """A full bottom that sags onto the rail drags there, and the drawer sticks."""
    if not drawer_count:
        return None
    return at_most(bottom_sag, bottom_sag_room, tight=bottom_sag_room / 4)


@check(
    "strength",
    "Bottom looks flat",
    about="bottom_sag",
    source=(
        "ANSI/KCMA A161.1, shelves and cabinet bottoms: 1/16 in for each foot, 1/4 in at most; "
        "for drawers it asks only that they stay out of the way"
    ),
    remedies=("bottom_stock", "bottom_sheet"),
)
def bottom_looks_flat(
    drawer_count: Count, bottom_sag: Mm, bottom_field_short: Mm
) -> Finding | None:
    """A bottom that sags more than a good shelf looks tired, and its edges work in their groove."""
    if not drawer_count:
        return None
    return advice(at_most(bottom_sag, min(bottom_field_short / SHELF_SHARE, SHELF_MOST)))


@check(
    "strength",
    "Bottom does not break",
    source=f"{TEST_LOAD}; 16 CFR 1261: clothes; plate on four edges: Timoshenko, Navier's series",
    remedies=("bottom_stock", "bottom_sheet"),
)
def bottom_holds(
    drawer_count: Count,
    bottom_sheet: Material,
    stock_grade: StockGrade,
    bottom_thickness: Mm,
    bottom_bends: Bent,
    bottom_lasting_load: Pascal,
    bottom_test_load: Pascal,
) -> Finding | None:
    """What lies in a drawer for years may bend its bottom less hard than a short test."""
    if not drawer_count:
        return None
    sheet = allowed_of(bottom_sheet, stock_grade.key)
    loads: tuple[tuple[Pascal, LoadTime, str], ...] = (
        (bottom_lasting_load, "permanent", "what lies in it for years"),
        (bottom_test_load, "seven days", "the load of a test"),
    )
    cases = [
        (stress * load, limit * sheet.lasting(time), f"{way} its grain under {said}")
        for load, time, said in loads
        for stress, limit, way in _stresses(sheet, bottom_bends, bottom_thickness)
    ]
    stress, limit, where = max(cases, key=lambda case: case[0] / case[1])
    return replace(
        at_most(stress, limit, tight=limit / 10, unit="MPa"),
        reason=f"A bottom on four edges bends both ways; this one works hardest {where}.",
    )


def _stresses(sheet: Allowed, bends: Bent, thickness: Mm) -> tuple[tuple[Mpa, Mpa, str], ...]:
    """Bending stress along and across the face grain under 1 Pa, each with what is allowed."""
    modulus = thickness**2 / 6
    return (
        (bends.moment_x / modulus, sheet.bending_mpa, "along"),
        (bends.moment_y / modulus, sheet.bending_across_mpa, "across"),
    )


@check(
    "strength",
    "Bottom stays in its groove as it sags",
    remedies=("bottom_stock", "bottom_sheet", "bottom_room"),
)
def bottom_stays(
    drawer_count: Count,
    bottom_groove_depth: Mm,
    bottom_across_room: Mm,
    bottom_sag: Mm,
    bottom_field_short: Mm,
) -> Finding | None:
    """A sagging bottom grows short: pushed to one side, it must still lie in the other groove."""
    if not drawer_count:
        return None
    drawn_in = pi**2 * bottom_sag**2 / (4 * bottom_field_short)  # of a half sine wave
    left = bottom_groove_depth - 2 * bottom_across_room - drawn_in
    return replace(
        at_least(left, LEAST_BITE),
        reason=(
            f"A sagging bottom grows short, by {drawn_in:.1f} mm here: pushed to one side, it must "
            "still lie in the other groove."
        ),
    )


@check(
    "strength",
    "Edge of the groove carries the bottom",
    source=f"{TEST_LOAD}; shear 1.5 V / A: Wood Handbook 2021 (FPL-GTR-282), equation 9-14",
    remedies=("bottom_up", "box_sheet", "bottom_room"),
)
def groove_carries(
    drawer_count: Count,
    bottom_test_load: Pascal,
    bottom_field_short: Mm,
    bottom_up: Mm,
    bottom_held: Mm,
    box_sheet: Material,
    stock_grade: StockGrade,
) -> Finding | None:
    """Below the groove a strip of the box side carries the bottom: it may shear off or be crushed.

    An edge carries no more than a strip across the short way would bring to it.
    """
    if not drawer_count:
        return None
    sheet = allowed_of(box_sheet, stock_grade.key)
    edge = bottom_test_load / PA_PER_MPA * bottom_field_short / 2  # N for each mm of edge
    sheared = PEAK_SHEAR * edge / bottom_up / (sheet.shear_mpa * sheet.lasting("seven days"))
    crushed = edge / bottom_held / sheet.across_mpa
    return at_most(100 * max(sheared, crushed), 100.0, tight=10.0, unit="%")
