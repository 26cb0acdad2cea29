"""How long a changed choice takes to become a bed: rules, parts, checks, proof of fit, and its
mesh.

Baseline of the same run: the same parts' solids by booleans of the library manifold3d. Run it with
`python3 tests/run.py tests/benchmarks/bench_solve.py -s`. Nothing here asserts a time.
"""

from __future__ import annotations

import statistics
import time
from collections.abc import Callable

from app.memory import keep_freed_memory
from model.bed import Bed, Design, solve
from model.part import Part
from model.solids import exact
from model.solids.mesh import bed_mesh

keep_freed_memory()  # as the command line and the window do

ROUNDS = 40
QUEEN = {"left.drawers": 3, "right.drawers": 3}
CHANGED = (
    *("rail_height", "mattress_width", "box_stock"),
    *("mid_stile", "frame_stock", "slat_gap_most"),
)


def _median(job: Callable[[int], object], rounds: int = ROUNDS) -> float:
    """Milliseconds that a job takes, the middle of all rounds; each round is told its number."""
    spent = []
    for i in range(rounds):
        start = time.perf_counter()
        job(i)
        spent.append(1000 * (time.perf_counter() - start))
    return statistics.median(spent)


def _solids(wood: list[Part]) -> list[float]:
    """All solids made anew; asking their volume makes the library carry out its booleans."""
    exact._made.cache_clear()
    return [exact.solid(part).volume() for part in wood]


def _nudged(name: str, i: int) -> dict[str, float]:
    """A value a little off the default, another one every round."""
    return {**QUEEN, name: Design().value(name) * (1 + 0.002 * (i % 20 + 1))}


def _solver(name: str, made: list[Bed], *, is_seen: bool) -> Callable[[int], object]:
    def job(i: int) -> object:
        made[0] = bed = solve(Design().with_choices(_nudged(name, i)), made[0])
        checks = (bed.marks, bed.findings)
        return (checks, bed_mesh(bed.pieces, bed.parts)) if is_seen else checks

    return job


def test_solve_of_a_queen_bed_with_six_drawers() -> None:
    first = solve(Design().with_choices(QUEEN))
    wood = [part for made in first.parts.values() for part in made if not part.hardware]
    base = _median(lambda i: _solids(wood), 8)
    print(f"\nqueen, 6 drawers, {len(first.pieces.part)} pieces; {len(wood)} kinds of wood")
    print(f"baseline, their solids by booleans: {base:.1f} ms")
    print(f"{'changed choice':<18}{'solved ms':>10}{'of base':>9}{'with mesh':>11}{'of base':>9}")
    for name in CHANGED:
        plain = _median(_solver(name, [first], is_seen=False))
        seen = _median(_solver(name, [first], is_seen=True))
        print(f"{name:<18}{plain:>10.1f}{plain / base:>9.2f}{seen:>11.1f}{seen / base:>9.2f}")


def test_cost_grows_with_the_parts() -> None:
    print("\npieces and ms to solve after a change of rail height, by drawers and by slats")
    for drawers in range(0, 7):
        beds = {"left.drawers": drawers, "right.drawers": drawers}
        _print_growth(f"{2 * drawers} drawers", beds)
    for slats in (10, 20, 30, 40):
        _print_growth(
            f"{slats} slats", {**QUEEN, "slats_by": "count", "slat_count": slats, "slat_width": 45}
        )


def _print_growth(label: str, choices: dict[str, object]) -> None:
    made = [solve(Design().with_choices(choices))]

    def job(i: int) -> None:
        changed = {**choices, "rail_height": 400 + i % 20}
        made[0] = solve(Design().with_choices(changed), made[0])

    spent, pieces = _median(job, 20), len(made[0].pieces.part)
    print(f"{label:<12}{pieces:>5} pieces{spent:>8.1f} ms{1000 * spent / pieces:>8.0f} µs a piece")
