"""Does a post or a cap catch clothes, cords or shoulders? Asked of head and foot."""

import numpy as np

from model.brief.loads import SleepersAre
from model.checks.record import Finding, check
from model.checks.safety.banded import banded
from model.parts.pieces import Pieces
from model.units import Mm

YARDSTICK = "16 CFR 1219 (cribs) and AS/NZS 4220 (bunk beds): yardsticks for an ordinary bed"
POSTS = ("post_left", "post_right")


@check("safety", "Posts end level with what joins them", about="post_top", source=YARDSTICK)
def posts_catch_nothing(
    pieces: Pieces, is_head: bool, post_top: Mm, rail_top: Mm, sleepers_are: SleepersAre
) -> Finding | None:
    """A post that stands up over its rail catches cords, belts and collars: hang nothing on it.

    Asked where posts rise above the side rails; measured on the pieces, from the top of the higher
    post down to the highest wood between them.
    """
    if post_top <= rail_top:
        return None
    scope = "head" if is_head else "foot"
    own = np.array([rule.partition(".")[0] == scope for rule in pieces.rules])
    is_post = np.array([rule.partition(".")[2] in POSTS for rule in pieces.rules])
    top = pieces.bounds[1][:, 2]
    between = top[(own & ~is_post)[pieces.rule]].max(initial=0.0)
    proud = float(top[(own & is_post)[pieces.rule]].max(initial=0.0) - between)
    return banded(max(round(proud, 3), 0.0), "proud", sleepers_are, "what stands up over the rail")


@check(
    "safety",
    "The cap board catches nothing",
    about="cap_overhang",
    source=YARDSTICK,
    remedies=("cap_overhang",),
)
def cap_catches_nothing(
    is_capped: bool, cap_overhang: Mm, sleepers_are: SleepersAre
) -> Finding | None:
    """A cap that stands out over its posts catches clothes and shoulders."""
    return banded(cap_overhang, "overhang", sleepers_are, "the overhang") if is_capped else None
