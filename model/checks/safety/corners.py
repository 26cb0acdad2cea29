"""Are the edges that hands and shins meet eased?"""

from model.brief.loads import SleepersAre
from model.checks.record import Finding, advice, at_least, check
from model.units import INCH, Mm

LEAST_RADIUS: Mm = INCH / 16  # what one pass of sandpaper leaves; common practice, no source


@check("safety", "Edges that hands meet are eased", about="eased_edge", remedies=("eased_edge",))
def edges_eased(eased_edge: Mm, sleepers_are: SleepersAre) -> Finding:
    """A sixteenth of an inch takes the sharpness off posts, caps and fronts; shins meet them in the
    dark.
    """
    found = at_least(eased_edge, LEAST_RADIUS)
    return advice(found) if sleepers_are == "adults" else found
