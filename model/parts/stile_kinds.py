"""Which stiles a face frame has. Read for left, right and foot."""

from __future__ import annotations

from dataclasses import dataclass

from model.joints.work import Work
from model.part import Face
from model.rules import rule
from model.units import Count, Mm, Places, Spans

BOTH = (Face.LOWER, Face.UPPER)


@dataclass(frozen=True, kw_only=True)
class StileKind:
    """Stiles that are cut alike: name, width, where they begin along the run, which edges are
    grooved.
    """

    name: str
    width: Mm
    at: Places
    grooved: tuple[Face, ...] = ()
    connector_work: Work = Work()


StileKinds = tuple[StileKind, ...]


@rule
def stile_kinds(
    bays: Count,
    stile_spans: Spans,
    blind_bays: Places,
    closed_bays: Places,
    end_stile_least: Mm,
    first_end_stile: Mm,
    mid_stile: Mm,
    last_end_stile: Mm,
    stile_connector_near: Work,
    stile_connector_far: Work,
) -> StileKinds:
    """End stiles take the bed-rail connectors; stiles beside a panel are grooved for it."""
    if not bays:
        return ()
    starts = [a for a, _ in stile_spans]
    made = []
    nearest = stile_connector_near
    closed = bool(closed_bays)
    if blind_bays:
        made.append(
            StileKind(
                name="end stile", width=end_stile_least, at=(starts.pop(0),),
                grooved=(Face.UPPER,), connector_work=nearest,
            )
        )  # fmt: skip
        nearest = Work()
    first = ((Face.LOWER,) if blind_bays else ()) + ((Face.UPPER,) if closed else ())
    made.append(
        StileKind(
            name="end stile", width=first_end_stile, at=(starts[0],), grooved=first,
            connector_work=nearest,
        )
    )  # fmt: skip
    if bays > 1:
        made.append(
            StileKind(
                name="mid stile", width=mid_stile, at=tuple(starts[1:-1]),
                grooved=BOTH if closed else (),
            )
        )  # fmt: skip
    made.append(
        StileKind(
            name="end stile", width=last_end_stile, at=(starts[-1],),
            grooved=(Face.LOWER,) if closed else (), connector_work=stile_connector_far,
        )
    )  # fmt: skip
    return tuple(made)
