"""How long it takes to tell what a bed bears: its frame from the parts, all load cases solved, and
what every piece then bears.

Baseline of the same run: the same frame and load cases solved by the library PyNiteFEA. Run it with
`python3 tests/run.py tests/benchmarks/bench_strength.py -s`. Nothing here asserts a time.
"""

from __future__ import annotations

import statistics
import time
from collections.abc import Callable
from dataclasses import replace
from typing import Any

import numpy as np
import pytest

from app.memory import keep_freed_memory
from model.bed import Bed, Design, solve
from model.mechanics.space_frame import Frame
from model.structure.carry import judged
from model.structure.contacts import contacts, hosts
from model.structure.lattice import Lattice, lattice
from model.structure.skeleton import skeleton
from tests.reference.in_pynite import add_joints, moved, with_bars

keep_freed_memory()  # as the command line and the window do

ROUNDS = 30
SIX_DRAWERS = {"left.drawers": 3, "right.drawers": 3}
SIXTEEN_SLATS = {"slats_by": "count", "slat_count": 16}


def _median(job: Callable[[], object], rounds: int = ROUNDS) -> float:
    """Milliseconds that a job takes, the middle of all rounds."""
    spent = []
    for _ in range(rounds):
        start = time.perf_counter()
        job()
        spent.append(1000 * (time.perf_counter() - start))
    return statistics.median(spent)


def _judged(bed: Bed) -> object:
    grade = bed["stock_grade"].key
    return judged(bed.pieces, bed.proof, bed.masses, bed["handling"], grade, bed.design.own)


def _frame(bed: Bed) -> Lattice:
    """The frame as it is read from the bed's pieces."""
    proof = bed.proof
    bones = skeleton(bed.pieces, bed["stock_grade"].key, bed.design.own)
    host = hosts(bed.pieces, proof.holding, bones)
    return lattice(bones, contacts(bed.pieces, proof.holding, proof.touching, bones, host))


def _solved(bed: Bed, monkeypatch: pytest.MonkeyPatch) -> tuple[Any, ...]:
    """The frame and all that it is asked to solve."""
    seen: list[tuple[Any, ...]] = []
    whole = Frame.solve

    def solve_and_tell(*given: Any) -> object:
        seen.append(given)
        return whole(*given)

    with monkeypatch.context() as patched:
        patched.setattr(Frame, "solve", solve_and_tell)
        _judged(bed)
    return seen[0]


def test_strength_of_a_queen_bed_with_six_drawers_and_sixteen_slats(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    bed = solve(Design().with_choices({**SIX_DRAWERS, **SIXTEEN_SLATS}))
    frame, loads, on_nodes, *rest = _solved(bed, monkeypatch)
    cases, joints = on_nodes.shape[2], len(frame.joints.one)
    none = np.zeros((joints, cases), bool)
    both_ways = replace(frame, joints=replace(frame.joints, pushes=0 * frame.joints.pushes))

    build = _median(lambda: _frame(bed))
    solving = _median(lambda: frame.solve(loads, on_nodes, *rest))
    whole = _median(lambda: _judged(bed))
    plain = _median(lambda: both_ways.solve(loads, on_nodes, none))

    def theirs() -> Any:
        model = with_bars(frame, loads, on_nodes)
        add_joints(model, frame)
        model.analyze_linear(check_stability=False)
        return model

    base = _median(theirs, 3)
    ours = both_ways.solve(loads, on_nodes, none).moved
    apart = np.abs(ours - moved(theirs(), len(frame.nodes), cases))[:, :3].max()
    most = np.abs(ours[:, :3]).max()
    print(
        f"\nqueen, 6 drawers, 16 slats: {len(frame.nodes)} nodes, "
        f"{len(frame.members.length)} members, {joints} joints, {cases} load cases"
    )
    print(f"{'frame from the parts':<44}{build:>8.1f} ms")
    print(f"{'all cases solved, joints let go':<44}{solving:>8.1f} ms")
    print(f"{'all that is told of every piece':<44}{whole:>8.1f} ms")
    print(f"{'all cases solved, joints hold both ways':<44}{plain:>8.1f} ms")
    print(f"{'the same by PyNiteFEA, model and solution':<44}{base:>8.1f} ms")
    print(f"of PyNiteFEA: {plain / base:.4f} to solve, {whole / base:.4f} for the whole")
    print(f"farthest apart: {apart:.1e} mm, of {most:.1f} mm that is moved at most")


def test_cost_grows_with_the_frame(monkeypatch: pytest.MonkeyPatch) -> None:
    print("\nms for all that is told of every piece, by drawers and by slats")
    for drawers in range(0, 7, 2):
        _print_growth(
            f"{2 * drawers} drawers",
            {"left.drawers": drawers, "right.drawers": drawers},
            monkeypatch,
        )
    for slats in (10, 16, 24, 32, 40):
        more = {"slats_by": "count", "slat_count": slats, "slat_width": 45}
        _print_growth(f"{slats} slats", {**SIX_DRAWERS, **more}, monkeypatch)


def _print_growth(label: str, choices: dict[str, object], monkeypatch: pytest.MonkeyPatch) -> None:
    bed = solve(Design().with_choices(choices))
    frame, loads, on_nodes, *rest = _solved(bed, monkeypatch)
    solving = _median(lambda: frame.solve(loads, on_nodes, *rest), 15)
    whole, nodes = _median(lambda: _judged(bed), 15), len(frame.nodes)
    print(
        f"{label:<12}{nodes:>5} nodes{on_nodes.shape[2]:>4} cases{solving:>8.1f} ms to solve"
        f"{whole:>8.1f} ms{1000 * whole / nodes:>8.0f} µs a node"
    )
