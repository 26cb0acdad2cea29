"""What batches and their lines are kept under: ticks find them by it when the bed has changed."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from model.parts.marks import Mark
from model.shop.order.jobs import alike
from model.shop.order.record import Distance, Line, Spot


def key_of(operation: str, figures: Iterable[Distance]) -> str:
    """`groove width 9.525 depth 6.2 fence 7.9`: what a batch is, whatever else the bed has."""
    return " ".join([operation, *(f"{what} {size:g}" for what, size in alike(figures))])


def line_key(batch_key: str, who: str) -> str:
    """A batch and a part, by the identity of the part and not by its mark."""
    return f"{batch_key} | {who}"


def line_of(
    batch_key: str,
    mark: Mark,
    who: Mapping[str, str],
    detail: str = "",
    spots: tuple[Spot, ...] = (),
) -> Line:
    """The line of a whole mark in a batch; `who` are the identities of marks."""
    return Line(
        key=line_key(batch_key, who[mark.mark]),
        mark=mark.mark,
        name=mark.name,
        quantity=mark.quantity,
        detail=detail,
        spots=spots,
    )
