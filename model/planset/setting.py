"""What every page of one set goes by: the bed, the paper, and how sizes are told."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import cached_property

from model.bed import Bed
from model.building.record import Step
from model.building.steps import build_steps
from model.drawings.part_sheet.facts import assembly_of
from model.parts.marks import Mark
from model.planset.page import PAPERS, Paper
from model.planset.sheet import Sheet
from model.units import Mm, show_length

OTHER = {"inch": "mm", "mm": "inch"}


@dataclass(frozen=True, kw_only=True, eq=False)
class Setting:
    """A bed as its plan set tells it; `listed` gives all its pages, for the list of them. Each set
    is one of its own: `kept` holds what is worked out for it. A page that is wanted before all
    marks have found theirs takes what shares a page from the set `before`.
    """

    bed: Bed
    listed: Callable[[], Sequence[Sheet]] = tuple
    before: Setting | None = None

    @property
    def steps(self) -> tuple[Step, ...]:
        """The build steps."""
        return self.bed.once(build_steps)

    @property
    def paper(self) -> Paper:
        """The paper that all pages are laid out for."""
        return PAPERS[self.bed.design.value("paper")]

    @property
    def is_first_angle(self) -> bool:
        """Whether views stand as in Europe: that from the left at the right."""
        return bool(self.bed.design.value("views_stand") == "first angle")

    @cached_property
    def unit(self) -> str:
        """The unit that sizes are told in first: `inch` or `mm`."""
        return str(self.bed.design.value("shown_unit"))

    @property
    def tells_both(self) -> bool:
        """Whether sizes are told in mm and inches."""
        return bool(self.bed.design.value("sizes_in") == "mm and inches")

    def assembly(self, mark: Mark) -> str:
        """The assembly that a mark belongs to, as its own page tells it."""
        return assembly_of(self.bed, mark)

    def size(self, mm: Mm) -> str:
        """A size as the set tells it: `27 3/8"`, or `27 3/8" [695.3 mm]`."""
        told = show_length(mm, self.unit)
        return f"{told} [{show_length(mm, OTHER[self.unit])}]" if self.tells_both else told

    @property
    def note(self) -> str:
        """The units, for the foot of every page."""
        units = "inches" if self.unit == "inch" else "mm"
        if self.tells_both:
            units = "inches [mm]" if self.unit == "inch" else "mm [inches]"
        return f"sizes in {units}"
