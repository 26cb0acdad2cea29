"""The centre beam and its legs. End cleats are laid out with each end, packers with the bearers."""

from model.brief.deck import BeamKind
from model.dimensions.toes import Toe
from model.joints.toe import toed
from model.materials import Material
from model.part import Face, Hold, Made, Part
from model.parts.places import along_v
from model.rules import rule
from model.units import Mm, Places

BEARERS = "left.bearers|right.bearers"
CARRIERS = {
    "legs": ("beam_leg_pieces",),
    "bearers": ("beam_packer_pieces|left.bearers|right.bearers",),
    "ends": ("head.beam_block", "foot.beam_block"),
}


@rule
def beam_pieces(
    beam: BeamKind,
    beam_from_x: Mm,
    beam_from_y: Mm,
    beam_bottom: Mm,
    beam_length: Mm,
    beam_height: Mm,
    beam_stock: Mm,
    slat_wood: Material,
) -> Made:
    """A beam under the middle of the slats, on edge."""
    if beam == "none":
        return ()
    return (
        Part(
            name="centre beam",
            assembly="deck",
            length=beam_length,
            width=beam_height,
            thickness=beam_stock,
            lies="vzu",
            at=(beam_from_x, beam_from_y, beam_bottom),
            material=slat_wood.key,
            held=tuple(Hold(by, "rests, screwed", knock_down=True) for by in CARRIERS[beam]),
        ),
    )


@rule
def beam_leg_pieces(
    beam_leg_places: Places,
    beam_from_x: Mm,
    beam_leg_height: Mm,
    beam_leg_width: Mm,
    beam_stock: Mm,
    slat_wood: Material,
) -> Made:
    """Legs carry the beam straight to the floor."""
    if not beam_leg_places:
        return ()
    return (
        Part(
            name="beam leg",
            assembly="deck",
            length=beam_leg_height,
            width=beam_leg_width,
            thickness=beam_stock,
            lies="zvu",
            at=(beam_from_x, beam_leg_places[0], 0.0),
            places=along_v(beam_leg_places),
            material=slat_wood.key,
            held=(Hold("floor", "stands"), Hold("beam_pieces", "screwed")),
        ),
    )


@rule
def beam_packer_pieces(
    packer_places: Places,
    beam_rests_on_bearers: bool,
    beam_from_x: Mm,
    bearer_top: Mm,
    packer_height: Mm,
    bearer_stock: Mm,
    beam_stock: Mm,
    bearer_wood: Material,
    packer_toe: Toe | None,
) -> Made:
    """Packers carry the beam on the bearers, one on each, held by a slanting screw from either
    edge.
    """
    if not packer_places or beam_rests_on_bearers:
        return ()
    size = (packer_height, beam_stock, bearer_stock)
    return (
        Part(
            name="beam packer",
            assembly="deck",
            length=packer_height,
            width=beam_stock,
            thickness=bearer_stock,
            lies="zuv",
            at=(beam_from_x, packer_places[0], bearer_top),
            places=along_v(packer_places),
            material=bearer_wood.key,
            screws=toed(size, Face.NEAR, packer_toe, BEARERS),
            held=(
                Hold(BEARERS, "screwed"),
                Hold("beam_pieces", "screwed", knock_down=True),
            ),
        ),
    )
