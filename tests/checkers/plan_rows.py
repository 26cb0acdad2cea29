"""Rows of a plan: pieces that are cut from one strip, end to end, in the order of the list."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from model.cutting.record import Layout, Piece, Plan, Region, Task
from tests.checkers.sawn import NEAR

Key = tuple[str, int]


def row_faults(plan: Plan, asked: dict[Key, Piece]) -> Iterator[str]:
    """Pieces of one row lie in one strip end to end, as listed, a kerf between them."""
    wanted = {
        row: [key for key, piece in asked.items() if piece.row == row]
        for row in dict.fromkeys(piece.row for piece in plan.task.pieces if piece.row)
    }
    regions = [region for layout in plan.layouts for region in layout.tree.all()]
    for row, keys in wanted.items():
        strips = [region for region in regions if region.row == row]
        tops = [each for each in strips if not any(each in o.parts for o in strips)]
        cut = [key for key in keys if any(_holds(layout, key) for layout in plan.layouts)]
        apart = any(f"row {row} " in note for note in plan.notes)
        if not cut or apart:  # too long for any stock, and said so
            continue
        if len(tops) != 1 or cut != keys:
            yield f"row {row} is cut from {len(tops)} strips, {len(cut)} of {len(keys)} pieces"
            continue
        yield from _strip_faults(row, tops[0], keys, plan.task, asked)


def _holds(layout: Layout, key: Key) -> bool:
    return any((lying.mark, lying.piece) == key for lying in layout.placed)


def _strip_faults(
    row: str,
    strip: Region,
    keys: list[Key],
    task: Task,
    asked: dict[Key, Piece],
) -> Iterator[str]:
    placed = [each.placed for each in strip.all() if each.placed]
    if {(each.mark, each.piece) for each in placed} != set(keys):
        yield f"the strip of row {row} holds {[each.name for each in placed]}"
        return
    upright = placed[0].turned
    placed.sort(key=lambda each: each.y if upright else each.x)
    if [(each.mark, each.piece) for each in placed] != keys:
        yield f"row {row} is cut out of order: {[each.name for each in placed]}"
    for one, other in pairwise(placed):
        gap = other.y - one.y - one.length if upright else other.x - one.x - one.length
        aside = other.x - one.x if upright else other.y - one.y
        if abs(gap - task.kerf) > NEAR or abs(aside) > NEAR or one.turned != other.turned:
            yield f"{one.name} and {other.name} of row {row} do not lie end to end"
    if strip.stays_whole != any(asked[key].stays_whole for key in keys):
        yield f"the strip of row {row} is said to stay whole: {strip.stays_whole}"
    if any(each.use in ("waste", "offcut") for each in strip.all()):
        yield f"the strip of row {row} is longer or wider than its pieces"
