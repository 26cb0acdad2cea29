"""Where angle brackets sit: one leaf under a bearer's end, the other on what the end meets."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from model.building.said import Shop
from model.building.words import HAIR
from model.units import Mm

_TAPE: Mm = 0.5


def bracket_places(shop: Shop, pieces: Sequence[int]) -> Iterator[str]:
    """A sentence for brackets that sit alike; where each bearer stands is told before."""
    found: dict[tuple[str, ...], list[int]] = {}
    for piece in pieces:
        if shop.joined.hardware[piece].startswith("BRACKET"):
            bearer, frame = _hosts(shop, piece)
            if bearer is not None and frame is not None:
                found.setdefault(_told(shop, piece, bearer, frame), []).append(frame)
    for (height, under, across, air), frames in found.items():
        yield (
            f"Each bracket: its upright leaf on {shop.words.marks(frames)}, {height}; its level "
            f"leaf under the end of {under}, {across}.{air}"
        )


def _told(shop: Shop, piece: int, bearer: int, frame: int) -> tuple[str, ...]:
    where = shop.where
    along = where.long_axis(bearer)
    return (
        _height(shop, piece, frame),
        shop.words.marks([bearer]),
        where.beside(piece, bearer, 1 - along),
        _air(shop, bearer, frame, along),
    )


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
