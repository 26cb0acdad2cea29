"""Does the bed tip when all drawers of a row stand open and full, and nobody lies in it?"""

from dataclasses import replace

import numpy as np

from model.checks.record import Finding, at_most, check
from model.checks.strength.drawer_weights import drawer_pieces
from model.dimensions.drawer_load import GRAVITY
from model.parts.pieces import Bools, Floats, Ints, Pieces
from model.solids.carried import MATTRESS
from model.solids.clash import Travel
from model.solids.near import TOUCH
from model.units import Count, Kg

SAFE = 1.5  # times steadier than just not tipping: below it the verdict is tight; common practice
N_M = GRAVITY / 1000  # of a kg one mm away


@check(
    "strength",
    "Bed stands with all drawers of the row open",
    source=(
        "EN 1725, stability: it must not tip; all drawers open and full and nobody in bed: common "
        "practice; filled as ANSI/KCMA A161.1 tests"
    ),
    remedies=("slide", "depth"),
)
def stands_with_drawers_open(
    drawer_count: Count,
    drawer_contents: Kg,
    mattress_mass: Kg,
    pieces: Pieces,
    masses: Floats,
    drawer_travel: Travel,
    row_name: str,
) -> Finding | None:
    """Open drawers pull the bed over its feet on their side; its own weight holds it down."""
    if not drawer_count:
        return None
    out, _ = drawer_travel[f"{row_name}-1"]
    ahead = _ahead(pieces, np.array(out))
    edge = float(ahead[_standing(pieces)].max())
    own = masses + mattress_mass * _is_mattress(pieces)
    turning = own * (ahead - edge)
    for number in range(1, drawer_count + 1):
        moving = drawer_pieces(pieces, row_name, number)
        way = drawer_travel[f"{row_name}-{number}"][1]
        turning[moving] = own[moving] * (ahead[moving] + way - edge)
        inside = float(ahead[moving][_is_bottom(pieces, moving)].mean())
        turning = np.append(turning, drawer_contents * (inside + way - edge))
    over, back = turning[turning > 0].sum(), -turning[turning < 0].sum()
    used = 100 * over / back
    return replace(
        at_most(float(used), 100.0, tight=100 * (1 - 1 / SAFE), unit="%"),
        reason=(
            f"All drawers open and full turn the bed over the feet on their side with "
            f"{over * N_M:.0f} N m; bed and mattress hold it down with {back * N_M:.0f} N m."
        ),
    )


def _ahead(pieces: Pieces, out: Floats) -> Floats:
    """How far the middle of every piece's bounds lies towards where the drawers come out, mm."""
    lo, hi = pieces.bounds
    return np.asarray((lo + hi) / 2 @ out)


def _standing(pieces: Pieces) -> Bools:
    """Which pieces stand on the floor."""
    return np.asarray(pieces.bounds[0][:, 2] < TOUCH)


def _is_bottom(pieces: Pieces, some: Ints) -> Bools:
    """Which of some pieces are box bottoms: over them lies what is in the drawer."""
    return np.array([each.endswith(".box_bottoms") for each in pieces.made_by(*some.tolist())])


def _is_mattress(pieces: Pieces) -> Floats:
    return np.array([part.hardware == MATTRESS for part in pieces.parts], float)[pieces.part]
