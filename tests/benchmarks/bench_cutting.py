"""Plans of random makers' lists: sheets, bound, time, settings; beside packers of rectpack 0.2 and
the shelf and first-fit rules on the same lists.

Times of plans are those of the processor (`time.process_time`), not of the clock on the wall.
"Proven after" is when the first plan was told whose bound it meets; the time of the whole plan has
in it what comes after that: fewer settings and larger offcuts for the same sheets.

Run it with `python3 tests/run.py tests/benchmarks/bench_cutting.py -s`. How many lists are drawn
is set by BEDWRIGHT_CUT_LISTS (20). Nothing here asserts a time or a count.
"""

from __future__ import annotations

import os
import statistics
import time
from dataclasses import replace
from itertools import product
from typing import NamedTuple

import rectpack

from model.cutting.order import distinct_settings, setting_changes
from model.cutting.plan import first_plan, plan
from model.cutting.record import Plan, Stock, Task
from tests.checkers.simple_rules import boards_first_fit, first_fit_decreasing, shelf_first_fit
from tests.properties.cut_lists import any_bed_list, bed_list
from tests.properties.rack_lists import rack, sticks

LISTS = int(os.environ.get("BEDWRIGHT_CUT_LISTS", "20"))
PACKERS = [each for name, each in vars(rectpack).items() if name.startswith("Guillotine")]
SORTS = (
    rectpack.SORT_AREA, rectpack.SORT_LSIDE, rectpack.SORT_SSIDE, rectpack.SORT_PERI,
    rectpack.SORT_DIFF, rectpack.SORT_RATIO,
)  # fmt: skip
BINS = (rectpack.PackingBin.BFF, rectpack.PackingBin.BBF, rectpack.PackingBin.Global)


class Planned(NamedTuple):
    """One list: how it is planned at once and with the usual effort, and how long both take;
    `proven_ms` is when the fewest were proven, before what else the shop cares about is bettered.
    """

    task: Task
    first: Plan
    best: Plan
    first_ms: float
    best_ms: float
    proven_ms: float

    @property
    def pieces(self) -> int:
        return sum(each.quantity for each in self.task.pieces)


def planned(task: Task) -> Planned:
    start = time.process_time()
    first = first_plan(task)
    middle = time.process_time()
    proofs: list[float] = []
    best = plan(task, better=lambda told: proofs.extend(_now(told)))
    end = time.process_time()
    proven = proofs[0] if proofs else end
    return Planned(
        task,
        first,
        best,
        *(
            1000 * (at - since)
            for at, since in (
                (middle, start),
                (end, middle),
                (proven, middle),
            )
        ),
    )


def _now(told: Plan) -> list[float]:
    return [time.process_time()] if told.is_proven else []


def said(name: str, lists: list[Planned]) -> None:
    """The lines that all kinds of lists share."""
    ms = [each.best_ms for each in lists]
    proven = sum(each.best.is_proven for each in lists)
    gaps = [100 * each.best.gap for each in lists]
    first = [each.first_ms for each in lists]
    soon = [each.proven_ms for each in lists if each.best.is_proven] or [0.0]
    in_time = sum(each <= 2000 for each in soon)
    print(
        f"{name}: {proven} of {len(lists)} proven; gap median {statistics.median(gaps):.2f} %, "
        f"worst {max(gaps):.2f} %\n  time median {statistics.median(ms):.0f} ms, "
        f"worst {max(ms):.0f} ms; first plan median {statistics.median(first):.0f} ms, "
        f"worst {max(first):.0f} ms"
    )
    print(
        f"  proven after median {statistics.median(soon):.0f} ms, worst {max(soon):.0f} ms; "
        f"{in_time} of {len(lists)} within 2 s"
    )
    if unproven := [each for each in lists if not each.best.is_proven]:
        named = (f"{each.task.name} {100 * each.best.gap:.1f} %" for each in unproven)
        print(f"  gaps of those not proven: {', '.join(named)}")
    if left := [each.task.name for each in lists if each.best.left_out]:
        print(f"  something is left out: {', '.join(left)}")


def test_sheets() -> None:
    print(
        f"\n{'list':<10}{'pieces':>7}{'sizes':>6}{'bound':>6}{'ours':>6}{'at once':>8}"
        f"{'rectpack':>9}{'shelf':>6}{'ms':>7}{'rectpack ms':>12}{'settings':>9}{'floor':>6}"
    )
    lists, packed, shelves, packed_ms, changes, floors = [], [], [], [], [], []
    for seed in range(LISTS):
        each = planned(bed_list(seed))
        shelf = shelf_first_fit(each.task) or 0
        start = time.perf_counter()
        packer = rectpack_sheets(each.task, shelf + 2)
        took = 1000 * (time.perf_counter() - start)
        lists.append(each)
        packed.append(packer)
        shelves.append(shelf)
        packed_ms.append(took)
        changes.append(setting_changes(each.best))
        floors.append(distinct_settings(each.best))
        print(
            f"{each.task.name:<10}{each.pieces:>7}{len(each.task.pieces):>6}"
            f"{each.best.lower_bound:>6.0f}{each.best.value:>6.0f}{each.first.value:>8.0f}"
            f"{packer:>9}{shelf:>6}{each.best_ms:>7.0f}{took:>12.0f}{changes[-1]:>9}{floors[-1]:>6}"
        )
    print(
        f"{'all':<23}{sum(e.best.lower_bound for e in lists):>6.0f}"
        f"{sum(e.best.value for e in lists):>6.0f}{sum(e.first.value for e in lists):>8.0f}"
        f"{sum(packed):>9}{sum(shelves):>6}{'':>19}{sum(changes):>9}{sum(floors):>6}"
    )
    more = [100 * (change / floor - 1) for change, floor in zip(changes, floors, strict=True)]
    said("sheets", lists)
    print(
        f"  setting changes over their floor: median {statistics.median(more):.0f} %, "
        f"worst {max(more):.0f} %; rectpack median {statistics.median(packed_ms):.0f} ms"
    )


def test_sheets_for_short_and_long_lists() -> None:
    """Fewer and more pieces than a usual list has, by the same rules."""
    print()
    said("sheets, 6 to 110 pieces", [planned(any_bed_list(seed)) for seed in range(LISTS)])


def rectpack_sheets(task: Task, most: int) -> int:
    """The fewest sheets of rectpack's guillotine packers, each with six orders and three ways
    to choose a sheet.

    They turn all pieces or none: none is turned here unless all are free, and those that are free
    lie lengthwise.
    """
    (stock,) = task.stock
    trim, kerf = stock.trim, task.kerf
    room = stock.length - trim.left - trim.right, stock.width - trim.lower - trim.upper
    may_turn = all(each.grain == "free" for each in task.pieces)
    lying = [
        _steps(*_laid(each.length, each.width, each.grain, room), kerf)
        for each in task.pieces
        for _ in range(each.quantity)
    ]
    return min(
        _bins(choice, may_turn, lying, _steps(*room, kerf), most)
        for choice in product(PACKERS, SORTS, BINS)
    )


def _laid(length: float, width: float, grain: str, room: tuple[float, float]) -> tuple[float, ...]:
    if grain == "free":
        long, short = max(length, width), min(length, width)
        return (long, short) if long <= room[0] and short <= room[1] else (short, long)
    return (width, length) if grain == "width" else (length, width)


def _steps(along: float, across: float, kerf: float) -> tuple[int, int]:
    return round(1e4 * (along + kerf)), round(1e4 * (across + kerf))


def _bins(
    choice: tuple, may_turn: bool, lying: list[tuple[int, int]], room: tuple[int, int], most: int
) -> int:
    packer, sort, bins = choice
    made = rectpack.newPacker(bin_algo=bins, pack_algo=packer, sort_algo=sort, rotation=may_turn)
    for size in lying:
        made.add_rect(*size)
    made.add_bin(*room, count=most)
    made.pack()
    placed = sum(len(each) for each in made)
    return len(made) if placed == len(lying) else most


def test_eighty_parts_at_once() -> None:
    times = []
    for seed in range(LISTS):
        task = eighty(seed)
        start = time.perf_counter()
        first_plan(task)
        times.append(1000 * (time.perf_counter() - start))
    middle, worst = statistics.median(times), max(times)
    print(f"\nfirst plan of 80 parts: median {middle:.0f} ms, worst {worst:.0f} ms")


def eighty(seed: int) -> Task:
    """The first eighty pieces of several lists, from large sheets."""
    pieces, left, more = [], 80, 1000 + 10 * seed
    while left:
        for each in bed_list(more).pieces:
            count = min(each.quantity, left)
            left -= count
            pieces += [replace(each, mark=f"Q{len(pieces)}", quantity=count)] if count else []
        more += 1
    stock = Stock(key="sheet", length=3050.0, width=1525.0)
    return Task(kind="sheets", pieces=tuple(pieces), stock=(stock,), kerf=3.2, name=f"80/{seed}")


def test_boards_from_a_rack() -> None:
    print(f"\n{'list':<10}{'pieces':>7}{'boards':>7}{'m2':>7}{'gap %':>7}{'rule':>9}{'ms':>7}")
    lists = []
    for seed in range(min(LISTS, 12)):
        each = planned(rack(seed))
        ripped = boards_first_fit(each.task)
        lists.append(each)
        simple = f"{100 * (ripped / each.best.value - 1):+.1f} %" if ripped else "runs out"
        print(
            f"{each.task.name:<10}{each.pieces:>7}{len(each.task.stock):>7}"
            f"{each.best.value / 1e6:>7.2f}{100 * each.best.gap:>7.2f}{simple:>9}"
            f"{each.best_ms:>7.0f}"
        )
    said("boards", lists)


def test_lengths() -> None:
    print(f"\n{'list':<12}{'pieces':>7}{'bound':>8}{'ours':>8}{'at once':>8}{'FFD':>5}{'ms':>7}")
    for several in (False, True):
        lists = []
        for seed in range(min(LISTS, 15)):
            each = planned(sticks(seed, several=several))
            lists.append(each)
            unit = 1000 if several else 1
            print(
                f"{each.task.name:<12}{each.pieces:>7}{each.best.lower_bound / unit:>8.1f}"
                f"{each.best.value / unit:>8.1f}{each.first.value / unit:>8.1f}"
                f"{'' if several else first_fit_decreasing(each.task):>5}{each.best_ms:>7.0f}"
            )
        said("lengths, four sizes" if several else "lengths, one size", lists)
