"""Side-mount slides, as two simple bars: one stays on the bearer, one moves with the box.

Read for left, right and foot.
"""

from __future__ import annotations

from model.dimensions.fasteners import Fastener
from model.dimensions.slide_places import HAIR, PLATE
from model.frame import Frame
from model.part import Hold, Made, Part, Screw
from model.parts.drawer_places import of_drawers, standing
from model.rules import rule
from model.units import Mm, Places

BEARERS = "bearers|opposite_bearers"
COVER: Mm = HAIR - 0.1  # a tenth for rounding


@rule
def slide_holders(
    slide_near_places: Places,
    slide_holder_far_places: Places,
    box_front_plane: Mm,
    slide_bottom: Mm,
    slide_closed: Mm,
    slide_section: Mm,
    slide_member: Mm,
    slide_screw_spots: Places,
    slide_bearer_screw: Fastener,
    slide_code: str,
    frame: Frame,
    row_name: str,
) -> Made:
    """The outer member of each slide is screwed to its bearer and stays there."""
    made = []
    sides = ((slide_near_places, -1.0), (slide_holder_far_places, 1.0))
    for places, toward in sides if slide_near_places else ():
        made.append(
            Part(
                name="slide, outer member",
                assembly="under the bed",
                length=slide_closed,
                width=slide_section,
                thickness=slide_member,
                lies="vzu",
                at=(places[0], box_front_plane, slide_bottom),
                places=standing(places),
                frame=frame,
                material="metal",
                screws=_screws(
                    slide_screw_spots,
                    slide_section,
                    slide_member,
                    toward,
                    slide_bearer_screw,
                    BEARERS,
                ),
                held=(Hold(BEARERS, "screwed", knock_down=True),),
                row=row_name,
                hardware=slide_code,
            )
        )
    return tuple(made)


@rule
def slide_movers(
    slide_mover_places: Places,
    slide_mover_far_places: Places,
    box_front_plane: Mm,
    slide_bottom: Mm,
    slide_closed: Mm,
    slide_section: Mm,
    slide_member: Mm,
    slide_play_built: Mm,
    slide_screw_spots: Places,
    slide_box_screw: Fastener,
    slide_code: str,
    frame: Frame,
    row_name: str,
) -> Made:
    """The inner member of each slide is screwed to the box side and moves with it."""
    made = []
    sides = (
        (slide_mover_places, 1.0, "box_near_sides"),
        (slide_mover_far_places, -1.0, "box_far_sides"),
    )
    for places, toward, side in sides if slide_mover_places else ():
        made.append(
            Part(
                name="slide, inner member",
                assembly="drawers",
                length=slide_closed,
                width=slide_section,
                thickness=slide_member,
                lies="vzu",
                at=(places[0], box_front_plane, slide_bottom),
                places=of_drawers(places),
                frame=frame,
                material="metal",
                screws=_screws(
                    slide_screw_spots, slide_section, slide_member, toward, slide_box_screw, side
                ),
                held=(
                    Hold(side, "screwed", knock_down=True),
                    Hold("slide_holders", "runs", within=slide_play_built, knock_down=True),
                ),
                row=row_name,
                hardware=f"{slide_code}-inner",
            )
        )
    return tuple(made)


def _screws(
    spots: Places, section: Mm, member: Mm, toward: float, fastener: Fastener, into: str
) -> tuple[Screw, ...]:
    """Screws along the middle of a member, their heads sunk in it but for its plate."""
    face = member - PLATE if toward > 0 else PLATE
    return tuple(
        Screw(
            f"wood screw {fastener.screw.key}", (x, section / 2, face), (0.0, 0.0, toward),
            fastener.length, fastener.screw.shank_mm, into, COVER,
        )
        for x in spots
    )  # fmt: skip
