"""Places along the bed and across it, measured from where a maker can lay a tape."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from model.building.said import Shop
from model.building.words import HAIR
from model.shop.order import say
from model.units import Mm


def from_start(shop: Shop, own: Sequence[int], axis: int) -> str:
    """Places in a row, measured from where rows begin on an axis."""
    where, words = shop.where, shop.words
    start, what = start_of(shop, own, axis)
    rows = sorted(own, key=lambda each: where.low(each, axis))
    told = Counter(
        f"{words.marks([each])} {words.size(where.low(each, axis) - start)}" for each in rows
    )
    listed = [place if n == 1 else f"{n} x {place}" for place, n in told.items()]
    return f"from the {what} to the near face: {say.listed(listed)}"


def start_of(shop: Shop, own: Sequence[int], axis: int) -> tuple[Mm, str]:
    """The inner faces of the foot posts; those of the foot's rail for what reaches past them;
    the inner face of the left side.
    """
    where = shop.where
    if axis == 0:
        rails = shop.made_by("top_rail", "side_rail", scope="left")
        return max(where.high(each, 0) for each in rails), "inner face of the left side"
    posts = shop.made_by("post_left", "post_right", scope="foot")
    start = max(where.high(each, 1) for each in posts)
    if min(where.low(each, 1) for each in own) >= start - HAIR:
        return start, "inner faces of the foot posts"
    rails = shop.made_by("end_rail", scope="foot")
    return max(where.high(each, 1) for each in rails), "inner face of the foot's end rail"
