"""Do screws, bolts, nuts and dowels keep clear of each other inside the wood?"""

from collections.abc import Iterator
from dataclasses import replace
from functools import lru_cache

import numpy as np

from model.checks.record import Finding, Verdict, advice, at_least, check
from model.mechanics.fasteners.spacing import wood_between
from model.parts.pieces import Floats, Pieces
from model.solids.shanks import REACH, Meeting, Shank, meetings
from model.units import Mm

BETWEEN_BORES: Mm = 3.0  # 1/8 in of wood between two bores; common practice, no source
DOWEL = "dowel hole"
STEEL = 0.5  # share of the wood that is asked with which two drills still pass; from memory
REMEDIES = ("bearer_fixing", "connector", "frame_joint", "end_joint", "cleat_screw", "slat_fixing")


@check("fit", "Screws stand clear of each other", remedies=REMEDIES)
def fasteners_stand_clear(pieces: Pieces) -> Iterator[Finding]:
    """A screw that meets another one, a bolt or a nut inside the wood cannot be driven."""
    worst: dict[tuple[str, str], Meeting] = {}
    for met in sorted(meetings(pieces), key=_margin):
        worst.setdefault(_key(met), met)
    for met in worst.values():
        yield _finding(met)
    if not worst:
        nothing = at_least(REACH, BETWEEN_BORES)
        yield replace(nothing, reason=f"No two come nearer to each other than {REACH:g} mm.")


def _key(met: Meeting) -> tuple[str, str]:
    one, other = (_slug(each.part.name, each.kind, each.is_screw) for each in met[:2])
    return (one, other) if one <= other else (other, one)


@lru_cache(maxsize=256)
def _slug(name: str, kind: str, is_screw: bool) -> str:
    return f"{name} {'screw' if is_screw else kind}".replace(",", "").replace(" ", "_")


def _limit(met: Meeting) -> Mm:
    """One diameter of the thicker screw; between two bores, a wall."""
    shanks = [each.diameter for each in (met.one, met.other) if each.is_screw]
    return wood_between(shanks[0], shanks[-1]) if shanks else BETWEEN_BORES


def _margin(met: Meeting) -> Mm:
    return met.gap - _limit(met)


def _finding(met: Meeting) -> Finding:
    """Too near fails; a little less than is asked is said, and so is a dowel, which is wood: once
    it is glued in, a screw or another dowel may go through it.
    """
    found = at_least(met.gap, _limit(met))
    has_dowel = any(each.kind == DOWEL for each in met[:2])
    is_dowel = has_dowel and all(each.is_screw or each.kind == DOWEL for each in met[:2])
    if is_dowel or met.gap >= STEEL * found.limit:
        found = advice(found)
    one, other = (_called(shank) for shank in sorted(met[:2], key=lambda each: not each.is_screw))
    if met.gap < 0:
        said = f"{one[0].upper()}{one[1:]} meets {other} inside the wood."
    else:
        said = f"{met.gap:.1f} mm of wood stay between {one} and {other}."
    if found.verdict is not Verdict.HOLDS and is_dowel:
        said += " Let the glue of the dowels set before anything is bored or driven there."
    elif found.verdict is not Verdict.HOLDS:
        said += f" {found.limit:.1f} mm are good practice."
    return replace(
        found, id="_and_".join(_key(met)), reason=said, pieces=tuple(sorted(set(met.pieces)))
    )


def _called(shank: Shank) -> str:
    words, _, gauge = shank.kind.rpartition(" ")
    if not shank.is_screw:
        return f"a {shank.kind} in the {shank.part.name}"
    kind = f"No. {gauge} {words}" if gauge.isdigit() else shank.kind
    return f"a {kind} of the {shank.part.name}"


@check("fit", "Brackets leave the nuts' holes free", remedies=("bearer_fixing", "connector"))
def nuts_are_reached(pieces: Pieces) -> Finding | None:
    """A nut goes in, and is turned to meet its bolt, through a hole that nothing may cover."""
    plates = np.array([part.material == "metal" for part in pieces.parts])[pieces.part]
    boxes = np.flatnonzero(plates[pieces.piece])
    mouths = list(_nut_holes(pieces))
    if not mouths or not len(boxes):
        return None
    at = np.array([mouth for _, mouth, _ in mouths])[:, None]
    off = np.maximum(np.maximum(pieces.lo[boxes] - at, at - pieces.hi[boxes]), 0.0)
    room = np.linalg.norm(off, axis=2) - np.array([[radius] for _, _, radius in mouths])
    hole, box = divmod(int(room.argmin()), len(boxes))
    found = at_least(float(room[hole, box]), 0.0)
    plate = int(pieces.piece[boxes[box]])
    name = pieces.parts[pieces.part[plate]].name
    far = f"{found.value:.0f} mm from" if found.margin >= 0 else "over"
    said = f"The nearest {name} lies {far} the hole of a nut."
    return replace(found, reason=said, pieces=tuple(sorted((mouths[hole][0], plate))))


def _nut_holes(pieces: Pieces) -> Iterator[tuple[int, Floats, Mm]]:
    """Pieces with holes for nuts: where each hole begins, on the bed's axes, and its radius."""
    for piece in range(len(pieces)):
        for hole in pieces.form(piece).holes:
            if hole.kind == "nut hole":
                matrix = pieces.matrices[piece]
                yield piece, matrix[:3, :3] @ np.array(hole.at) + matrix[:3, 3], hole.diameter / 2
