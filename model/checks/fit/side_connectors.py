"""Can a side be hung on its posts and taken off again? Asked of left and right."""

from model.checks.record import Finding, at_least, check
from model.materials import Connector
from model.units import Mm


@check(
    "fit",
    "Wood above and below the connector's plate",
    about="plate_room",
    remedies=("rail_width", "top_rail_width", "connector"),
)
def wood_round_plate(connector: Connector, plate_room: Mm) -> Finding | None:
    """A rail at least an inch wider than its plate keeps wood above and below it."""
    return at_least(plate_room, 25.4) if connector.is_plate else None


@check("fit", "Room to lift the side off its hooks", about="lift_spare", remedies=("connector",))
def room_to_lift(connector: Connector, lift_spare: Mm) -> Finding | None:
    """Hooks and keyholes come free only when the rail can rise: nothing may be in the way above
    it.
    """
    return at_least(lift_spare, 0.0) if connector.is_plate else None
