"""Work counted from the work order: the cuts that it lists, and the settings it is made by."""

from __future__ import annotations

from collections.abc import Mapping

from model.shop.order.record import Batch, Way, WorkOrder

_BY_HAND: frozenset[Way] = frozenset({"glue"})  # clamps are set with the gluing itself
# How often a piece goes over the saw: one end is squared before the other is cut at the stop.
_TO_SIZE: dict[Way, float] = {"width": 1, "length": 2}


def work_in_order(order: WorkOrder) -> Mapping[str, float]:
    """Quantities of the kinds of work that are counted line by line, by their key."""
    found = dict.fromkeys(("cut_sheets", "cut_boards", "settings", "to_size", "tapers"), 0.0)
    for batch in order.batches:
        found["settings"] += is_set_up(batch)
        for key, times in _counted(batch).items():
            found[key] += times * sum(line.quantity for line in batch.lines)
    return found


def is_set_up(batch: Batch) -> bool:
    """Whether fence, stop, bit or depth is set for a batch, or a board's end marked out."""
    return bool(batch.distances) and batch.way not in _BY_HAND


def _counted(batch: Batch) -> Mapping[str, float]:
    """What one piece of a line adds; none where the parts tell more: metres, mortises, m2."""
    if batch.way == "saw":  # what is used as it is bought has no setting and no cut
        kind = "cut_sheets" if batch.stage == "sheets" else "cut_boards"
        return {kind: float(is_set_up(batch))}
    if batch.way in _TO_SIZE:
        return {"to_size": _TO_SIZE[batch.way]}
    return {"tapers": 1} if batch.way == "taper" else {}
