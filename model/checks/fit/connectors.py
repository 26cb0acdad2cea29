"""Do the bed-rail connectors find wood, and room to be hung?"""

from model.checks.record import Finding, at_least, check
from model.materials import Connector
from model.units import Mm

MAGAZINE = "a magazine on bed building, 2007: barrel nuts often need a rail of 1 1/2 in"


@check(
    "fit",
    "Rail is thick enough for its connector",
    about="frame_thickness",
    source=MAGAZINE,
    remedies=("frame_stock", "connector"),
)
def rail_backs_connector(connector: Connector, rail_spare_thickness: Mm) -> Finding:
    """Thin rails split beside the nut or the plate's screws."""
    return at_least(rail_spare_thickness, 0.0)


@check(
    "fit",
    "Post keeps wood behind the hooks' pocket",
    about="post_along",
    remedies=("post_depth", "post_layers", "connector"),
)
def post_backs_connector(connector: Connector, post_behind_pocket: Mm) -> Finding | None:
    """Half an inch must stay behind the pocket, or a knee pushes the plate through the post."""
    return at_least(post_behind_pocket, 12.7) if connector.is_plate else None
