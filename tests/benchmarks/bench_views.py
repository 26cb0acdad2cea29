"""How fast a bed is seen: elevations with hidden lines, slanted views, sections, parts, and paper.

Times are of the processor, for other programs run beside. Prints times and ratios against making
the mesh of the whole bed anew in the same run, asserts none. Run: python -m pytest -s
tests/benchmarks/bench_views.py
"""

from __future__ import annotations

import statistics
import time
from collections.abc import Callable
from pathlib import Path

import pytest

from model.bed import Bed, solve
from model.designs import read
from model.drawings.views.gaze import FOOT_LEFT, FRONT, LEFT, PLAN
from model.drawings.views.on_paper import on_paper
from model.drawings.views.scene import bed_scene, drawer_offsets, part_scene
from model.drawings.views.section import Plane
from model.drawings.views.view import seen
from model.solids import mesh
from model.solids.mesh import bed_mesh

MIDDLE = Plane(point=(0.0, 700.0, 0.0), normal=(0.0, -1.0, 0.0))
DEMOS = sorted(Path("resources/demos").glob("*.bedwright"))


def median(work: Callable[[], object], rounds: int = 9) -> float:
    """Median time of the processor, ms."""
    times = []
    for _ in range(rounds):
        start = time.process_time()
        work()
        times.append(time.process_time() - start)
    return statistics.median(times) * 1e3


def mesh_anew(bed: Bed) -> object:
    mesh._kept.clear()
    for part in bed.pieces.parts:
        part.__dict__.pop("_drawn", None)
    return bed_mesh(bed.pieces)


@pytest.mark.parametrize("path", DEMOS, ids=[path.stem for path in DEMOS])
def test_print_times(path: Path) -> None:
    bed = solve(read(path))
    scene = bed_scene(bed)
    ten = bed_scene(bed, scene.pieces[:10].tolist())
    part = max((mark.part for mark in bed.marks), key=lambda each: len(each.holes))
    alone, exact = part_scene(part), part_scene(part, exact=True)
    front, slanted = seen(scene, FRONT), seen(scene, FOOT_LEFT, hidden=False)
    open_wide = dict.fromkeys(bed.pieces.groups[1:], 300.0)

    def opened() -> object:
        return seen(bed_scene(bed, offsets=drawer_offsets(bed, open_wide)), FOOT_LEFT, hidden=False)

    rows = {
        "mesh of the bed, made anew": median(lambda: mesh_anew(bed)),
        "front, hidden lines": median(lambda: seen(scene, FRONT)),
        "left, hidden lines": median(lambda: seen(scene, LEFT)),
        "plan, hidden lines": median(lambda: seen(scene, PLAN)),
        "slanted, visible only": median(lambda: seen(scene, FOOT_LEFT, hidden=False)),
        "slanted, drawers out, new scene": median(opened),
        "section, visible only": median(lambda: seen(scene, FRONT, MIDDLE, hidden=False)),
        "ten pieces, hidden lines": median(lambda: seen(ten, FRONT)),
        f"a part of {len(part.holes)} holes": median(lambda: seen(alone, FRONT)),
        "the same part as a solid": median(lambda: seen(exact, FRONT)),
        "front on paper": median(lambda: list(on_paper(front, 0.1, (0.0, 0.0)))),
        "slanted on paper": median(lambda: list(on_paper(slanted, 0.1, (0.0, 0.0)))),
    }
    base = next(iter(rows.values()))
    edges, boxes = len(scene.bodies.edges), len(scene.bodies.lo)
    print(f"\n{path.stem}: {len(scene)} pieces of wood, {edges} edges, {boxes} boxes")
    for name, took in rows.items():
        print(f"{name:34s} {took:8.2f} ms   {took / base:6.2f} times the mesh")
