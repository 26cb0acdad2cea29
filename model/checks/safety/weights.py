"""Can two people carry it, and does the floor bear it?"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import replace

from model.checks.record import Finding, advice, at_most, check
from model.dimensions.drawer_load import GRAVITY
from model.materials import Material
from model.parts.pieces import Floats, Pieces
from model.solids.carried import Assembly
from model.units import Count, Kg, Mm

# One person, the best of grips. Source: NIOSH lifting equation: 51 lb (23 kg), less for awkward
# lifts. Two carry about twice as much: common practice, no source.
ONE: Kg = 23.0
TWO: Kg = 46.0
LONG: Mm = 1800.0  # what is longer is carried by two; common practice, no source
_MANY = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten")
NIOSH = (
    "NIOSH lifting equation: 51 lb (23 kg) in the best of grips; two about twice: common practice"
)

# Source: IRC table R301.5, sleeping rooms: 30 lb/ft2; from memory.
FLOOR_KPA = 1.44
# Source: EN 1991-1-1 table 6.2, floors of homes: 2 kN on one spot; from memory.
SPOT_KN = 2.0
POSTS = 4

SHEET: tuple[Mm, Mm] = (2440.0, 1220.0)  # a whole sheet; common practice, no source


def lifters(kg: Kg, longest: Mm = 0.0) -> Count:
    """How many lift it clear: each bears what one person may, and two carry what is long.

    Source: as for `ONE`; more than two share it alike: common practice, no source.
    """
    return max(1 if longest <= LONG else 2, math.ceil(kg / ONE - 1e-9))


def many(count: Count) -> str:
    """A number of people in words."""
    return _MANY[count] if count < len(_MANY) else str(count)


@check("safety", "Weight of everything else that is carried", source=NIOSH)
def lifting(carried: tuple[Assembly, ...]) -> tuple[Finding, ...]:
    """Nothing else is too heavy for one person who can grip it well."""
    heavy = [each for each in carried if each.kg > ONE]
    found = [_heavy(each) for each in heavy]
    rest = max((each.kg for each in carried if each.kg <= ONE), default=None)
    if rest is not None:
        title = "" if heavy else "Weight of everything that is carried"
        found.append(replace(at_most(rest, ONE, unit="kg"), id="rest", title=title))
    return tuple(found)


def _heavy(assembly: Assembly) -> Finding:
    """Over one person's load it is a note; over two people's it fails, but for a mattress."""
    which = assembly.called
    if assembly.kg <= TWO or assembly.is_mattress:
        found = advice(at_most(assembly.kg, ONE, unit="kg"))
        reason = f"It takes two to carry {which}."
        if assembly.kg > TWO:
            clear = many(lifters(assembly.kg))
            reason = f"Two slide {which} on its edge; to lift it clear takes {clear}."
    else:
        found = at_most(assembly.kg, TWO, unit="kg")
        reason = (
            f"Two people cannot carry {which} well: a lighter wood, or a joint that comes apart."
        )
    return replace(
        found, id=assembly.key, title=f"Weight of {which}",
        reason=reason, pieces=assembly.pieces,
    )  # fmt: skip


@check(
    "safety",
    "Weight of a whole sheet",
    source="density and nominal thickness of 2440 by 1220 mm; NIOSH lifting equation: 23 kg",
)
def whole_sheets(pieces: Pieces, materials: Mapping[str, Material]) -> Finding | None:
    """A sheet over one person's load is broken down first, or lifted onto the saw by two."""
    used = {part.material for part in pieces.parts}
    weights = {
        row.name: row.nominal_mm * row.density_kg_m3 * SHEET[0] * SHEET[1] / 1e9
        for row in (materials[key] for key in used if key in materials)
        if row.nominal_mm is not None
    }
    if not weights:
        return None
    name = max(weights, key=lambda name: (weights[name], name))
    found = advice(at_most(weights[name], ONE, unit="kg"))
    if found.margin >= 0:
        return replace(found, reason="One person can lift every whole sheet of this bed.")
    name = name.replace(" mm", "\u00a0mm")  # a name, and no length to be shown in inches
    with_all = many(lifters(found.value))
    reason = f"Break a whole sheet ({name}) down first, or {with_all} lift it onto the saw."
    return replace(found, reason=reason)


@check(
    "safety",
    "The floor bears the full bed",
    about="bed_width",
    source="IRC table R301.5, sleeping rooms: 30 lb/ft2 (1.44 kPa); from memory",
)
def floor_bears(
    weights: Floats,
    bed_width: Mm,
    bed_length: Mm,
    all_sleepers: Kg,
    all_contents: Kg,
) -> tuple[Finding, ...]:
    """Bed, mattress, sleepers and full drawers weigh on the floor they cover."""
    bed = float(weights.sum())
    force = (bed + all_sleepers + all_contents) * GRAVITY / 1000  # kN
    spread = advice(at_most(force / (bed_width * bed_length / 1e6), FLOOR_KPA, unit="kPa"))
    spot = advice(at_most(force / POSTS, SPOT_KN, unit="kN"))
    told = f"Bed and mattress weigh {bed:.0f} kg, with sleepers and full drawers"
    told += f" {force * 1000 / GRAVITY:.0f} kg"
    return (
        replace(
            spread,
            reason=f"{told}. Houses are reckoned with 1.44 kPa all over the room, so that free "
            "floor beside the bed makes up for a little more; ask about an old floor.",
        ),
        replace(
            spot, id="spot", title="No foot presses too hard on one spot",
            reason=f"{told}. Each of four posts would press so hard if no leg helped them.",
            source="EN 1991-1-1 table 6.2: 2 kN on one spot; from memory",
        ),
    )  # fmt: skip
