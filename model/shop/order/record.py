"""The work order: what is done at the machines, batch by batch, each setting made once.

Lengths are mm; sentences already hold them in the unit that the maker reads.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from typing import Literal, NamedTuple

from model.part import Face
from model.units import Mm

Stage = Literal["mill", "glue", "trim", "sheets", "joinery", "finish"]
Way = Literal[
    "saw", "joint", "plane", "width", "glue", "length",
    "slot", "hole", "pocket", "taper", "ease", "sand",
]  # fmt: skip

STAGES: dict[Stage, str] = {
    "mill": "Boards: cut rough and mill",
    "glue": "Glue up",
    "trim": "Trim to size",
    "sheets": "Sheets",
    "joinery": "Joints and holes",
    "finish": "Edges and sanding",
}


class Distance(NamedTuple):
    """One figure that a machine, a fence or a stop is set to."""

    what: str
    size: Mm


class Spot(NamedTuple):
    """Where one part takes one cut or hole of a batch.

    It is made in `face`; the face, edge or end `against` lies at the fence (or stop), and `start`
    and `stop` are measured along the fence from `end`, both alike for a hole. `feature` is the
    place of the cut or hole among the mark's features; `also` that of a second one that the same
    bit makes.
    """

    face: Face
    against: Face
    end: Face
    start: Mm
    stop: Mm
    feature: int
    also: int | None = None


@dataclass(frozen=True, kw_only=True)
class Line:
    """What one mark (or one board or sheet) has done to it in a batch: a line with a box to tick.

    `key` stays the same while what is done stays the same, whatever the mark is then called.
    `quantity` counts pieces, `spots` are in each of them. A saw cut of a plan has no mark of its
    own: `frees` names the pieces that it leaves ready.
    """

    key: str
    name: str
    quantity: int = 1
    mark: str = ""
    spots: tuple[Spot, ...] = ()
    detail: str = ""
    frees: tuple[str, ...] = ()

    @property
    def times(self) -> int:
        """How often the cut is made, over all pieces."""
        return self.quantity * max(1, len(self.spots))


@dataclass(frozen=True, kw_only=True)
class Batch:
    """One setting of one machine, and all that is done while it stands.

    `way` tells how to read the `distances` and the lines' spots. `setting` is a sentence, `before`
    what to do first (a test cut, a measure), `aids` stops and spacers, `cautions` what can hurt.
    `key` is made of the operation and its figures.
    """

    key: str
    stage: Stage
    machine: str
    operation: str
    way: Way
    lines: tuple[Line, ...]
    distances: tuple[Distance, ...] = ()
    setting: str = ""
    before: tuple[str, ...] = ()
    aids: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()

    def figure(self, what: str) -> Mm:
        """The distance of that name."""
        return next(each.size for each in self.distances if each.what == what)

    def has(self, what: str) -> bool:
        """Whether that distance belongs to the setting."""
        return any(each.what == what for each in self.distances)


@dataclass(frozen=True, kw_only=True)
class WorkOrder:
    """All batches in the order of the trade; `aids` are made first, `cautions` hold throughout.
    `notes` tell what is to know of the boards and sheets; `missing` tells what is in no cutting
    plan, and why.
    """

    name: str
    unit: str
    batches: tuple[Batch, ...]
    aids: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()
    missing: tuple[str, ...] = ()
    notes: tuple[str, ...] = ()

    @property
    def lines(self) -> Iterator[Line]:
        """Every line to tick, in order."""
        return (line for batch in self.batches for line in batch.lines)

    @cached_property
    def keys(self) -> frozenset[str]:
        """The keys of all lines."""
        return frozenset(line.key for line in self.lines)

    def of(self, mark: str) -> tuple[tuple[Batch, Line], ...]:
        """What is done to one mark, in order."""
        pairs = ((batch, line) for batch in self.batches for line in batch.lines)
        return tuple((batch, line) for batch, line in pairs if line.mark == mark)
