"""One finding of a bed: how the same check is read of another bed, and what it hangs on."""

from __future__ import annotations

from collections.abc import Iterable

from model.bed import Bed
from model.book import check_list
from model.brief.leeway import turnable
from model.checks.fit.screws import screw_findings
from model.checks.record import Finding
from model.checks.run import worst_first


class Check:
    """Reads one finding again and again, without asking all other checks."""

    def __init__(self, bed: Bed, finding: Finding) -> None:
        self.bed, self.finding = bed, finding
        self._step = check_list().step_of(finding.id)
        self._family = self._step.id if self._step else finding.id.rpartition(".")[0]
        self._before = {each.id for each in self._answers(bed)}

    def of(self, bed: Bed) -> Finding | None:
        """The same finding of another bed, else the worst of those that came in its place: the
        finding on a screw is called by its gauge.
        """
        said = worst_first(self._answers(bed))
        own = (self.finding.id, self.finding.place)
        new = (f for f in said if f.id not in self._before)
        return next((f for f in said if (f.id, f.place) == own), next(new, None))

    def _answers(self, bed: Bed) -> Iterable[Finding]:
        said = screw_findings(bed.proof.screws) if self._step is None else bed.asked(self._step)
        return [f for f in said if f.id == self._family or f.id.startswith(f"{self._family}.")]

    @property
    def hangs_on(self) -> tuple[str, ...]:
        """The choices that may be turned and on which the value or its pieces hang, the nearest
        first; not those that the check names as its remedies.
        """
        book = self.bed.dimensions.book
        needs = self._step.needs if self._step else ()
        made = (rule for p in self.finding.pieces for rule in self.bed.pieces.made_by(p))
        names: dict[str, None] = {}
        for name in (self.finding.about, *needs, *made):
            if name in book.kinds:
                names.update(dict.fromkeys((name, *book.roots(name))))
        return tuple(n for n in names if n in turnable() and n not in self.finding.remedies)
