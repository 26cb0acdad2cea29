"""Where the upright leaves of angle brackets sit: on what the ends of bearers meet."""

from __future__ import annotations

from collections.abc import Iterator

from model.building.record import Step
from model.building.said import Shop
from model.building.words import HAIR
from model.units import Mm

_TAPE: Mm = 0.5


def bracket_places(shop: Shop, step: Step) -> Iterator[str]:
    """A sentence for the brackets that are screwed to the frame in a step and sit alike on it.

    They came with their bearers, to which they were screwed at the bench.
    """
    new = {*step.brought, *(piece for copy in step.copies for piece in copy)}
    found: dict[tuple[str, str], list[int]] = {}
    placed = {*step.there, *new}
    for piece in sorted(placed):
        if shop.joined.hardware[piece].startswith("BRACKET"):
            bearer, frame = _hosts(shop, piece)
            if bearer is None or frame is None or frame not in placed:
                continue
            if {piece, frame} & new:
                along = shop.where.long_axis(bearer)
                key = (_height(shop, piece, frame), _air(shop, bearer, frame, along))
                found.setdefault(key, []).append(frame)
    for (height, air), frames in found.items():
        yield f"Each bracket: its upright leaf on {shop.words.marks(frames)}, {height}.{air}"


def _height(shop: Shop, piece: int, frame: int) -> str:
    """How high the leaf sits; what is nearer to an edge than a tape tells is flush with it."""
    where = shop.where
    lower, upper = where.sides(frame)[2]
    if abs(where.low(piece, 2) - where.low(frame, 2)) < _TAPE:
        return f"flush with the {lower}"
    if abs(where.high(piece, 2) - where.high(frame, 2)) < _TAPE:
        return f"flush with the {upper}"
    return where.beside(piece, frame, 2)


def _air(shop: Shop, bearer: int, frame: int, along: int) -> str:
    gap: Mm = max(
        shop.where.low(frame, along) - shop.where.high(bearer, along),
        shop.where.low(bearer, along) - shop.where.high(frame, along),
    )
    if gap <= HAIR:
        return ""
    return f" Leave {shop.words.size(gap)} of air at the bearer's end."


def _hosts(shop: Shop, piece: int) -> tuple[int | None, int | None]:
    """The bearer that a bracket bears, and the wood that it hangs on."""
    wood = shop.wood(sorted(shop.joined.partners(piece)))
    bearers = [other for other in wood if shop.joined.rule(other) == "bearers"]
    others = [other for other in wood if other not in bearers]
    return (bearers[0] if bearers else None), (others[0] if others else None)
