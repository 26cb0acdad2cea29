"""What each kind of cut and hole is called at the machines, where it is made, and in what order.

The order is the trade's: what needs square faces and full edges first, what takes them away last;
a mortise before its tenon, a groove before its tongue, for the second is fitted to the first.
Source: common practice, no source.
"""

from __future__ import annotations

from typing import NamedTuple

from model.part import Face, Point
from model.shop.order.jobs import HAIR, Job


class Operation(NamedTuple):
    """A heading of the work order, and its place in the order."""

    key: str
    title: str
    machine: str
    rank: int


DADO_SET = "table saw with a dado set, or router table"
STOPPED = "router table with stops, or plunge router with a fence"
GAUGE = "table saw with a dado set and mitre gauge"
PRESS = "drill press with a fence and a stop"
END_DRILL = "hand drill with a guide, or doweling jig"

_ROWS: tuple[tuple[str, str, str, str], ...] = (
    ("groove", "groove", "Grooves", DADO_SET),
    ("rabbet", "rabbet", "Rabbets", DADO_SET),
    ("dado", "dado", "Dadoes", GAUGE),
    ("mortise", "mortise", "Mortises", "mortiser, or plunge router with a fence"),
    ("tenon cheek", "tenon", "Tenons", GAUGE),
    ("tenon shoulder", "tenon", "Tenons", GAUGE),
    ("tongue rabbet", "tongue", "Tongues", DADO_SET),
    ("dovetail allowance", "dovetail", "Dovetails", "dovetail jig, or saw and chisel"),
    ("plate recess", "recess", "Recesses for bed plates", "router with a template, and a chisel"),
    ("hook pocket", "pocket", "Pockets behind bed plates", "router with a template, or chisel"),
    ("pocket hole", "pocket hole", "Pocket holes", "pocket hole jig, clamped"),
    ("dowel hole", "dowel hole", "Dowel holes", PRESS),
    ("counterbore", "counterbore", "Counterbores", PRESS),
    ("nut hole", "nut hole", "Holes for barrel nuts", PRESS),
    ("bolt hole", "bolt hole", "Bolt holes", PRESS),
    ("shank hole", "shank hole", "Shank holes", PRESS),
    ("pull hole", "pull hole", "Holes for pulls", PRESS),
    ("pilot hole", "pilot hole", "Pilot holes", PRESS),
    ("vent", "vent", "Vents", "drill press or hand drill, on a waste board"),
    ("hand hole", "hand hole", "Hand holes", "drill and jigsaw, then a round-over bit"),
)
KNOWN = {kind: Operation(key, title, at, n) for n, (kind, key, title, at) in enumerate(_ROWS)}
TAPER = Operation("taper", "Tapers", "table saw with a taper jig, or bandsaw", len(_ROWS) + 1)


def operation(job: Job, size: Point) -> Operation:
    """Where a cut or hole of a part belongs; `size` is the part's.

    What nobody has named yet goes after the rest.
    """
    found = KNOWN.get(job.kind)
    if found is None:
        return Operation(job.kind, job.kind.capitalize(), "as suits the shop", len(_ROWS))
    if found.machine == PRESS and job.spot.face in (Face.NEAR, Face.FAR):
        return found._replace(machine=END_DRILL)
    if found.machine in (DADO_SET, GAUGE) and not _is_through(job, size):
        return found._replace(machine=STOPPED)
    return found


def runs_along(job: Job, size: Point) -> bool:
    """Whether a cut runs along the grain from end to end, so that it can be made while the part is
    still too long.
    """
    return job.way == "slot" and job.spot.end.axis == 0 and _is_through(job, size)


def _is_through(job: Job, size: Point) -> bool:
    """Whether a cut runs from end to end: what stops inside is never made over a saw blade."""
    return job.spot.start <= HAIR and job.spot.stop >= size[job.spot.end.axis] - HAIR
