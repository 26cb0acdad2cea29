"""Can a hand hole in a front hold a finger? Asked of every row."""

from model.brief.loads import SleepersAre
from model.checks.record import Finding, check
from model.checks.safety.banded import banded
from model.checks.safety.gaps import PROBES
from model.materials import Pull
from model.units import Count, Mm


@check(
    "safety",
    "Hand holes in the fronts hold no finger",
    about="pull_height",
    source=PROBES,
    remedies=("pull",),
)
def hand_holes(
    front_count: Count, pull: Pull, pull_height: Mm, hand_hole_width: Mm, sleepers_are: SleepersAre
) -> Finding | None:
    """A finger goes into a hole of 7 to 12 mm and swells in it."""
    if not front_count or pull.kind != "cut-out":
        return None
    return banded(min(pull_height, hand_hole_width), "hole", sleepers_are, "a hand hole")
