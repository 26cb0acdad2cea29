"""How fast pieces are placed, proved, marked and drawn, against exact booleans of the same run.

Prints times and ratios, asserts none. Run: python -m pytest -s tests/benchmarks/bench_solids.py
"""

from __future__ import annotations

import statistics
import time
from collections.abc import Callable
from dataclasses import replace
from typing import Any

from model.parts import wood
from model.parts.marks import marks
from model.parts.pieces import Pieces
from model.solids import mesh as drawing
from model.solids.exact import exact_overlaps
from model.solids.mesh import bed_mesh
from model.solids.proof import prove
from tests.model.solids.small_bed import Parts, small_bed, travel

DRAWERS, SLATS = 8, 24


def afresh(bed: Parts) -> Parts:
    """Equal parts that keep nothing from an earlier run."""
    wood._wood.cache_clear()
    drawing._kept.clear()
    return {rule: tuple(replace(each) for each in made) for rule, made in bed.items()}


def median(work: Callable[[Any], object], given: Callable[[], Any], rounds: int = 21) -> float:
    """Median time of `work` on what `given` prepares each time, ms."""
    times = []
    for _ in range(rounds):
        ready = given()
        start = time.perf_counter()
        work(ready)
        times.append(time.perf_counter() - start)
    return statistics.median(times) * 1e3


def test_print_times() -> None:
    bed = small_bed(DRAWERS, SLATS)
    pieces = Pieces.of(bed)
    ways = travel(DRAWERS)
    exact_overlaps(bed, pieces)  # solids are made once

    def fresh_pieces() -> tuple[Parts, Pieces]:
        made = afresh(bed)
        return made, Pieces.of(made)

    rows = {
        "exact overlaps, solids at hand": median(
            lambda _: exact_overlaps(bed, pieces), lambda: None, 5
        ),
        "pieces, nothing kept": median(Pieces.of, lambda: afresh(bed)),
        "pieces, parts kept": median(Pieces.of, lambda: bed),
        "prove, nothing kept": median(lambda it: prove(*it, ways), fresh_pieces),
        "prove, parts kept": median(lambda _: prove(bed, pieces, ways), lambda: None),
        "marks, nothing kept": median(lambda it: marks(*it), fresh_pieces),
        "marks, parts kept": median(lambda _: marks(bed, pieces), lambda: None),
        "mesh, nothing kept": median(lambda it: bed_mesh(it[1]), fresh_pieces),
        "mesh, parts kept": median(lambda _: bed_mesh(pieces), lambda: None),
    }
    base = next(iter(rows.values()))
    print(f"\n{len(pieces)} pieces, {len(pieces.lo)} boxes, {len(pieces.parts)} parts")
    for name, took in rows.items():
        print(f"{name:32s} {took:8.2f} ms   {base / took:7.1f} times as fast as booleans")
