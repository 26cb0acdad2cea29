"""Can an opening of the headboard or the footboard hold a head or a limb?"""

import numpy as np

from model.brief.loads import SleepersAre
from model.checks.record import Finding, check
from model.checks.safety.banded import worst_banded
from model.checks.safety.gaps import PROBES
from model.parts.pieces import Bools, Pieces
from model.solids.openings import openings
from model.units import Mm


@check(
    "safety",
    "Openings of the end hold nobody",
    about="spindle_gap",
    source=PROBES,
    remedies=("spindle_gap_most", "spindle_width"),
)
def end_openings(
    pieces: Pieces, has_upper_rail: bool, end_assembly: str, deck_top: Mm, sleepers_are: SleepersAre
) -> Finding | None:
    """Whoever lies in the bed or stands behind it can put head or arm through an open end.

    Measured on the pieces of the end above the deck, as seen from the foot; an opening counts as
    its lesser size, so that a wide low one is judged as if it were square.
    """
    if not has_upper_rail:
        return None
    boxes = _boxes_of(pieces, end_assembly) & (pieces.hi[:, 2] > deck_top)
    seen = openings(pieces.lo[boxes][:, (0, 2)], pieces.hi[boxes][:, (0, 2)])
    return worst_banded(seen, "opening", sleepers_are, "an opening")


def _boxes_of(pieces: Pieces, assembly: str) -> Bools:
    """Which boxes are of wood of that end."""
    own = np.array([p.assembly == assembly and not p.hardware for p in pieces.parts])
    return np.asarray(own[pieces.part[pieces.piece]])
