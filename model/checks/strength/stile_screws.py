"""Do the pocket screws of a face frame hold its stiles to its rails? Asked of every row."""

from collections.abc import Iterator, Mapping
from dataclasses import replace

import numpy as np

from model.checks.record import Finding, advice, at_most, check
from model.checks.strength.joint_forces import (
    called,
    forces_between,
    lasting,
    made_by,
    uses,
)
from model.checks.strength.rail_ends import MOVE, in_use_and_moved
from model.checks.strength.screw_lines import evenly
from model.checks.strength.stile_ends import Asked, StileEnd, stile_ends
from model.joints.pocket import POCKET_INSET
from model.materials import Material
from model.parts.pieces import Floats, Pieces
from model.solids.screwing import ScrewPoint
from model.structure.record import Carried, Unjudged
from model.units import Newton

RAILS = ("top_rail", "bottom_rail", "end_rail")


MOST_SCREWS = 4


@check(
    "strength",
    "Pocket screws hold the stiles to their rails",
    source=(
        "NDS 2018, 12.2.2, 12.3.1, 12.4.1 and end grain 12.5.2, from memory; glued end grain is "
        "not counted: Wood Handbook 2021, chapter 10"
    ),
    remedies=("frame_joint", "frame_stock", "frame_wood", "end_stile_least", "mid_stile"),
)
def pocket_screws_hold(
    strength: Carried | Unjudged,
    pieces: Pieces,
    screw_points: tuple[ScrewPoint, ...],
    materials: Mapping[str, Material],
    row_name: str,
) -> Iterator[Finding]:
    """A face frame racks as the bed is sat on, pushed and dragged: screws hold its corners."""
    points = [
        p for p in screw_points
        if p.rules[0] == f"{row_name}.stiles" and p.screw.kind == "pocket screw"
        and p.bite > p.screw.diameter
    ]  # fmt: skip
    if not points or isinstance(strength, Unjudged):
        return
    stiles, rails = made_by(pieces, f"{row_name}.stiles"), made_by(pieces, *RAILS)
    joints = forces_between(strength, pieces, stiles, rails)
    ends, asked = stile_ends(joints, pieces, points, materials)
    if not ends:
        return
    time = lasting(strength.cases)
    count, width, share, lateral, drawn = np.array(
        [(len(e.spots), e.width, e.share, e.lateral, e.withdrawal) for e in ends]
    ).T
    forces = asked.on_screws(count, width, share)
    use = uses(lateral, drawn, *forces) / time[:, None]
    for _, title, others in in_use_and_moved(strength):
        is_moved = bool(title)
        only = np.where(others, 0.0, use)
        case, worst = divmod(int(only.argmax()), len(ends))
        found = at_most(100 * float(only[case, worst]), 100.0, tight=10.0, unit="%")
        enough = (
            None
            if is_moved or found.margin >= 0
            else _enough(ends[worst], asked, worst, np.where(others[:, 0], np.inf, time))
        )
        said = _said(ends[worst], pieces, *(float(each[case, worst]) for each in forces))
        said = f"{said}, {called(strength.cases[case])}."
        yield _told(found, ends[worst], said, enough, is_moved)


def _said(end: StileEnd, pieces: Pieces, across: Newton, drawn: Newton) -> str:
    screws = (
        f"Each of {len(end.spots)} pocket screws" if len(end.spots) > 1 else "The one pocket screw"
    )
    stile, rail = (pieces.labels[each] for each in end.pieces)
    return (
        f"{screws} between {stile} and {rail} bears {across:.0f} N sideways and {drawn:.0f} N "
        "outwards"
    )


def _told(found: Finding, end: StileEnd, said: str, enough: int | None, is_moved: bool) -> Finding:
    """What is found at the worst end; of a bed that is moved it is advice."""
    said += f" {enough} at each end would do." if enough else ""
    if not is_moved:
        return replace(found, reason=said, pieces=end.pieces)
    return replace(
        advice(found),
        id="moved",
        title="Pocket screws of the stiles as the bed is moved",
        reason=said + (MOVE if found.margin < 0 else ""),
        pieces=end.pieces,
    )


def _enough(end: StileEnd, asked: Asked, at: int, time: Floats) -> int | None:
    """The least number of screws, spread over the stile's width, that would do."""
    only = Asked(*(each[:, at : at + 1] for each in asked))
    first, last = POCKET_INSET, end.width - POCKET_INSET
    for count in range(len(end.spots) + 1, MOST_SCREWS + 1):
        more = end._replace(spots=evenly(first, last, count))
        figures = (np.array([each]) for each in (float(count), more.width, more.share))
        use = uses(end.lateral, end.withdrawal, *only.on_screws(*figures))
        if (use <= time[:, None]).all():
            return count
    return None
