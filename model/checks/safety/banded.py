"""How a gap is judged by published probes: for whom they bind, and when they count here."""

from __future__ import annotations

import math
from collections.abc import Iterable

from model.brief.loads import SleepersAre
from model.checks.record import Finding, Verdict
from model.materials.probe import Probe, ProbeAt, probes_at
from model.units import Mm


def banded(gap: Mm, at: ProbeAt, sleepers_are: SleepersAre, said: str = "the gap") -> Finding:
    """Judge a gap by every published rule for its kind.

    What a rule forbids fails where it counts for these sleepers, and is a note where it binds other
    beds only. `said` names the gap in the sentence.
    """
    caught = [probe for probe in probes_at(at) if probe.catches(gap)]
    counting = [probe for probe in caught if sleepers_are in probe.counts_for]
    for probe in counting or caught:
        verdict = Verdict.FAILS if counting else Verdict.NOTE
        return _forbidden(gap, probe, verdict, _sentence(gap, probe, sleepers_are, said))
    return _free(gap, probes_at(at))


def worst_banded(
    gaps: Iterable[Mm], at: ProbeAt, sleepers_are: SleepersAre, said: str = "the gap"
) -> Finding | None:
    """What is said of the worst of several gaps; None of none."""
    found = [banded(gap, at, sleepers_are, said) for gap in gaps]
    return worst(found, at) if found else None


def worst(found: Iterable[Finding], at: ProbeAt) -> Finding:
    """The worst of several findings by verdict, then by rule, then by margin."""
    rank = {probe.source: k for k, probe in enumerate(probes_at(at))}
    order = list(Verdict)
    return min(found, key=lambda f: (order.index(f.verdict), rank[f.source], f.margin))


def _forbidden(gap: Mm, probe: Probe, verdict: Verdict, reason: str) -> Finding:
    limit = probe.low_mm if gap - probe.low_mm <= probe.top - gap else probe.top
    return Finding(
        value=gap, limit=limit, margin=-abs(gap - limit), verdict=verdict, reason=reason,
        source=probe.source,
    )  # fmt: skip


def _free(gap: Mm, rules: Iterable[Probe]) -> Finding:
    """The nearest end of any band is the limit that is shown."""
    ends = [(abs(e - gap), e, rule.source) for rule in rules for e in (rule.low_mm, rule.top)]
    margin, limit, source = min(each for each in ends if math.isfinite(each[1]))
    return Finding(value=gap, limit=limit, margin=margin, verdict=Verdict.HOLDS, source=source)


def _sentence(gap: Mm, probe: Probe, sleepers_are: SleepersAre, said: str) -> str:
    start = f"At {round(gap, 1):g} mm, {said} can catch {probe.holds}: {probe.standard}. "
    binds = f"That rule binds {probe.binds}"
    if sleepers_are in probe.counts_for:
        return f"{start}{binds}, but with {sleepers_are} in the bed it counts here."
    return f"{start}{binds}: no limit here, unless {' or '.join(probe.counts_for)} uses the bed."
