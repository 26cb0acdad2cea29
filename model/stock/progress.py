"""How far the work is: the plans in use, and what is cut, bought and done. Kept in the design."""

from __future__ import annotations

from dataclasses import dataclass, field

from model.cutting.record import Plan
from model.units import Mm


@dataclass(frozen=True, kw_only=True)
class CutPart:
    """A piece that is cut, as it was when it was ticked: finished size, what joints did to it
    (`work`, a digest), and its material's key. `name` is that of the part (`top rail`).
    """

    mark: str
    piece: int
    name: str
    material: str
    length: Mm
    width: Mm
    thickness: Mm
    work: str = ""


@dataclass(frozen=True, kw_only=True)
class Progress:
    """`plans` are the stored plans, by the name of their task; empty while none is accepted.

    `cuts_done` hold `task name/layout number/cut number`, `bought` keys of the buying list,
    `steps_done` keys of the work order, `parts` the pieces that are cut.
    """

    plans: tuple[Plan, ...] = ()
    cuts_done: frozenset[str] = field(default_factory=frozenset)
    bought: frozenset[str] = field(default_factory=frozenset)
    steps_done: frozenset[str] = field(default_factory=frozenset)
    parts: tuple[CutPart, ...] = ()


NOT_BEGUN = Progress()
