"""Can a sleeper be caught between the bed and a wall? Asked of left, right and foot."""

from model.brief.loads import SleepersAre
from model.checks.record import Finding, check
from model.checks.safety.banded import banded
from model.checks.safety.gaps import PROBES
from model.units import Mm

FAR: Mm = 400.0  # a wall beyond it is no gap: AS/NZS 4220 calls more a gap to roll out by


@check("safety", "Gap between the bed and the wall", about="room", source=PROBES)
def gap_to_wall(room: Mm, sleepers_are: SleepersAre) -> Finding | None:
    """Who slides down beside the bed is held there: push it to the wall, or well clear of it."""
    return banded(room, "wall", sleepers_are, "the gap to the wall") if room < FAR else None
