"""Bearers of a row: how long they are, on what they end. Read for left, right and foot."""

import math

from model.brief.drawers import BearerFixing
from model.dimensions.brackets import HOLES
from model.dimensions.fasteners import COVER, Fastener, longest_screw
from model.dimensions.spots import shifted
from model.dimensions.toes import Toe, toe_from_both_edges
from model.errors import CannotBuild
from model.materials import wood_screw
from model.mechanics.fasteners.spacing import screw_distances
from model.rules import rule
from model.units import Count, Mm, Places, ShopGrid

END_ROOM: Mm = 1.5  # 1/16 in at each end, paint counted; common practice, no source
LEAST_BITE = 4.0  # diameters of a slanting screw; common practice, no source


@rule
def needs_divider(drawer_count: Count, lands_far: bool) -> bool:
    """Bearers whose far ends meet no frame end on a divider that stands on its own legs."""
    return drawer_count > 0 and not lands_far


@rule
def divider_thickness(needs_divider: bool, divider_stock: Mm) -> Mm:
    """What a divider takes of the depth."""
    return divider_stock if needs_divider else 0.0


@rule
def bearer_reach(zone_limit: Mm, divider_thickness: Mm, back_plane: Mm, grid: ShopGrid) -> Mm:
    """How far inwards the row's bearers may reach from the frame's inner face."""
    return grid.down(zone_limit - divider_thickness - back_plane)


@rule
def dust_back_plane(box_back_plane: Mm, box_rear_room: Mm) -> Mm:
    """The dust back stands behind the boxes' room."""
    return box_back_plane + box_rear_room


@rule
def bearer_run(
    lands_far: bool,
    far_plane: Mm,
    back_plane: Mm,
    dust_back_plane: Mm,
    dust_back_thickness: Mm,
    grid: ShopGrid,
) -> Mm:
    """The room for bearers is from frame to frame, or from the frame to their divider."""
    if lands_far:
        return far_plane - back_plane
    return grid.up(dust_back_plane + dust_back_thickness - back_plane)


@rule
def bearer_length(bearer_run: Mm, lands_far: bool, grid: ShopGrid) -> Mm:
    """Between two frames a bearer has a little room, so that a side can pass its end; a divider is
    pushed against it.
    """
    return grid.down(bearer_run - 2 * END_ROOM) if lands_far else bearer_run


@rule
def bearer_end_gap(bearer_run: Mm, bearer_length: Mm) -> Mm:
    """Between a bearer and each frame, with what the grid left over."""
    return (bearer_run - bearer_length) / 2


@rule
def bearer_plane(back_plane: Mm, bearer_end_gap: Mm) -> Mm:
    """Where bearers, and what is fixed along them, begin behind the frame."""
    return back_plane + bearer_end_gap


@rule
def divider_plane(back_plane: Mm, bearer_run: Mm) -> Mm:
    """Where the bearers meet the divider, or the other frame."""
    return back_plane + bearer_run


@rule
def zone_back(
    needs_divider: bool,
    divider_plane: Mm,
    divider_thickness: Mm,
    dust_back_plane: Mm,
    dust_back_thickness: Mm,
) -> Mm:
    """Everything of the row lies before this plane, bearers that run through excepted."""
    if needs_divider:
        return divider_plane + divider_thickness
    return dust_back_plane + dust_back_thickness


@rule
def bearer_places(
    opening_places: Places,
    opening_width: Mm,
    has_centre_runner: bool,
    bearer_across: Mm,
    drawer_count: Count,
) -> Places:
    """Bearers stand beside the opening, flush with its edges; a centre runner under its middle."""
    if not drawer_count:
        return ()
    if has_centre_runner:
        return shifted(opening_places, (opening_width - bearer_across) / 2)
    pairs = zip(
        shifted(opening_places, -bearer_across), shifted(opening_places, opening_width), strict=True
    )
    return tuple(at for pair in pairs for at in pair)


@rule
def bearers_behind_stiles(
    drawer_count: Count,
    has_centre_runner: bool,
    bearer_across: Mm,
    mid_stile: Mm,
    first_end_stile: Mm,
) -> bool:
    """Two bearers share a stile between openings, and one ends on each end stile."""
    if not drawer_count or has_centre_runner:
        return True
    if drawer_count > 1 and 2 * bearer_across > mid_stile + 1e-6:
        raise CannotBuild(
            "mid_stile", "The stiles between openings are too narrow for two bearers each.",
        )  # fmt: skip
    if bearer_across > first_end_stile + 1e-6:
        raise CannotBuild(
            "end_stile_least", "The end stiles are too narrow for the bearers behind them.",
        )  # fmt: skip
    return True


@rule
def own_bearer_places(
    bearer_places: Places, owns_bearers: bool, bearers_behind_stiles: bool
) -> Places:
    """Bearers that run through to the other row are counted once, with the left row."""
    return bearer_places if owns_bearers and bearers_behind_stiles else ()


@rule
def bracket_places(
    own_bearer_places: Places, bracket_offset: Mm, bearer_fixing: BearerFixing
) -> Places:
    """A bracket under each end of each bearer, unless screws hold it."""
    return shifted(own_bearer_places, bracket_offset) if bearer_fixing == "brackets" else ()


@rule
def bracket_screw_heights(
    drawer_count: Count,
    bracket_drop: Mm,
    bracket_bottom: Mm,
    bracket_leaf: Mm,
    has_centre_runner: bool,
    bearer_bottom: Mm,
    bearer_toe: Mm,
) -> Places:
    """How high above the floor the screws of brackets go into the frame, the lower one first; or
    the lower one of two that slant through a bearer.
    """
    if not drawer_count or not bracket_drop:
        slants = drawer_count and not has_centre_runner
        return (bearer_bottom + bearer_toe,) if slants else ()
    return tuple(sorted(bracket_bottom + bracket_leaf * (1 - share) for share in HOLES))


@rule
def bracket_screw_spots(
    bearer_places: Places, bearer_across: Mm, bracket_drop: Mm, has_centre_runner: bool
) -> Places:
    """Where along the run the screws of brackets, or those that slant through bearers, go into the
    frame: behind each bearer's middle.
    """
    if not bracket_drop and has_centre_runner:
        return ()
    return shifted(bearer_places, bearer_across / 2)


@rule
def far_bracket_plane(divider_plane: Mm, bracket_leaf: Mm) -> Mm:
    """The bracket at the bearer's far end lies under its last inch."""
    return divider_plane - bracket_leaf


@rule
def bearer_toe(bearer_stock: Mm) -> Mm:
    """Screws through a bearer's edges begin this far from its end, and leave it at a slant."""
    return bearer_stock / 2


@rule
def near_screw(
    bearer_toe: Mm,
    bearer_end_gap: Mm,
    bearer_screw_up: Mm,
    bearer_height: Mm,
    frame_thickness: Mm,
) -> Fastener:
    """A slanting screw must end inside the frame, clear of the one that comes from the other edge,
    and not split the bearer.
    """
    inside = bearer_toe + bearer_end_gap
    longest = (inside + frame_thickness - COVER) * math.sqrt(2)
    return slanting_screw(longest, bearer_screw_up, bearer_height, inside * math.sqrt(2))


@rule
def far_screw(
    bearer_toe: Mm,
    bearer_end_gap: Mm,
    bearer_screw_up: Mm,
    bearer_height: Mm,
    frame_thickness: Mm,
    needs_divider: bool,
    divider_stock: Mm,
) -> Fastener:
    """A slanting screw must end inside what the bearer's far end meets."""
    stock = divider_stock if needs_divider else frame_thickness
    inside = bearer_toe + bearer_end_gap
    longest = (inside + stock - COVER) * math.sqrt(2)
    return slanting_screw(longest, bearer_screw_up, bearer_height, inside * math.sqrt(2))


@rule
def bearers_take_screws(
    bearer_fixing: BearerFixing,
    drawer_count: Count,
    bearer_toe: Mm,
    bearer_end_gap: Mm,
    bearer_height: Mm,
    near_screw: Fastener,
    far_screw: Fastener,
) -> bool:
    """Screws from both edges of a low bearer meet before they bite what lies behind its end."""
    bites = (
        screw.length
        - (bearer_toe + bearer_end_gap) * math.sqrt(2)
        - LEAST_BITE * screw.screw.shank_mm
        for screw in (near_screw, far_screw)
    )
    do_hold = min(bites) >= 0
    if bearer_fixing == "screws" and drawer_count and not do_hold:
        raise CannotBuild(
            "bearer_fixing",
            f"Screws that slant through both edges of bearers {bearer_height:.1f} mm high either "
            "meet each other or hardly bite what lies behind: brackets hold lower bearers.",
            involved=("bearer_height",),
        )
    return do_hold


def slanting_screw(longest: Mm, away: Mm, height: Mm, inside: Mm) -> Fastener:
    """The thickest screw that stands clear of a face `away` from it and bites enough beyond its
    first `inside` mm, as long as `longest` and the one from the other edge allow: their points,
    each lower or higher by 1 / sqrt 2 of its length, stay two diameters apart.

    Where none bites enough, the thinnest: the bearers are then refused.
    """
    for gauge in ("8", "6", "4"):
        shank = wood_screw(gauge).shank_mm
        most = min(longest, (height - 2 * shank) / math.sqrt(2))
        found = longest_screw(most, (gauge,))
        is_clear = screw_distances(shank, has_pilot=True).edge <= away
        if is_clear and inside + LEAST_BITE * shank <= found.length <= most + 1e-6:
            break
    return found


@rule
def bracket_screw_up(bearer_rise: Mm, bracket_plate: Mm) -> Fastener:
    """Brackets are screwed to the bearer from below.

    Source: common practice, no source (1 1/4 in)
    """
    return longest_screw(min(31.75, bearer_rise + bracket_plate - COVER))


@rule
def bracket_screw_near(frame_thickness: Mm, bracket_plate: Mm) -> Fastener:
    """Bracket screws must end inside the frame."""
    return longest_screw(min(31.75, frame_thickness + bracket_plate - COVER))


@rule
def bracket_screw_far(
    needs_divider: bool, divider_stock: Mm, frame_thickness: Mm, bracket_plate: Mm
) -> Fastener:
    """Bracket screws must end inside what the bearer's far end meets."""
    stock = divider_stock if needs_divider else frame_thickness
    return longest_screw(min(31.75, stock + bracket_plate - COVER))


@rule
def bearer_leg_count(
    bearer_length: Mm, bearer_leg_span: Mm, owns_bearers: bool, bearer_bottom: Mm
) -> Count:
    """Legs keep the free stretches of a bearer no longer than the span."""
    if not owns_bearers or bearer_bottom < 1:
        return 0
    return max(0, math.ceil(bearer_length / bearer_leg_span - 1e-9) - 1)


@rule
def bearer_leg_toe(
    bearer_height: Mm, bearer_stock: Mm, bearer_bottom: Mm, bearer_rise: Mm, bearer_leg_count: Count
) -> Toe | None:
    """Screws from both edges of a leg slant into its bearer and end clear of each other."""
    if not bearer_leg_count:
        return None
    return toe_from_both_edges(bearer_height, bearer_stock, bearer_bottom, bearer_rise)


@rule
def bearer_leg_planes(
    bearer_leg_count: Count, bearer_run: Mm, back_plane: Mm, bearer_height: Mm, grid: ShopGrid
) -> Places:
    """Legs share a bearer's length evenly."""
    step = bearer_run / (bearer_leg_count + 1)
    return tuple(
        back_plane + grid.near((i + 1) * step - bearer_height / 2) for i in range(bearer_leg_count)
    )


@rule
def bearer_leg_places(own_bearer_places: Places, bearer_across: Mm, bearer_stock: Mm) -> Places:
    """A leg stands under the middle of its bearer."""
    return shifted(own_bearer_places, (bearer_across - bearer_stock) / 2)


@rule
def dust_back_places(opening_places: Places, dust_back_thickness: Mm) -> Places:
    """A dust back fills the room between an opening's bearers."""
    return opening_places if dust_back_thickness else ()
