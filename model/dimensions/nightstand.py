"""A nightstand beside the bed, and the drawers that open past it. Read for left and right."""

from model.rules import rule
from model.units import Count, Mm, Places


@rule
def nightstand_from(bed_length: Mm, nightstand_width: Mm) -> Mm:
    """A nightstand stands at the head and reaches towards the foot."""
    return bed_length - nightstand_width


@rule
def last_front_end(
    opening_places: Places, opening_width: Mm, front_lap: Mm, drawer_count: Count, row_from: Mm
) -> Mm:
    """Where the front nearest the head ends."""
    return opening_places[-1] + opening_width + front_lap if drawer_count else row_from


@rule
def nightstand_clearance(nightstand_from: Mm, last_front_end: Mm) -> Mm:
    """From the headmost front to the nightstand, along the bed; below zero it stands before it."""
    return nightstand_from - last_front_end
