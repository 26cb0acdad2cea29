"""What each kind of cut and hole is called at the machines, where it is made, and in what order.

The order is the trade's: what needs square faces and full edges first, what takes them away last;
a mortise before its tenon, a groove before its tongue, for the second is fitted to the first.
Source: common practice, no source.
"""

from __future__ import annotations

from typing import NamedTuple

from model.part import Face
from model.shop.order.jobs import Job


class Operation(NamedTuple):
    """A heading of the work order, and its place in the order."""

    key: str
    title: str
    machine: str
    rank: int


DADO_SET = "table saw with a dado set, or router table"
ROUTER = "router table"
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
_KNOWN = {kind: Operation(key, title, at, n) for n, (kind, key, title, at) in enumerate(_ROWS)}
TAPER = Operation("taper", "Tapers", "table saw with a taper jig, or bandsaw", len(_ROWS) + 1)


def operation(job: Job) -> Operation:
    """Where a cut or hole belongs; one of a kind that nobody has named yet goes after the rest."""
    found = _KNOWN.get(job.kind)
    if found is None:
        return Operation(job.kind, job.kind.capitalize(), "as suits the shop", len(_ROWS))
    if found.machine == PRESS and job.spot.face in (Face.NEAR, Face.FAR):
        return found._replace(machine=END_DRILL)
    return found
