"""The cleat along the inside of each long side."""

from model.frame import Frame
from model.joints.row_of_screws import row_of_screws
from model.materials import Material, WoodScrew
from model.part import Face, Hold, Made, Part
from model.rules import rule
from model.units import Mm, Places


@rule
def cleat(
    frame: Frame,
    run_from: Mm,
    back_plane: Mm,
    cleat_bottom: Mm,
    rail_length: Mm,
    cleat_width: Mm,
    cleat_stock: Mm,
    frame_wood: Material,
    row_name: str,
    cleat_screw: WoodScrew,
    cleat_screw_length: Mm,
    cleat_screw_places: Places,
    screw_cover: Mm,
) -> Made:
    """Slats rest on a cleat that ends at the posts and is glued and screwed to the rail."""
    holes, screws = row_of_screws(
        (rail_length, cleat_width, cleat_stock),
        through=Face.FACE,
        places=cleat_screw_places,
        into="side_rail|top_rail",
        length=cleat_screw_length,
        diameter=cleat_screw.shank_mm,
        shank_hole=cleat_screw.shank_hole_mm,
        cover=screw_cover,
        kind=f"wood screw {cleat_screw.key}",
    )
    return (
        Part(
            name="cleat",
            assembly=f"{row_name} side",
            length=rail_length,
            width=cleat_width,
            thickness=cleat_stock,
            lies="uzv",
            at=(run_from, back_plane, cleat_bottom),
            frame=frame,
            material=frame_wood.key,
            holes=holes,
            screws=screws,
            held=(Hold("side_rail|top_rail", "glued and screwed", glued=True),),
        ),
    )
