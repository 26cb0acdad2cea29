"""How long the plan set takes, beside solving the same bed: its list, its pages, its file.

`python3 tests/run.py tests/benchmarks/bench_plan_set.py -s`
"""

from __future__ import annotations

import time
from collections.abc import Callable
from statistics import median
from typing import Any

from model.bed import Bed, solve
from model.cost.costing import costing_of
from model.exports.pdf import pdf_file
from model.planset.book import PlanSet
from tests.model.building.beds import QUEEN, turned

RUNS = 3
DRAWERS = {
    "0 drawers": {"left__drawers": 0, "right__drawers": 0, "beam": "legs"},
    "4 drawers": {},
    "6 drawers": {"left__drawers": 3, "right__drawers": 3, "pull": "knob_32"},
    "12 drawers": {"left__drawers": 6, "right__drawers": 6, "pull": "none"},
}


def seconds(job: Callable[[], Any]) -> float:
    """Processor time of one run."""
    start = time.process_time()
    job()
    return time.process_time() - start


def test_plan_set_by_drawers() -> None:
    PlanSet(turned(QUEEN)).page(0)  # imports and fonts
    print(f"\n{'bed':12}{'pages':>6}{'solve':>9}{'plans':>9}{'list':>9}{'drawn':>9}{'file':>9}"
          f"{'ratio':>9}")  # fmt: skip
    for name, choices in DRAWERS.items():
        rows = [_one(choices) for _ in range(RUNS)]
        pages = rows[0][0]
        solved, planned, listed, drawn, written = (
            median(row[at] for row in rows) for at in range(1, 6)
        )
        whole = listed + drawn + written
        print(
            f"{name:12}{pages:6}{_ms(solved)}{_ms(planned)}{_ms(listed)}{_ms(drawn)}{_ms(written)}"
            f"{whole / solved:9.1f}"
        )


def _one(choices: dict[str, Any]) -> tuple[float, ...]:
    beds: list[Bed] = []
    solved = seconds(lambda: beds.append(turned(QUEEN, **choices)))
    bed = beds[0]
    planned = seconds(lambda: costing_of(bed))
    plan = PlanSet(bed)
    listed = seconds(lambda: plan.sheets)
    drawn = seconds(lambda: list(plan.pages()))
    pages = list(plan.pages())
    written = seconds(lambda: pdf_file(pages, plan.title))
    return len(pages), solved, planned, listed, drawn, written


def _ms(value: float) -> str:
    return f"{value * 1000:6.0f} ms"


def test_slowest_pages() -> None:
    plan = PlanSet(turned(QUEEN, **DRAWERS["6 drawers"]))
    bed = plan.setting.bed
    base = seconds(lambda: solve(bed.design))
    costing_of(bed)
    keys = [sheet.key for sheet in plan.sheets]
    times = {key: seconds(lambda at=at: plan.page(at)) for at, key in enumerate(keys)}
    usual = median(times.values())
    print(f"\nmedian page {_ms(usual)}, {usual / base:.2f} of solving the bed")
    for key, each in sorted(times.items(), key=lambda item: -item[1])[:12]:
        print(f"{key:24}{_ms(each)}{each / base:9.2f}")
