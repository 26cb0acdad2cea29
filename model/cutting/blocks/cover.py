"""The cheapest plan by trying all blocks: exact where sizes and pieces on a sheet are few."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from model.cutting.blocks.enumerate import MOST_BOXES, Blocks, blocks
from model.cutting.blocks.master import Choice, Whole, choose
from model.cutting.blocks.record import Cover, Pattern, without
from model.cutting.bounds.question import Question

MOST_PATTERNS = 4000


def cover(asked: Question, nodes: int, most: int = MOST_BOXES) -> Cover | None:
    """Sheets that hold all pieces at the least cost, by edge-to-edge cuts.

    None where there are too many blocks to try them all, or no choice of them holds all pieces (or
    none is found within `nodes`).
    """
    found = blocks(asked, most)
    if found is None or not found.is_complete:
        return None
    patterns = _patterns(found)
    counts = found.counts.all(found.boxes.keys[[box for _, box in patterns]])
    choice = _chosen(found, patterns, counts, nodes)
    if choice is None:
        return None
    chosen = [
        Pattern(sheet=sheet, counts=tuple(row.tolist()), tree=found.tree(box))
        for (sheet, box), row, times in zip(patterns, counts, choice.times, strict=True)
        for _ in range(times)
    ]
    return assembled(asked, chosen, choice.lower_bound)


def least(found: Blocks, nodes: int) -> int | None:
    """The least that sheets for all pieces cost, or a bound on it; None where none is known."""
    patterns = _patterns(found)
    counts = found.counts.all(found.boxes.keys[[box for _, box in patterns]])
    choice = _chosen(found, patterns, counts, nodes)
    return None if choice is None else choice.lower_bound


def _chosen(
    found: Blocks, patterns: list[tuple[int, int]], counts: Whole, nodes: int
) -> Choice | None:
    if not 0 < len(patterns) <= MOST_PATTERNS:
        return None
    return choose(found.asked, [sheet for sheet, _ in patterns], counts, nodes)


def assembled(asked: Question, patterns: Sequence[Pattern], lower_bound: int) -> Cover:
    """Patterns that hold all pieces at least once, as a cover that holds them exactly once."""
    kept = exactly(asked, patterns)
    cost = sum(asked.sheets[each.sheet].cost for each in kept)
    return Cover(patterns=kept, cost=cost, lower_bound=min(cost, lower_bound))


def _patterns(found: Blocks) -> list[tuple[int, int]]:
    """(sheet, box) for the fullest multisets that fit each sheet; of each the first box."""
    patterns = []
    boxes = found.boxes
    for number, sheet in enumerate(found.asked.sheets):
        fits = np.flatnonzero((boxes.lengths <= sheet.length) & (boxes.widths <= sheet.width))
        keys, first = np.unique(boxes.keys[fits], return_index=True)
        fuller = np.zeros(len(keys), bool)
        for size in range(len(found.asked.sizes)):
            more = keys + found.counts.one(size)
            fuller |= found.counts.within(more) & np.isin(more, keys)
        patterns += [(number, int(box)) for box in fits[first[~fuller]]]
    return patterns


def exactly(asked: Question, patterns: Sequence[Pattern]) -> tuple[Pattern, ...]:
    """The same patterns without the pieces that nobody asked for; empty ones are left out."""
    surplus = {
        at: sum(each.counts[at] for each in patterns) - size.demand
        for at, size in enumerate(asked.sizes)
    }
    kept = []
    for pattern in patterns:
        before = dict(surplus)
        tree = without(pattern.tree, surplus)
        if tree is not None:
            counts = (count - before[at] + surplus[at] for at, count in enumerate(pattern.counts))
            kept.append(Pattern(sheet=pattern.sheet, counts=tuple(counts), tree=tree))
    return tuple(kept)
