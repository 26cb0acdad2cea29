"""Products of dual feasible functions along and across the sheet."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from model.cutting.bounds.best import Best
from model.cutting.bounds.dual_feasible import Whole, family
from model.cutting.bounds.question import ACROSS, ALONG, Axis, Question
from model.cutting.bounds.scale import Rows, Scale, product

MOST_PAIRS = 4  # looked at exactly, of all that look promising

Floats = NDArray[np.float64]


class _Measures(NamedTuple):
    """Whole weights by measure and size; what they come to with a full row taken as 1, by
    measure and size, and by measure and sheet.
    """

    weights: Whole
    shares: Floats
    rooms: Floats


def products(best: Best, along: Rows, across: Rows, by: str) -> list[tuple[Scale, Scale]]:
    """Offer the most promising products; returned with the best first.

    All pairs are compared in floats; those that promise most are reckoned again in whole numbers
    and with what a row can really hold.
    """
    found = []
    lengthwise, crosswise = (
        _measures(best.asked, along, ALONG),
        _measures(best.asked, across, ACROSS),
    )
    for a, b in _promising(best.asked, along, across, lengthwise, crosswise):
        pair = (
            along.scale(lengthwise.weights[a].tolist()),
            across.scale(crosswise.weights[b].tolist()),
        )
        found.append(pair)
        best.offer(product(best.asked, *pair), by)
        if best.is_settled:
            break
    return found


def _measures(asked: Question, rows: Rows, axis: Axis) -> _Measures:
    """Measures for the rooms of all sheets that cost something (or else of all)."""
    costly = [sheet for sheet in asked.sheets if sheet.cost > 0] or asked.sheets
    points = np.array([*rows.sizes, *rows.rooms], np.int64)
    tables = []
    for room in sorted({sheet[axis] for sheet in costly}):
        weights = family(points, room, rows.sizes)
        full = weights[:, np.flatnonzero(points == room)[0]].astype(float)
        longer = np.maximum(1.0, np.array(rows.rooms) / room)
        shares = weights / full[:, None]
        shares[:, len(rows.sizes) :] *= longer
        tables.append((weights, shares))
    weights = np.concatenate([each[0] for each in tables])
    shares = np.concatenate([each[1] for each in tables])
    count = len(rows.sizes)
    return _Measures(weights[:, :count], shares[:, :count], shares[:, count:])


def _promising(
    asked: Question, along: Rows, across: Rows, lengthwise: _Measures, crosswise: _Measures
) -> list[tuple[int, int]]:
    """Pairs of measures by what they promise, the most first."""
    total = np.zeros((len(lengthwise.weights), len(crosswise.weights)))
    for size in asked.sizes:
        each = [
            np.outer(
                lengthwise.shares[:, along.sizes.index(length)],
                crosswise.shares[:, across.sizes.index(width)],
            )
            for length, width in size.ways
        ]
        total += size.demand * np.minimum.reduce(each)
    promise = _promise(asked, total, lengthwise.rooms, crosswise.rooms)
    order = np.argsort(-promise, axis=None, kind="stable")[:MOST_PAIRS]
    return [divmod(int(at), promise.shape[1]) for at in order]


def _promise(asked: Question, total: Floats, along: Floats, across: Floats) -> Floats:
    """What the total costs at least when parts of sheets are bought, about."""
    rest = total
    gain = np.full_like(total, 1e-12)  # held for each unit of cost
    for at, sheet in enumerate(asked.sheets):
        holds = np.outer(along[:, at], across[:, at])
        if sheet.cost > 0:
            gain = np.maximum(gain, holds / sheet.cost)
        else:
            rest = rest - holds * (sheet.quantity or 0)
    return np.maximum(rest, 0.0) / gain
