"""Panels that close the bays of a face frame. Read for left and right."""

from model.frame import Frame
from model.materials import Material
from model.part import Hold, Made, Part
from model.parts.places import along_u
from model.rules import rule
from model.units import Mm, Places


def _panel(
    name: str,
    at: Places,
    length: Mm,
    width: Mm,
    thickness: Mm,
    corner: tuple[float, float, float],
    frame: Frame,
    material: Material,
    row_name: str,
    room: Mm,
) -> Part:
    return Part(
        name=name,
        assembly=f"{row_name} side",
        length=length,
        width=width,
        thickness=thickness,
        lies="zuv",
        at=corner,
        places=along_u(at),
        frame=frame,
        material=material.key,
        held=tuple(
            Hold(by, "floats in grooves", within=room)
            for by in ("stiles", "top_rail", "bottom_rail")
        ),
    )


@rule
def closing_panels(
    closed_bays: Places,
    closing_panel_tuck: Mm,
    closing_panel_plane: Mm,
    closing_panel_bottom: Mm,
    closing_panel_height: Mm,
    closing_panel_width: Mm,
    panel_thickness: Mm,
    frame: Frame,
    panel_material: Material,
    row_name: str,
    closing_float: Mm,
) -> Made:
    """A closed side has a panel in every bay, let into grooves all round."""
    if not closed_bays:
        return ()
    corner = (closed_bays[0] - closing_panel_tuck, closing_panel_plane, closing_panel_bottom)
    return (
        _panel(
            "closing panel", closed_bays, closing_panel_height, closing_panel_width,
            panel_thickness, corner, frame, panel_material, row_name, closing_float,
        ),
    )  # fmt: skip


@rule
def blind_panels(
    blind_bays: Places,
    blind_panel_tuck: Mm,
    closing_panel_plane: Mm,
    closing_panel_bottom: Mm,
    closing_panel_height: Mm,
    blind_panel_width: Mm,
    panel_thickness: Mm,
    frame: Frame,
    panel_material: Material,
    row_name: str,
    closing_float: Mm,
) -> Made:
    """Beside drawers reached from the foot, the side's first bay is closed by a panel."""
    if not blind_bays:
        return ()
    corner = (blind_bays[0] - blind_panel_tuck, closing_panel_plane, closing_panel_bottom)
    return (
        _panel(
            "blind panel", blind_bays, closing_panel_height, blind_panel_width,
            panel_thickness, corner, frame, panel_material, row_name, closing_float,
        ),
    )  # fmt: skip
