"""Does the front stay on its box, and the pull on its front? Asked of every row.

Both are asked to bear the hand that sets a drawer full of clothes moving as hard as it is stopped.
"""

from collections.abc import Mapping
from dataclasses import replace

from model.checks.record import Finding, at_most, check
from model.checks.strength.drawer_weights import drawer_weight
from model.dimensions.drawer_load import GRAVITY
from model.materials import Allowed, Material
from model.materials.row_allowable import allowed_of
from model.mechanics.duration import LoadTime, duration_factor
from model.mechanics.fasteners.strengths import Design
from model.mechanics.fasteners.withdrawal import (
    design_head_pull_through,
    design_screw_withdrawal,
    threaded_in,
)
from model.parts.pieces import Floats, Pieces
from model.solids.screwing import ScrewPoint
from model.units import Count, Kg, Mm, Newton, Share

PULLED: LoadTime = "ten minutes"
PULL_HEAD: Mm = 8.2  # pan head of a No. 8 machine screw or M4; from memory
ASSUMED = "the force: an assumption, yours to change (drawer jerk)"


@check(
    "strength",
    "Screws hold the front on its box",
    source=f"{ASSUMED}; withdrawal: NDS 2018, equation 12.2-2, from memory, ten-minute load",
    remedies=("front_stock", "front_material"),
)
def front_screws_hold(
    drawer_count: Count,
    front_top: Mm,
    box_bottom: Mm,
    drawer_clothes: Kg,
    drawer_jerk: Share,
    pieces: Pieces,
    masses: Floats,
    screw_points: tuple[ScrewPoint, ...],
    materials: Mapping[str, Material],
    row_name: str,
) -> Finding | None:
    """A front pulled by its upper edge turns about the box's lower one, and draws its screws."""
    points = _of_box_front(screw_points, row_name, "wood screw")
    if not drawer_count or not points:
        return None
    force = _hard_pull(drawer_weight(pieces, masses, row_name) + drawer_clothes, drawer_jerk)
    heights = [point.screw.at[1] for point in points]
    turning = force * (front_top - box_bottom) / sum(height**2 for height in heights)
    each = [
        (turning * y, _withdrawal(p, _wood(p.into, pieces, materials)))
        for y, p in zip(heights, points, strict=True)
    ]
    drawn, held = max(each, key=lambda pair: pair[0] / pair[1] if pair[1] else pair[0])
    return replace(
        at_most(drawn, held, tight=held / 10, unit="N"),
        reason=(
            f"Pulled by its upper edge with {force:.0f} N, a front turns about the box's lower "
            f"edge and draws {len(points)} screws; their holes are oversize: put washers under "
            "the heads."
        ),
        pieces=(points[0].piece, points[0].into),
    )


def _wood(piece: int, pieces: Pieces, materials: Mapping[str, Material]) -> Allowed:
    return allowed_of(materials[pieces.parts[pieces.part[piece]].material])


def _withdrawal(point: ScrewPoint, wood: Allowed) -> Design:
    """What one screw bears in the wood that holds its point."""
    thread = threaded_in(point.bite, point.screw.length)
    held = design_screw_withdrawal(wood.specific_gravity, point.screw.diameter, thread)
    return Design(held * duration_factor(PULLED, "solid"))


@check(
    "strength",
    "Screws hold the pull on its front",
    source=f"{ASSUMED}; heads pulled through: NDS 2018, equation 12.2-6, from memory",
    remedies=("pull", "pull_layout", "box_stock", "box_sheet"),
)
def pull_screws_hold(
    drawer_count: Count,
    box_thickness: Mm,
    drawer_clothes: Kg,
    drawer_jerk: Share,
    pieces: Pieces,
    masses: Floats,
    screw_points: tuple[ScrewPoint, ...],
    materials: Mapping[str, Material],
    row_name: str,
) -> Finding | None:
    """A full drawer pulled hard draws the heads of the pull's screws into the box front."""
    points = _of_box_front(screw_points, row_name, "pull screw")
    if not drawer_count or not points:
        return None
    force = _hard_pull(drawer_weight(pieces, masses, row_name) + drawer_clothes, drawer_jerk)
    sheet = _wood(points[0].piece, pieces, materials)
    held = design_head_pull_through(sheet.specific_gravity, PULL_HEAD, box_thickness)
    held = Design(held * sheet.lasting(PULLED))
    return replace(
        at_most(force / len(points), held, tight=held / 10, unit="N"),
        reason=(
            f"Pulled hard, with {force:.0f} N, a full drawer draws the heads of {len(points)} pull "
            f"screw{'s' if len(points) > 1 else ''} into its box front."
        ),
        pieces=(points[0].piece,),
    )


def _hard_pull(full: Kg, jerk: Share) -> Newton:
    return full * GRAVITY * jerk


def _of_box_front(points: tuple[ScrewPoint, ...], row: str, kind: str) -> tuple[ScrewPoint, ...]:
    """The screws of one kind in a row's first box front that end in what they hold."""
    return tuple(
        point for point in points
        if point.rules[0] == f"{row}.box_fronts" and point.into >= 0
        and point.screw.kind.startswith(kind)
    )  # fmt: skip
