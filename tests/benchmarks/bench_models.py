"""How long the model files of a queen bed with six drawers take, beside the GLB of the same run.

Prints times and ratios, asserts none. All caches are emptied before each round, as when the command
line writes one plan. Run: python3 tests/run.py tests/benchmarks/bench_models.py -s
"""

from __future__ import annotations

import statistics
import time
from collections.abc import Callable

from app.memory import keep_freed_memory
from model.bed import Bed, Design, solve
from model.exports import glb, step, stl, threemf
from model.solids import exact

keep_freed_memory()  # as the command line and the window do

ROUNDS = 9
QUEEN = {"left.drawers": 3, "right.drawers": 3}
FILES: dict[str, Callable[[Bed], bytes]] = {
    "bed.glb": glb.content,
    "bed.stl": stl.content,
    "bed.3mf": threemf.content,
    "bed.step": step.content,
}


def test_print_times() -> None:
    bed = solve(Design().with_choices(QUEEN))
    print(f"\n{len(bed.pieces)} pieces, {len(bed.marks)} marks")

    spent: dict[str, list[float]] = {name: [] for name in FILES}
    size = {}
    for _ in range(ROUNDS):
        exact._made.cache_clear()  # the GLB, which comes first, makes the solids for all
        for name, content in FILES.items():
            start = time.perf_counter()
            size[name] = len(content(bed))
            spent[name].append(1000 * (time.perf_counter() - start))

    base = statistics.median(spent["bed.glb"])
    for name, times in spent.items():
        took = statistics.median(times)
        kb = size[name] / 1000
        print(f"{name:10s} {took:8.1f} ms   {took / base:5.2f} of the GLB   {kb:8.0f} kB")
