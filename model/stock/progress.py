"""How far the work is: the plans in use, and what is cut, bought and done. Kept in the design."""

from __future__ import annotations

from dataclasses import dataclass, field

from model.cutting.record import Plan
from model.units import Mm


@dataclass(frozen=True, kw_only=True)
class CutPart:
    """A piece that is cut, as it was drawn when it was ticked: `mark` and `piece` as the plan calls
    it (a layer is `H1/1`), `name` that of the part (`top rail`), its material's key, and its
    finished size.

    `rough_length`, `rough_width` and `rough_thickness` are its size as long as it is as sawn; 0
    once it is milled, and for sheet parts. `steps` are the keys of the steps of the work order that
    were done to it since, `work` a digest of what they cut into it (empty: nothing yet). `cut` is
    the key of the cut that freed it, empty for one that was recut from another part.
    """

    mark: str
    piece: int
    name: str
    material: str
    length: Mm
    width: Mm
    thickness: Mm
    rough_length: Mm = 0.0
    rough_width: Mm = 0.0
    rough_thickness: Mm = 0.0
    steps: tuple[str, ...] = ()
    work: str = ""
    cut: str = ""


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

    def plan_of(self, name: str) -> Plan | None:
        """The stored plan of the task of that name, or None."""
        return next((plan for plan in self.plans if plan.task.name == name), None)


NOT_BEGUN = Progress()
