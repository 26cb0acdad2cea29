"""Do the knock-down joints carry what hangs on them? Asked of the left and the right side."""

from dataclasses import replace

import numpy as np

from model.checks.record import Finding, at_most, check
from model.checks.strength.joint_forces import called, forces_between, made_by
from model.checks.strength.rail_ends import HANDLED, POSTS, SIDES
from model.materials import Connector
from model.parts.pieces import Pieces
from model.structure.record import Carried, Unjudged


@check(
    "strength",
    "Knock-down joints carry their load",
    source="load class of the joint: its row in the table of connectors, from memory",
    remedies=(
        "connector",
        "beam",
    ),
)
def connectors_carry(
    strength: Carried | Unjudged, pieces: Pieces, connector: Connector, row_name: str
) -> Finding | None:
    """Plates and bolts are sold for a load straight down; those of one corner share it."""
    if isinstance(strength, Unjudged):
        return None
    rails = made_by(pieces, *(f"{row_name}.{name}" for name in SIDES))
    joints = forces_between(strength, pieces, rails, made_by(pieces, *POSTS))
    if not len(joints.one):
        return None
    in_use = np.array([case.key not in HANDLED for case in strength.cases])
    posts, corner, count = np.unique(joints.other, return_inverse=True, return_counts=True)
    down = joints.force[:, :, 2] @ (corner[:, None] == np.arange(len(posts)))
    each = np.where(in_use[:, None], np.maximum(down, 0.0) / count, 0.0)
    case, worst = divmod(int(each.argmax()), len(posts))
    load, limit = float(each[case, worst]), connector.load_n
    at = int(np.flatnonzero(corner == worst)[0])
    return replace(
        at_most(load, limit, tight=limit / 10, unit="N"),
        reason=(
            f"{_joint(connector, int(count[worst]))} at {pieces.labels[int(posts[worst])]} "
            f"{'bears' if count[worst] == 1 else 'bear together'} {load * count[worst]:.0f} N "
            f"straight down, {called(strength.cases[case])}. {limit:.0f} N is reckoned for one "
            "such joint, as is common: its maker's data sheet decides."
        ),
        pieces=(int(joints.one[at]), int(posts[worst])),
    )


def _joint(connector: Connector, count: int) -> str:
    one = "pair of plates" if connector.is_plate else "bolt"
    many = "pairs of plates" if connector.is_plate else "bolts"
    return f"The {one}" if count == 1 else f"The {count} {many}"
