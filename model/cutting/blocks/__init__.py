"""Plans for sheets out of blocks: boxes of pieces that edge-to-edge cuts can part.

For lists of few sizes and few pieces on a sheet all blocks are tried: the cheapest cover and its
bound are then exact among plans cut from edge to edge. For longer ones the larger sizes alone give
such a bound, and the most promising blocks fill a sheet closer than packing piece by piece does.
Sizes and sheets are numbered as in the task in whole numbers.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence

from model.cutting.blocks.cover import cover
from model.cutting.blocks.enumerate import MOST_BOXES
from model.cutting.blocks.floor import floor
from model.cutting.blocks.record import Cover, Join, Leaf, Pattern, Tree, leaves
from model.cutting.blocks.refill import refilled
from model.cutting.bounds.question import Question, question
from model.cutting.whole import Whole

__all__ = [
    "COVERS",
    "Cover",
    "Join",
    "Leaf",
    "Pattern",
    "Tree",
    "close_cover",
    "edge_floor",
    "exact_cover",
    "leaves",
]

COVERS = "any plan cut edge to edge"
WIDTH = 120  # blocks of each number of pieces that a close fit is built on


def exact_cover(whole: Whole, nodes: int, most: int = MOST_BOXES) -> Cover | None:
    """The cheapest sheets for all pieces, and what no plan cut from edge to edge goes below.

    None where that cannot be found by these means: more than `most` blocks, a size that fits no
    sheet, bad spans, pieces that may turn on some sheets only, stock that does not hold all, or no
    answer within `nodes` of the solver's search.
    """
    asked = question(whole)
    return cover(asked, nodes, most) if _is_plain(whole, asked) else None


def edge_floor(whole: Whole, target: int, nodes: int) -> int:
    """What plans cut from edge to edge cost at least (see `COVERS`), by the larger pieces alone.

    Looked for no further once it reaches `target`; often higher than `model.cutting.bounds` where
    a few sizes make up most of a list, and then it holds for such plans only. Bad spans are not
    looked at, and what may turn on some sheets may turn on all: both only lower it.
    """
    return floor(question(whole), target, nodes)


def close_cover(
    whole: Whole,
    kinds: Sequence[int],
    rounds: int,
    stop: Callable[[], bool] = lambda: False,
    width: int = WIDTH,
) -> Cover | None:
    """All pieces on sheets of the given kinds, each filled as close as can be; with no lower bound.

    None where no such plan was found in so many `rounds` (see `refill`), or where blocks do not say
    all that there is to the task.
    """
    asked = question(whole)
    if not _is_plain(whole, asked):
        return None
    patterns = refilled(asked, kinds, rounds, width, stop)
    if patterns is None:
        return None
    cost = sum(asked.sheets[each.sheet].cost for each in patterns)
    return Cover(patterns=patterns, cost=cost, lower_bound=0)


def _is_plain(whole: Whole, asked: Question) -> bool:
    """Whether the question says all that there is to the task."""
    if len(asked.sizes) < len(whole.sizes) or len(asked.sheets) < len(whole.sheets):
        return False
    return bool(asked.sizes) and all(
        not sheet.bad
        and all(
            set(whole.ways(size, sheet)) == set(filter(plain.takes, simple.ways))
            for size, simple in zip(whole.sizes, asked.sizes, strict=True)
        )
        for sheet, plain in zip(whole.sheets, asked.sheets, strict=True)
    )
