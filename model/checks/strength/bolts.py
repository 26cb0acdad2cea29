"""Do the bolts of the sides and their nuts hold? Asked of the left and the right side."""

from collections.abc import Iterator, Mapping
from dataclasses import replace

import numpy as np

from model.checks.record import Finding, advice, at_most, check
from model.checks.strength.joint_forces import called, lasting
from model.checks.strength.rail_ends import MOVE, in_use_and_moved, rail_ends, worst_of
from model.materials import Connector, Material, StockGrade
from model.materials.row_allowable import allowed_of
from model.mechanics.fasteners.bolts import (
    design_nut_bearing,
    design_shear_out,
    design_single_shear,
)
from model.mechanics.fasteners.dowel_bearing import (
    bending_yield,
    dowel_bearing_across,
    dowel_bearing_along,
)
from model.mechanics.fasteners.lateral import END_GRAIN
from model.mechanics.fasteners.strengths import Design, DesignStress
from model.mechanics.fasteners.yield_modes import Shear
from model.parts.pieces import Pieces
from model.structure.record import Carried, Unjudged
from model.units import Mm


@check(
    "strength",
    "Bolts and nuts of the sides hold",
    source=(
        "NDS 2018, tables 12.3.1A and B, end grain 12.5.2, from memory; wood before the nut: "
        "1.5 V / A on two planes"
    ),
    remedies=("connector", "frame_stock", "frame_wood"),
)
def bolts_hold(
    strength: Carried | Unjudged,
    pieces: Pieces,
    materials: Mapping[str, Material],
    connector: Connector,
    bolt_length: Mm,
    frame_thickness: Mm,
    stock_grade: StockGrade,
    row_name: str,
) -> Iterator[Finding]:
    """A bolt pulls its nut against the rail's end grain; sideways it bears on wood as a dowel."""
    if isinstance(strength, Unjudged) or connector.is_plate:
        return
    ends = rail_ends(strength, pieces, row_name)
    if not len(ends.rail):
        return
    rail = allowed_of(_material(pieces, int(ends.rail[0]), materials), stock_grade.key)
    post = allowed_of(_material(pieces, int(ends.post[0]), materials), stock_grade.key)
    nut = _nut(connector, rail.specific_gravity, rail.shear_mpa, frame_thickness)
    side = _sideways(connector, rail.specific_gravity, post.specific_gravity, bolt_length)
    time = lasting(strength.cases)[:, None]
    asked = (
        ("pulled", np.maximum(ends.pull, 0.0), nut, "pulls its nut towards the rail's end"),
        ("sideways", ends.down, side, "is pushed across the rail's end"),
    )
    for of, title, others in in_use_and_moved(strength):
        for way, force, held, said in asked:
            case, joint = worst_of(force / time, others)
            limit = held * float(time[case, 0])
            found = at_most(float(force[case, joint]), limit, tight=limit / 10, unit="N")
            yield replace(
                advice(found) if of else found, id=f"{way}{of}",
                title=f"Bolts of the sides, {way}{title}",
                reason=(
                    f"A bolt {said} with {force[case, joint]:.0f} N, "
                    f"{called(strength.cases[case])}." + (MOVE if of and found.margin < 0 else "")
                ),
                pieces=(int(ends.rail[joint]), int(ends.post[joint])),
            )  # fmt: skip


def _material(pieces: Pieces, piece: int, materials: Mapping[str, Material]) -> Material:
    return materials[pieces.parts[pieces.part[piece]].material]


def _nut(connector: Connector, gravity: float, shear: float, thick: Mm) -> Design:
    """The lesser of what the wood bears under a nut, and before it out to the rail's end."""
    length = min(connector.nut_length_mm, thick)
    before = connector.nut_from_end_mm - connector.nut_diameter_mm / 2
    return min(
        design_nut_bearing(gravity, connector.nut_diameter_mm, length),
        design_shear_out(DesignStress(shear), before, length),
    )


def _sideways(connector: Connector, rail: float, post: float, length: Mm) -> Design:
    """A bolt in the end grain of a rail, pushed across it; along the grain of its post."""
    diameter = connector.bolt_diameter_mm
    in_rail = connector.nut_from_end_mm + connector.nut_diameter_mm / 2
    shear = Shear(
        diameter=diameter, bending_yield=bending_yield(diameter),
        main_bearing=dowel_bearing_across(rail, diameter), main_length=in_rail,
        side_bearing=dowel_bearing_along(post), side_length=max(length - in_rail, diameter),
    )  # fmt: skip
    return Design(END_GRAIN * design_single_shear(shear, 90.0))
