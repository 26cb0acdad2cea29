"""What a change that mends a check costs to find: beds built, and time, for each check.

Baseline of the same run: one bed solved with its checks. Run it with
`python3 tests/run.py tests/benchmarks/bench_improve.py -s`. Nothing here asserts a time.
"""

from __future__ import annotations

import statistics
import time
from collections import defaultdict
from typing import NamedTuple

from model.bed import Bed, Design, solve
from model.checks.record import Verdict
from model.errors import CannotBuild
from model.improve.answers import ALL_SOLVES
from model.improve.beds import Beds
from model.improve.search import SOLVES, Search
from tests.properties.designs import random_design

DESIGNS = 30


class Spent(NamedTuple):
    solves: int
    ms: float
    found: bool


def _ms(start: float) -> float:
    return 1000 * (time.perf_counter() - start)


def _one_bed() -> float:
    base, spent = solve(Design()), []
    for i in range(20):
        start = time.perf_counter()
        assert solve(Design().with_choices({"frame_stock": 26.0 + i / 4}), base).findings
        spent.append(_ms(start))
    return statistics.median(spent)


def _searches(bed: Bed) -> dict[str, list[Spent]]:
    found = defaultdict(list)
    for finding in bed.findings:
        if finding.verdict in (Verdict.FAILS, Verdict.TIGHT):
            search, start = Search(Beds(bed), finding), time.perf_counter()
            answer = search.answer()
            found[finding.title].append(Spent(search.spent, _ms(start), answer is not None))
    return found


def test_what_a_change_costs_to_find() -> None:
    one, by_title = _one_bed(), defaultdict(list)
    for seed in range(DESIGNS):
        try:
            bed = solve(random_design(seed))
        except CannotBuild:
            continue
        for title, spent in _searches(bed).items():
            by_title[title] += spent
    print(f"\nbaseline, one bed with its checks: {one:.1f} ms")
    print(f"bounds: {SOLVES} beds for a finding, {ALL_SOLVES} for all of a bed")
    print(f"{'check':<62}{'asked':>6}{'found':>6}{'beds':>6}{'most':>6}{'ms':>8}{'of base':>9}")
    for title, spent in sorted(by_title.items(), key=lambda each: -len(each[1])):
        _print_line(title, spent, one)
    _print_line("all", [each for spent in by_title.values() for each in spent], one)


def _print_line(title: str, spent: list[Spent], one: float) -> None:
    beds, ms = (
        statistics.median(each) for each in ([s.solves for s in spent], [s.ms for s in spent])
    )
    print(
        f"{title:<62}{len(spent):>6}{sum(s.found for s in spent):>6}{beds:>6.0f}"
        f"{max(s.solves for s in spent):>6}{ms:>8.0f}{ms / one:>9.1f}"
    )
