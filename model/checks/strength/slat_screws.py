"""Do the screws of the slats hold their ends down? Asked of the left and the right side."""

from collections.abc import Mapping
from dataclasses import replace

import numpy as np

from model.checks.record import Finding, at_most, check
from model.checks.strength.joint_forces import (
    called,
    drawn_out,
    forces_between,
    lasting,
    made_by,
    wood_of,
)
from model.materials import Material
from model.parts.pieces import Pieces
from model.solids.screwing import ScrewPoint
from model.structure.record import Carried, Unjudged


@check(
    "strength",
    "Screws hold the slats' ends down",
    source="NDS 2018, equations 12.2-2 and 12.2-6, from memory",
    remedies=("cleat_screw", "slat_stock", "cleat_width", "beam"),
)
def slat_screws_hold(
    strength: Carried | Unjudged,
    pieces: Pieces,
    screw_points: tuple[ScrewPoint, ...],
    materials: Mapping[str, Material],
    row_name: str,
) -> Finding | None:
    """With one sleeper beside a centre beam, the slats' other ends lift."""
    cleat = f"{row_name}.cleat"
    points = [p for p in screw_points if p.rules == ("slat_pieces", cleat)]
    rails = made_by(pieces, f"{row_name}.top_rail", f"{row_name}.side_rail")
    if not points or isinstance(strength, Unjudged):
        return None
    joints = forces_between(strength, pieces, made_by(pieces, "slat_pieces"), rails)
    lift = np.maximum(-joints.force[:, :, 2], 0.0) / len(points)
    wood, slat = (wood_of(pieces, k, materials) for k in (points[0].into, points[0].piece))
    held = drawn_out(points[0], points[0].bite, wood.specific_gravity, slat.specific_gravity)
    allowed = held * lasting(strength.cases)[:, None]
    case, worst = np.unravel_index(int((lift / allowed).argmax()), lift.shape)
    drawn, limit = float(lift[case, worst]), float(allowed[case, 0])
    nothing = "No slat lifts off this cleat under any load that is asked."
    return replace(
        at_most(drawn, limit, tight=limit / 10, unit="N"),
        reason=(
            f"The end of {pieces.labels[joints.one[worst]]} lifts with {drawn:.0f} N, "
            f"{called(strength.cases[case])}." if drawn else nothing
        ),
        pieces=(int(joints.one[worst]), points[0].into),
    )  # fmt: skip
