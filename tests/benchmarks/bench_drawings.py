"""How long the files of `drawings` take for the demo beds: made, then written as DXF and SVG.

Prints times, asserts none; the part of drawing is what the plan set spends on the same views. Run:
python3 tests/run.py tests/benchmarks/bench_drawings.py -s
"""

from __future__ import annotations

import statistics
import time
from collections.abc import Callable
from pathlib import Path

from app.memory import keep_freed_memory
from model.bed import Bed, solve
from model.designs import read
from model.exports.drawing_dxf import dxf_file
from model.exports.drawing_files import drawings, sheet_marks
from model.exports.drawing_svg import svg_text
from model.exports.profile_dxf import profile_file
from model.planset.book import PlanSet
from model.planset.elevations import told_by

keep_freed_memory()  # as the command line and the window do

ROUNDS = 3
DEMOS = Path(__file__).resolve().parents[2] / "resources" / "demos"


def test_print_times() -> None:
    start = time.perf_counter()
    import ezdxf

    print(f"\nezdxf {ezdxf.__version__} loaded in {1000 * (time.perf_counter() - start):.0f} ms")
    for path in sorted(DEMOS.glob("*.bedwright")):
        _print_bed(solve(read(path)))


def _print_bed(bed: Bed) -> None:
    plan = PlanSet(bed)
    unit, made = told_by(plan.setting).unit, list(drawings(plan))
    steps: dict[str, Callable[[], list[bytes | str]]] = {
        "as DXF": lambda: [dxf_file(each.drawing, unit) for each in made],
        "as SVG": lambda: [svg_text(each.drawing) for each in made],
        "profiles": lambda: [profile_file(mark, unit) for mark in sheet_marks(bed)],
    }
    items = sum(len(each.drawing.items) for each in made)
    print(f"{bed.design.name}: {len(made)} drawings of {items} items")
    drawn = statistics.median(_took(lambda: list(drawings(PlanSet(bed)))) for _ in range(ROUNDS))
    print(f"  drawn     {drawn:7.0f} ms")
    for name, step in steps.items():
        took = statistics.median(_took(step) for _ in range(ROUNDS))
        files = step()
        size = sum(len(each) for each in files) / 1000
        print(f"  {name:9s} {took:7.0f} ms   {len(files):3d} files   {size:6.0f} kB")


def _took(step: Callable[[], object]) -> float:
    """In ms of this process alone."""
    start = time.process_time()
    step()
    return 1000 * (time.process_time() - start)
