"""Do the screws of a cleat hold what the slats lay on it? Asked of the left and the right side."""

from bisect import bisect_left
from collections.abc import Mapping
from dataclasses import dataclass, replace

import numpy as np

from model.brief.shop import ShownUnit
from model.checks.record import Finding, advice, at_most, check
from model.checks.strength.joint_forces import (
    JointForces,
    called,
    drawn_out,
    forces_between,
    heads,
    lasting,
    made_by,
    uses,
    wood_of,
)
from model.checks.strength.screw_lines import evenly
from model.materials import Allowed, Material
from model.mechanics.fasteners.lateral import ScrewJoint, design_screw_lateral, wood_side
from model.mechanics.fasteners.strengths import Design
from model.mechanics.strip import shares
from model.parts.pieces import Floats, Pieces
from model.solids.screwing import ScrewPoint
from model.structure.knock_down import slip_modulus
from model.structure.record import Carried, Unjudged
from model.units import INCH, Mm, show_length

DECK = ("slat_pieces", "deck_panel_pieces", "batten_pieces")
MORE_SCREWS = 3  # times as many are tried, before the sentence gives up


@dataclass(frozen=True, kw_only=True)
class CleatLine:
    """A cleat on its rail: screws and slats along it, what each screw may bear, and the lever by
    which a slat that bears `arm` before the rail turns the cleat about its lower edge. `load`
    (c, j) N of each slat; `time` (c,) the share of the ten-year value that a case allows; `glued`
    the share of what glue bears that the worst slat takes of it.
    """

    bending: float
    stiffness: float
    lateral: Design
    withdrawal: Design
    lever: Mm
    slats: tuple[Mm, ...]
    arm: Floats
    load: Floats
    time: Floats
    glued: float

    def use(self, screws: tuple[Mm, ...]) -> tuple[Floats, Floats, Floats]:
        """(c, s): share of what each screw may bear; its forces across and out, N."""
        share = shares(screws, self.slats, self.bending, self.stiffness)
        across = np.abs(self.load @ share.T)
        out = np.maximum(self.load * self.arm, 0.0) @ share.T / self.lever
        out = np.maximum(out, 0.0)
        return uses(self.lateral, self.withdrawal, across, out) / self.time[:, None], across, out


@check(
    "strength",
    "Screws of the cleat hold what lies on it",
    source=(
        "NDS 2018, 12.2, 12.3 and 12.4.1, from memory; cleat as a beam on its screws, their slip: "
        "EN 1995-1-1, table 7.1, from memory"
    ),
    remedies=("cleat_screw_spacing", "cleat_screw", "cleat_stock", "frame_wood"),
)
def cleat_screws_hold(
    strength: Carried | Unjudged,
    pieces: Pieces,
    screw_points: tuple[ScrewPoint, ...],
    materials: Mapping[str, Material],
    shown_unit: ShownUnit,
    row_name: str,
) -> Finding | None:
    """Slats push a cleat down and, standing off the rail, prize it away: its screws hold both."""
    points = tuple(
        p for p in screw_points if p.rules[0] == f"{row_name}.cleat" and p.bite > p.screw.diameter
    )
    if not points or isinstance(strength, Unjudged):
        return None
    line = _line(strength, pieces, points, materials)
    screws = tuple(sorted(heads(pieces, points)[:, 1].tolist()))
    use, across, out = line.use(screws)
    case, worst = np.unravel_index(int(use.argmax()), use.shape)
    found = at_most(100 * float(use[case, worst]), 100.0, tight=10.0, unit="%")
    said = (
        f"The worst of {len(screws)} screws in the cleat bears {across[case, worst]:.0f} N down "
        f"and {out[case, worst]:.0f} N outwards, {called(strength.cases[case])}"
    )
    if found.margin >= 0:
        said += "; glue is not counted."
    elif line.glued <= 1:
        found = advice(found)
        said += f"; only glue holds it there.{_proposed(line, screws, shown_unit)}"
    else:
        said += f", and glue alone does not hold.{_proposed(line, screws, shown_unit)}"
    return replace(found, reason=said, pieces=(points[0].piece, points[0].into))


def _line(
    carried: Carried,
    pieces: Pieces,
    points: tuple[ScrewPoint, ...],
    materials: Mapping[str, Material],
) -> CleatLine:
    cleat, rail = points[0].piece, points[0].into
    rails = np.arange(len(pieces)) == rail
    joints = forces_between(carried, pieces, made_by(pieces, *DECK), rails)
    wood, behind = wood_of(pieces, cleat, materials), wood_of(pieces, rail, materials)
    _, high, deep = pieces.parts[pieces.part[cleat]].size
    screw, bite = points[0].screw, min(point.bite for point in points)
    light = wood_side(wood.specific_gravity)
    joint = ScrewJoint(
        shank=screw.diameter, side=screw.length - bite, side_bearing=light,
        main_gravity=behind.specific_gravity, bite=bite,
    )  # fmt: skip
    arm = _arm(pieces, cleat, rail, joints)
    return CleatLine(
        bending=wood.moe_mpa * deep * high**3 / 12,
        stiffness=slip_modulus((wood.density_kg_m3 * behind.density_kg_m3) ** 0.5, screw.diameter),
        lateral=design_screw_lateral(joint),
        withdrawal=drawn_out(points[0], bite, behind.specific_gravity, wood.specific_gravity),
        lever=_lever(pieces, points),
        slats=tuple(joints.at[:, 1].tolist()),
        arm=arm,
        load=joints.force[:, :, 2],
        time=lasting(carried.cases),
        glued=_glued(pieces, joints, (wood, behind), high, lasting(carried.cases), arm),
    )


def _glued(
    pieces: Pieces,
    joints: JointForces,
    woods: tuple[Allowed, Allowed],
    high: Mm,
    time: Floats,
    arm: Floats,
) -> float:
    """Share of what glue bears that the worst slat takes of it, over the slat's own width: shear,
    and pull across the grain where the cleat is prized off.
    """
    if not len(joints.one):
        return 0.0
    wide = pieces.parts[pieces.part[joints.one[0]]].size[1]
    load = np.maximum(joints.force[:, :, 2], 0.0) / time[:, None]
    sheared = 1.5 * load / (wide * high) / min(each.shear_mpa for each in woods)
    pulled = 6 * load * arm / (wide * high**2) / min(each.bending_across_mpa for each in woods)
    return float(np.maximum(sheared, pulled).max())


def _lever(pieces: Pieces, points: tuple[ScrewPoint, ...]) -> Mm:
    """From a cleat's lower edge, which is pressed on the rail, up to its screws."""
    low = pieces.bounds[0][points[0].piece, 2]
    return float(heads(pieces, points)[:, 2].min() - low)


def _arm(pieces: Pieces, cleat: int, rail: int, joints: JointForces) -> Floats:
    """How far from the rail's face each slat bears on the cleat."""
    low, high = (bound[:, 0] for bound in pieces.bounds)
    face = low[cleat] if low[rail] + high[rail] < low[cleat] + high[cleat] else high[cleat]
    return np.asarray(np.abs(joints.at[:, 0] - face))


def _proposed(line: CleatLine, screws: tuple[Mm, ...], unit: ShownUnit) -> str:
    """How many screws would do without glue, where these do not."""
    first, last = screws[0], screws[-1]

    def hold(count: int) -> bool:
        return bool(line.use(evenly(first, last, count))[0].max() <= 1)

    counts = range(len(screws) + 1, MORE_SCREWS * len(screws) + 1)
    count = counts[min(bisect_left(counts, True, key=hold), len(counts) - 1)]
    if len(screws) < 2 or not hold(count):
        return " More screws would not do: thicker or longer ones are needed."
    apart = (last - first) / (count - 1)
    step = INCH / 4 if unit == "inch" else 5.0
    return f" {count} screws, one every {show_length(step * (apart // step), unit)}, would do."
