"""Do the screws of bed-rail plates hold? Asked of the left and the right side."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

import numpy as np

from model.checks.record import Finding, Verdict, advice, at_most, check
from model.checks.strength.joint_forces import called, heads, lasting, uses, wood_of
from model.checks.strength.rail_ends import MOVE, RailEnds, in_use_and_moved, rail_ends, worst_of
from model.checks.strength.screw_lines import steel_to_wood
from model.materials import Connector, Material
from model.mechanics.fasteners.withdrawal import design_screw_withdrawal, threaded_in
from model.parts.pieces import Floats, Pieces
from model.solids.screwing import ScrewPoint
from model.structure.record import Carried, Case, Unjudged


@check(
    "strength",
    "Screws of the bed-rail plates hold",
    source="NDS 2018, 12.2.2, 12.3.1, 12.4.1 and end grain 12.5.2, from memory",
    remedies=("connector", "frame_wood", "frame_stock"),
)
def plate_screws_hold(
    strength: Carried | Unjudged,
    pieces: Pieces,
    screw_points: tuple[ScrewPoint, ...],
    materials: Mapping[str, Material],
    connector: Connector,
    row_name: str,
) -> Iterator[Finding]:
    """Leaning, sitting and pushing open the joint between side and post: screws are drawn."""
    if isinstance(strength, Unjudged) or not connector.is_plate:
        return
    ends = rail_ends(strength, pieces, row_name)
    if not len(ends.rail):
        return
    halves = [
        _half(pieces, points, materials, connector, ends, half)
        for half in ("rail", "post")
        if (points := _plate_screws(screw_points, f"{row_name}.{half}_plates"))
    ]
    time = lasting(strength.cases)[:, None]
    for of, title, others in in_use_and_moved(strength):
        worst = max(halves, key=lambda half: float((half.use / time)[~others[:, 0]].max()))
        case, joint = worst_of(worst.use / time, others)
        yield replace(
            worst.told(strength.cases[case], float(time[case, 0]), case, joint, is_moved=bool(of)),
            id=of.lstrip("_"), title=f"Screws of the bed-rail plates hold{title}",
        )  # fmt: skip


def _plate_screws(points: tuple[ScrewPoint, ...], rule: str) -> tuple[ScrewPoint, ...]:
    return tuple(p for p in points if p.rules[0] == rule and p.bite > p.screw.diameter)


@dataclass(frozen=True, kw_only=True)
class Half:
    """One half of the plates: (c, j) what the worst screw of each bears, N, and what share of what
    it may for ten years that is, were it in long grain.
    """

    name: str
    pieces: tuple[int, int]
    in_end_grain: bool
    across: Floats
    drawn: Floats
    use: Floats

    def told(self, case: Case, time: float, at: int, joint: int, *, is_moved: bool) -> Finding:
        """What is found in a case at a joint; advice where the bed is moved."""
        value = 100 * float(self.use[at, joint]) / time
        found = at_most(value, 100.0, tight=10.0, unit="%")
        said = (
            f"A screw of a plate in the {self.name} bears {self.across[at, joint]:.0f} N sideways "
            f"and {self.drawn[at, joint]:.0f} N outwards, {called(case)}."
        )
        if self.in_end_grain:
            said += (
                " In end grain it may not be drawn at all: glue a dowel across the rail behind "
                "each screw, so that it bites long grain; that is what is reckoned here."
            )
            found = replace(found, verdict=max(found.verdict, Verdict.NOTE, key=_badness))
        if found.margin < 0 and is_moved:
            said += MOVE
        return replace(advice(found) if is_moved else found, reason=said, pieces=self.pieces)


def _badness(verdict: Verdict) -> int:
    return -list(Verdict).index(verdict)


def _half(
    pieces: Pieces,
    points: tuple[ScrewPoint, ...],
    materials: Mapping[str, Material],
    connector: Connector,
    ends: RailEnds,
    name: str,
) -> Half:
    """The plates let into the rails, or into the posts."""
    heights = _heights(pieces, points, ends)
    worst = min(points, key=lambda p: p.bite)
    screw, wood = worst.screw, wood_of(pieces, worst.into, materials).specific_gravity
    plate, in_end = connector.plate_thickness_mm, _is_end_grain(pieces, worst)
    lateral = steel_to_wood(
        screw.diameter, worst.bite, plate, wood, "ten years", in_end_grain=in_end
    )
    out = design_screw_withdrawal(wood, screw.diameter, threaded_in(worst.bite, screw.length))
    across = ends.down / heights.shape[1]
    drawn = ends.drawn(heights).max(axis=2)
    return Half(
        name=name, pieces=(worst.piece, worst.into), in_end_grain=in_end, across=across,
        drawn=drawn, use=uses(lateral, out, across, drawn),
    )  # fmt: skip


def _heights(pieces: Pieces, points: tuple[ScrewPoint, ...], ends: RailEnds) -> Floats:
    """(j, s): how high above the floor the screws of the plate at each joint sit."""
    first = tuple(p for p in points if p.piece == points[0].piece)
    z = heads(pieces, first)[:, 2]
    plate = np.array([bound[first[0].piece, 2] for bound in pieces.bounds]).mean()
    return np.asarray(ends.z[:, None] + (z - plate)[None])


def _is_end_grain(pieces: Pieces, point: ScrewPoint) -> bool:
    """Whether a screw runs along the grain of the wood that holds its point."""
    along = pieces.matrices[point.into][:3, 0]
    way = pieces.matrices[point.piece][:3, :3] @ np.array(point.screw.toward)
    return bool(abs(float(along @ way)) > 0.7)
