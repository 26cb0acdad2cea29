"""Bearers, their legs, and the divider that they end on where they meet no frame.

Read for left, right and foot.
"""

from __future__ import annotations

from math import sqrt

from model.dimensions.fasteners import Fastener
from model.dimensions.toes import Toe
from model.frame import Frame
from model.joints.toe import toed
from model.materials import Material
from model.part import Face, Hold, Made, Part, Point, Screw
from model.parts.drawer_places import standing
from model.rules import rule
from model.units import Mm, Places

NEAR_END = "stiles|bottom_rail"
FAR_END = "dividers|opposite_stiles|opposite_bottom_rail|opposite_side_rail"


@rule
def bearers(
    own_bearer_places: Places,
    has_centre_runner: bool,
    bearer_plane: Mm,
    bearer_end_gap: Mm,
    bearer_bottom: Mm,
    bearer_length: Mm,
    bearer_height: Mm,
    bearer_stock: Mm,
    bearer_screws: tuple[Screw, ...],
    needs_divider: bool,
    frame: Frame,
    bearer_wood: Material,
) -> Made:
    """A bearer carries what a drawer runs on, from its own side to what stands opposite."""
    if not own_bearer_places:
        return ()
    far = "dividers" if needs_divider else FAR_END.removeprefix("dividers|")
    return (
        Part(
            name="centre runner" if has_centre_runner else "slide bearer",
            assembly="under the bed",
            length=bearer_length,
            width=bearer_height,
            thickness=bearer_stock,
            lies="vuz" if has_centre_runner else "vzu",
            at=(own_bearer_places[0], bearer_plane, bearer_bottom),
            places=standing(own_bearer_places),
            frame=frame,
            material=bearer_wood.key,
            screws=bearer_screws,
            held=tuple(
                Hold(by, "brackets or screws", within=bearer_end_gap, knock_down=True)
                for by in (NEAR_END, far)
            ),
        ),
    )


@rule
def bearer_screws(
    bracket_drop: Mm,
    bearer_length: Mm,
    bearer_height: Mm,
    bearer_toe: Mm,
    bearer_screw_up: Mm,
    near_screw: Fastener,
    far_screw: Fastener,
) -> tuple[Screw, ...]:
    """Without brackets, a screw slants through each edge of the bearer into what its end meets."""
    if bracket_drop:
        return ()
    slant, up = 1 / sqrt(2), float(bearer_height)
    screws = []
    near, far = (near_screw, NEAR_END), (far_screw, FAR_END)
    ends = ((bearer_toe, -slant, *near), (bearer_length - bearer_toe, slant, *far))
    for x, along, fastener, into in ends:
        spots = (((x, 0.0, bearer_screw_up), slant), ((x, up, bearer_screw_up), -slant))
        screws += [_driven(fastener, at, (along, way, 0.0), into) for at, way in spots]
    return tuple(screws)


def _driven(fastener: Fastener, at: Point, toward: Point, into: str) -> Screw:
    kind = f"wood screw {fastener.screw.key}"
    return Screw(kind, at, toward, fastener.length, fastener.screw.shank_mm, into)


@rule
def bearer_legs(
    bearer_leg_places: Places,
    bearer_leg_planes: Places,
    bearer_bottom: Mm,
    bearer_height: Mm,
    bearer_stock: Mm,
    frame: Frame,
    bearer_wood: Material,
    bearer_leg_toe: Toe | None,
) -> Made:
    """Legs keep a long bearer from sagging; they stand between the drawers."""
    if not bearer_leg_places or not bearer_leg_planes:
        return ()
    size = (bearer_bottom, bearer_height, bearer_stock)
    return (
        Part(
            name="bearer leg",
            assembly="under the bed",
            length=bearer_bottom,
            width=bearer_height,
            thickness=bearer_stock,
            lies="zvu",
            at=(bearer_leg_places[0], bearer_leg_planes[0], 0.0),
            places=standing(bearer_leg_places, planes=bearer_leg_planes),
            frame=frame,
            material=bearer_wood.key,
            screws=toed(size, Face.FAR, bearer_leg_toe, "bearers"),
            held=(Hold("floor", "stands"), Hold("bearers", "screwed", knock_down=True)),
        ),
    )


@rule
def dividers(
    needs_divider: bool,
    divider_from: Mm,
    divider_plane: Mm,
    divider_bottom: Mm,
    divider_length: Mm,
    divider_height: Mm,
    divider_stock: Mm,
    divider_leg_places: Places,
    row_name: str,
    frame: Frame,
    bearer_wood: Material,
) -> Made:
    """Bearers that meet no frame end on a board that runs along the row, on legs of its own."""
    if not needs_divider:
        return ()
    under = "divider_legs" if divider_leg_places else "floor"
    return (
        Part(
            name="cross member" if row_name == "foot" else "divider",
            assembly="under the bed",
            length=divider_length,
            width=divider_height,
            thickness=divider_stock,
            lies="uzv",
            at=(divider_from, divider_plane, divider_bottom),
            frame=frame,
            material=bearer_wood.key,
            held=(
                Hold(under, "stands", knock_down=True),
                Hold("bearers", "brackets or screws", knock_down=True),
            ),
        ),
    )


@rule
def divider_legs(
    divider_leg_places: Places,
    divider_plane: Mm,
    divider_bottom: Mm,
    divider_leg_width: Mm,
    divider_stock: Mm,
    frame: Frame,
    bearer_wood: Material,
) -> Made:
    """A divider's legs stand on the floor."""
    if not divider_leg_places:
        return ()
    return (
        Part(
            name="divider leg",
            assembly="under the bed",
            length=divider_bottom,
            width=divider_leg_width,
            thickness=divider_stock,
            lies="zuv",
            at=(divider_leg_places[0], divider_plane, 0.0),
            places=standing(divider_leg_places),
            frame=frame,
            material=bearer_wood.key,
            held=(Hold("floor", "stands"), Hold("dividers", "screwed and glued", glued=True)),
        ),
    )
