"""Do wooden runners bear the open drawer, and kickers hold its back down? Asked of every row."""

from dataclasses import replace

from model.checks.record import Finding, at_most, check
from model.checks.strength.drawer_weights import drawer_weight
from model.dimensions.drawer_load import GRAVITY
from model.materials import Material, StockGrade
from model.materials.row_allowable import allowed_of
from model.mechanics.duration import LoadTime
from model.parts.pieces import Floats, Pieces
from model.units import Count, Kg, Mm, Newton, Places

OPEN: LoadTime = "ten minutes"
NOSE: Mm = 25.0  # of a runner's end that an open box side bears on; common practice, no source
STATICS = "lever about the runner's end: first principles; clothes of 8.5 lb/ft3: 16 CFR 1261"


@check(
    "strength",
    "Runner's end bears the open drawer",
    source=f"{STATICS}; bearing on 25 mm: common practice",
    remedies=("bearer_wood", "box_stock"),
)
def runner_bears(
    drawer_count: Count,
    has_wooden_runners: bool,
    travel: Mm,
    box_depth: Mm,
    box_thickness: Mm,
    drawer_clothes: Kg,
    pieces: Pieces,
    masses: Floats,
    row_name: str,
    bearer_wood: Material,
    stock_grade: StockGrade,
) -> Finding | None:
    """An open drawer stands on the front ends of its runners, and wears them."""
    if not drawer_count or not has_wooden_runners:
        return None
    half = (drawer_weight(pieces, masses, row_name) + drawer_clothes) * GRAVITY / 2
    load = half + held_down(half, travel, box_depth)
    limit = allowed_of(bearer_wood, stock_grade.key).across_mpa
    return replace(
        at_most(load / (NOSE * box_thickness), limit, tight=limit / 10, unit="MPa"),
        reason=(
            f"Open and full, the drawer stands on the front end of each runner with {load:.0f} N."
        ),
    )


@check(
    "strength",
    "Kicker holds the open drawer's back down",
    source=f"{STATICS}; beam on two posts",
    remedies=("box_top_room", "bearer_wood"),
)
def kicker_holds(
    drawer_count: Count,
    has_wooden_runners: bool,
    travel: Mm,
    box_depth: Mm,
    kicker_height: Mm,
    runner_width: Mm,
    kicker_post_planes: Places,
    bearer_height: Mm,
    drawer_clothes: Kg,
    pieces: Pieces,
    masses: Floats,
    row_name: str,
    bearer_wood: Material,
    stock_grade: StockGrade,
) -> Finding | None:
    """An open drawer would tip: its back pushes up at the kickers."""
    if not drawer_count or not has_wooden_runners:
        return None
    half = (drawer_weight(pieces, masses, row_name) + drawer_clothes) * GRAVITY / 2
    push = held_down(half, travel, box_depth)
    first, last = (plane + bearer_height / 2 for plane in kicker_post_planes)
    moment = _between(push, box_depth - travel - bearer_height / 2, last - first)
    wood = allowed_of(bearer_wood, stock_grade.key)
    limit = wood.bending_mpa * wood.lasting(OPEN)
    stress = moment / (runner_width * kicker_height**2 / 6)
    return replace(
        at_most(stress, limit, tight=limit / 10, unit="MPa"),
        reason=f"Open and full, the drawer's back pushes up at each kicker with {push:.0f} N.",
    )


def held_down(half: Newton, travel: Mm, depth: Mm) -> Newton:
    """What a kicker holds down of half a drawer's weight, which is open by `travel` of its
    `depth`: nothing while its middle is inside.
    """
    outside = travel - depth / 2
    return half * outside / (depth - travel) if outside > 0 else 0.0


def _between(push: Newton, at: Mm, span: Mm) -> float:
    """Greatest moment, N mm, of a strip on two posts `span` apart, pushed `at` from the first."""
    return push * at * (span - at) / span if 0 < at < span else push * max(at - span, -at)
