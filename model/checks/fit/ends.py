"""Have the panels, planks and slats of an end their room? Asked of head and foot."""

from model.brief.ends import EndStyle
from model.checks.fit.stock import sheet_thickness
from model.checks.record import Finding, at_least, check
from model.materials import Material
from model.units import Measured, Mm

FORUM = (
    "a woodworkers' forum: 1/8 in at each side, 1/16 in at the ends, of a panel in a 3/8 in groove"
)
LETTERS = "a magazine's letters: cut the groove to the panel as measured"


@check(
    "fit",
    "Panels of sheet have room in their grooves",
    about="panel_float_built",
    source=FORUM,
    remedies=("panel_float", "panel_groove_depth"),
)
def panel_floats(
    style: EndStyle, panel_material: Material, panel_float_built: Mm
) -> Finding | None:
    """A sheet keeps still, but it is never cut, nor its grooves, to a hair; solid panels are
    followed over the year.
    """
    if style != "panel" or panel_material.kind == "solid":
        return None
    return at_least(panel_float_built, 0.8, tight=0.2)


@check(
    "fit",
    "Panels stay in their grooves",
    about="panel_hold",
    source=FORUM,
    remedies=("panel_groove_depth", "panel_float"),
)
def panel_stays(style: EndStyle, panel_material: Material, panel_hold: Mm) -> Finding | None:
    """A panel must reach into its grooves; solid panels and planks are followed over the year."""
    if style != "panel" or panel_material.kind == "solid":
        return None
    return at_least(panel_hold, 3.0, tight=0.5)


@check(
    "fit",
    "Groove leaves walls in the rails",
    about="groove_wall",
    source="a router forum: a third of the thickness; a quarter inch of wall: common practice",
    remedies=("frame_stock", "panel_stock", "panel_layers"),
)
def groove_keeps_walls(is_grooved: bool, groove_wall: Mm) -> Finding | None:
    """Thin walls beside a groove break out."""
    return at_least(groove_wall, 6.0, tight=0.5) if is_grooved else None


@check(
    "fit",
    "Thickness of the panel stock",
    about="panel_layer_thickness",
    source=LETTERS,
    remedies=("panel_stock", "panel_material"),
)
def panel_stock_thickness(
    is_grooved: bool,
    style: EndStyle,
    panel_layer_thickness: Mm,
    panel_stock_measured: Measured,
    panel_material: Material,
) -> Finding | None:
    """Grooves are cut to the panel: measure it before the groove is set up."""
    if not is_grooved or style != "panel":
        return None
    return sheet_thickness(panel_layer_thickness, panel_stock_measured, panel_material)
