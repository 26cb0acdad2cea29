"""The end cleat that carries the centre beam; read for head and foot."""

from model.brief.deck import BeamKind
from model.frame import Frame
from model.materials import Material
from model.part import Hold, Made, Part
from model.rules import rule
from model.units import Mm


@rule
def beam_block(
    beam: BeamKind,
    frame: Frame,
    beam_block_from_x: Mm,
    end_rail_back_plane: Mm,
    beam_block_bottom: Mm,
    beam_block_length: Mm,
    cleat_width: Mm,
    cleat_stock: Mm,
    frame_wood: Material,
) -> Made:
    """The beam rests on a cleat glued and screwed to the end rail."""
    if beam != "ends":
        return ()
    return (
        Part(
            name="beam end cleat",
            assembly="deck",
            length=beam_block_length,
            width=cleat_width,
            thickness=cleat_stock,
            lies="uzv",
            at=(beam_block_from_x, end_rail_back_plane, beam_block_bottom),
            frame=frame,
            material=frame_wood.key,
            held=(Hold("end_rail", "glued and screwed", glued=True),),
        ),
    )
