"""What would mend one check of a bed, or all that do not hold."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import NamedTuple

from model.bed import Bed
from model.checks.record import Finding, Verdict
from model.improve.beds import Beds
from model.improve.record import Improvement
from model.improve.search import SOLVES, Search, never

ALL_SOLVES = 400  # beds that are built for all findings of a bed together, at most
NOTHING = "No single change was found that makes this hold."
NOT_LOOKED = "Mend the checks above first; what would make this one hold was not looked for."


def improvement(
    bed: Bed, finding: Finding, stop: Callable[[], bool] = never, solves: int = SOLVES
) -> Improvement | None:
    """The smallest single change that makes a failed or tight check hold; None: none was found.

    The choices that the check names as its remedies come first, then those it hangs on. A change
    that makes another check worse is taken only where no other was found. `stop` is asked before
    every bed that is built; Stopped is raised once it says yes.
    """
    return Search(Beds(bed), finding, stop, solves).answer()


class Answer(NamedTuple):
    """What would mend a finding, and how many beds were built to find out: 0 where the bound on
    all findings together was reached before.
    """

    finding: Finding
    improvement: Improvement | None
    spent: int

    @property
    def sentence(self) -> str:
        """What is told where no change is offered; "" where one is."""
        if self.improvement is not None:
            return ""
        return NOTHING if self.spent else NOT_LOOKED


def improvements(bed: Bed, stop: Callable[[], bool] = never) -> Iterator[Answer]:
    """An answer for every failed or tight finding, the worst first, as far as the bound on all of
    them goes.
    """
    left, beds = ALL_SOLVES, Beds(bed)
    for finding in bed.findings:
        if finding.verdict not in (Verdict.FAILS, Verdict.TIGHT):
            continue
        search = Search(beds, finding, stop, min(SOLVES, left))
        found = search.answer()
        left -= search.spent
        yield Answer(finding, found, search.spent)
