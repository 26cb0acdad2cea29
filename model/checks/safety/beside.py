"""Can a sleeper be caught between the bed and a nightstand? Asked of left and right."""

from model.brief.loads import SleepersAre
from model.checks.record import Finding, check
from model.checks.safety.banded import banded
from model.checks.safety.gaps import PROBES
from model.units import Mm


@check(
    "safety",
    "Gap between the bed and the nightstand",
    about="nightstand_gap",
    source=PROBES,
)
def gap_to_nightstand(
    nightstand_width: Mm, nightstand_gap: Mm, sleepers_are: SleepersAre
) -> Finding | None:
    """Who slides down beside the mattress is held there as by a wall."""
    return (
        banded(nightstand_gap, "wall", sleepers_are, "the gap to the nightstand")
        if nightstand_width
        else None
    )
