"""Angle brackets under the ends of the bearers. Read for left, right and foot."""

from __future__ import annotations

from model.dimensions.brackets import HOLES
from model.dimensions.fasteners import Fastener
from model.frame import Frame
from model.part import Cut, Face, Hold, Made, Part, Screw
from model.parts.bearers import FAR_END, NEAR_END
from model.parts.drawer_places import standing
from model.rules import rule
from model.units import Mm, Places


@rule
def near_brackets(
    bracket_places: Places,
    back_plane: Mm,
    bracket_bottom: Mm,
    bracket_leaf: Mm,
    bracket_width: Mm,
    bracket_plate: Mm,
    bracket_screw_up: Fastener,
    bracket_screw_near: Fastener,
    frame: Frame,
) -> Made:
    """One leaf is screwed under the bearer's end at the bench, where a driver has room for it; the
    other is screwed to the frame once the bearer stands.
    """
    if not bracket_places:
        return ()
    leaf, plate = float(bracket_leaf), float(bracket_plate)
    inside = Cut("bend", Face.LOWER, (plate, 0.0, 0.0), (leaf, leaf - plate, float(bracket_width)))
    screws = _up(leaf, plate, bracket_width, bracket_screw_up, mirrored=False)
    screws += _into_frame(plate, leaf, bracket_width, bracket_screw_near, -1.0, NEAR_END)
    return (
        Part(
            name="angle bracket",
            assembly="under the bed",
            length=bracket_leaf,
            width=bracket_leaf,
            thickness=bracket_width,
            lies="vzu",
            at=(bracket_places[0], back_plane, bracket_bottom),
            places=standing(bracket_places),
            frame=frame,
            material="metal",
            cuts=(inside,),
            screws=screws,
            held=(
                Hold("bearers", "screwed", knock_down=True),
                Hold(NEAR_END, "screwed on the bed", knock_down=True),
            ),
            hardware="BRACKET",
        ),
    )


@rule
def far_brackets(
    bracket_places: Places,
    far_bracket_plane: Mm,
    bracket_bottom: Mm,
    bracket_leaf: Mm,
    bracket_width: Mm,
    bracket_plate: Mm,
    bracket_screw_up: Fastener,
    bracket_screw_far: Fastener,
    frame: Frame,
) -> Made:
    """The bracket at a bearer's far end is the same, turned round."""
    if not bracket_places:
        return ()
    leaf, plate = float(bracket_leaf), float(bracket_plate)
    corner = (leaf - plate, leaf - plate, float(bracket_width))
    screws = _up(leaf, plate, bracket_width, bracket_screw_up, mirrored=True)
    screws += _into_frame(leaf - plate, leaf, bracket_width, bracket_screw_far, 1.0, FAR_END)
    return (
        Part(
            name="angle bracket",
            assembly="under the bed",
            length=bracket_leaf,
            width=bracket_leaf,
            thickness=bracket_width,
            lies="vzu",
            at=(bracket_places[0], far_bracket_plane, bracket_bottom),
            places=standing(bracket_places),
            frame=frame,
            material="metal",
            cuts=(Cut("bend", Face.LOWER, (0.0, 0.0, 0.0), corner),),
            screws=screws,
            held=(
                Hold("bearers", "screwed", knock_down=True),
                Hold(FAR_END, "screwed on the bed", knock_down=True),
            ),
            hardware="BRACKET",
        ),
    )


def _up(
    leaf: float, plate: float, width: Mm, fastener: Fastener, *, mirrored: bool
) -> tuple[Screw, ...]:
    kind = f"wood screw {fastener.screw.key}"
    spots = [leaf * share for share in HOLES]
    return tuple(
        Screw(
            kind, (leaf - x if mirrored else x, leaf - plate, width / 2), (0.0, 1.0, 0.0),
            fastener.length, fastener.screw.shank_mm, "bearers",
        )
        for x in spots
    )  # fmt: skip


def _into_frame(
    at: float, leaf: float, width: Mm, fastener: Fastener, toward: float, into: str
) -> tuple[Screw, ...]:
    kind = f"wood screw {fastener.screw.key}"
    return tuple(
        Screw(
            kind, (at, leaf * (1 - share), width / 2), (toward, 0.0, 0.0),
            fastener.length, fastener.screw.shank_mm, into,
        )
        for share in HOLES
    )  # fmt: skip
