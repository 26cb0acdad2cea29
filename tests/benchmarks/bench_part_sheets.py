"""Drawings of marks, one by one: what each costs, and how it grows with the cuts of a part.

Times are those of the processor. Run it with
`python3 tests/run.py tests/benchmarks/bench_part_sheets.py -s`. Nothing here asserts a time.
"""

from __future__ import annotations

import statistics
import time
from pathlib import Path

from model.bed import solve
from model.designs import read
from model.drawings.dimensioning.told import Told
from model.drawings.part_sheet.sheet import part_sheet

DEMOS = sorted((Path(__file__).resolve().parents[2] / "resources" / "demos").glob("*.bedwright"))
PAGE = (180.0, 240.0)


def test_time_of_part_sheets() -> None:
    print()
    times: list[tuple[int, float]] = []
    for path in DEMOS:
        bed = solve(read(path))
        told = Told(bed.design.value("shown_unit"))
        part_sheet(bed.marks[0], told, *PAGE)  # the letters are read once
        begin = time.process_time()
        for mark in bed.marks:
            start = time.process_time()
            part_sheet(mark, told, *PAGE)
            times.append((len(mark.features), 1000 * (time.process_time() - start)))
        whole = 1000 * (time.process_time() - begin)
        print(f"{path.stem}: {len(bed.marks)} marks in {whole:.0f} ms")
    for low, high in ((0, 0), (1, 4), (5, 12), (13, 99)):
        some = [ms for count, ms in times if low <= count <= high]
        if some:
            print(f"{low} to {high} cuts and holes: {statistics.mean(some):.1f} ms a mark")
