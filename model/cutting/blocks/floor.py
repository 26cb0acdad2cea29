"""What plans cut from edge to edge need at least, because of their larger pieces alone.

Where all blocks of a list are too many, those of its few largest sizes may still be tried: no plan
for all pieces costs less than the cheapest plan for some of them.
"""

from __future__ import annotations

from collections.abc import Iterator

from model.cutting.blocks.cover import least
from model.cutting.blocks.enumerate import blocks
from model.cutting.bounds.question import Question

MOST_BOXES = 5000


def floor(asked: Question, target: int, nodes: int, most: int = MOST_BOXES) -> int:
    """No plan cut from edge to edge costs less; 0 where nothing can be said.

    One more size is looked at until the bound reaches `target`, or there are more than `most`
    blocks, or too many patterns.
    """
    best = 0
    for part in _larger(asked):
        found = blocks(part, most)
        if found is None or not found.is_complete:
            break
        cost = least(found, nodes)
        if cost is None:
            break
        best = max(best, cost)
        if best >= target:
            break
    return best


def _larger(asked: Question) -> Iterator[Question]:
    """The question for the two largest sizes, the three largest, and so on."""
    sizes = sorted(asked.sizes, key=lambda size: -size.area)
    for count in range(min(2, len(sizes)), len(sizes) + 1):
        yield Question(sizes=tuple(sizes[:count]), sheets=asked.sheets)
