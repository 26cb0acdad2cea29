"""The bars bound, against the same program with every pattern of a row written down."""

from itertools import product

import numpy as np
import pytest
from scipy.optimize import linprog

from model.cutting.bounds.bars import bars
from model.cutting.bounds.best import Best
from model.cutting.bounds.question import ACROSS, ALONG, Axis, Question
from model.cutting.bounds.scale import Rows, Scale
from tests.model.cutting.bounds.questions import ask, size


def with_every_pattern(asked: Question) -> float:
    """Unknowns: sheets, pieces by way, rows of each pattern along and across."""
    (sheet,) = asked.sheets
    ways = [(at, way) for at, each in enumerate(asked.sizes) for way in each.ways]
    columns = [patterns(asked, ALONG), patterns(asked, ACROSS)]
    width = 1 + len(ways) + sum(len(each) for each in columns)
    rows = []
    start = 1 + len(ways)
    for axis, each in enumerate(columns):
        room = np.zeros(width)
        room[0], room[start : start + len(each)] = -sheet[1 - axis], 1
        rows.append(room)
        lengths = sorted({way[axis] for _, way in ways})
        for number, length in enumerate(lengths):
            packed = np.zeros(width)
            for at, (_, way) in enumerate(ways):
                packed[1 + at] = way[1 - axis] if way[axis] == length else 0
            packed[start : start + len(each)] = [-counts[number] for counts in each]
            rows.append(packed)
        start += len(each)
    lying = np.zeros((len(asked.sizes), width))
    for number, (at, _) in enumerate(ways):
        lying[at, 1 + number] = 1
    answer = linprog(
        np.eye(1, width)[0],
        A_ub=np.array(rows),
        b_ub=np.zeros(len(rows)),
        A_eq=lying,
        b_eq=[each.demand for each in asked.sizes],
    )
    return float(answer.fun)


def patterns(asked: Question, axis: Axis) -> list[tuple[int, ...]]:
    """Every row of pieces, by length from short to long."""
    lengths = sorted({way[axis] for each in asked.sizes for way in each.ways})
    most = [
        sum(each.demand for each in asked.sizes if length in {way[axis] for way in each.ways})
        for length in lengths
    ]
    room = asked.sheets[0][axis]
    return [
        counts
        for counts in product(
            *(range(min(a, room // b) + 1) for a, b in zip(most, lengths, strict=True))
        )
        if sum(map(int.__mul__, counts, lengths)) <= room
    ]


LISTS = (
    ask((100, 60), size(41, 23, 7), size(35, 29, 5), size(26, 17, 9)),
    ask((100, 60), size(41, 23, 7, turns=True), size(35, 29, 5), size(26, 17, 9, turns=True)),
    ask((244, 122), size(110, 47, 8), size(71, 40, 6, turns=True), size(95, 33, 5)),
    ask((30, 30), size(11, 11, 9, turns=True), size(14, 8, 12, turns=True), size(6, 17, 4)),
)


@pytest.mark.parametrize("asked", LISTS)
def test_no_pattern_is_missed(asked: Question) -> None:
    best = Best(asked, 10**6)
    rows = Rows(asked, ALONG), Rows(asked, ACROSS)
    (sheet,) = asked.sheets
    along = Scale(weights=rows[ALONG].plain().weights, holds=(sheet.length,))
    across = Scale(weights=rows[ACROSS].plain().weights, holds=(sheet.width,))

    bars(best, rows, (along, across), "bars")

    true = with_every_pattern(asked)
    assert best.cost == int(np.ceil(true - 1e-9))


def test_pieces_that_cannot_lie_in_one_row_need_more_than_their_area() -> None:
    """Along a row of 10 lie 6 and 3, or 3, 3 and 3, never 10: with the 6s in every row, a tenth
    of each sheet is lost, so 20 rows of 6 and 20 of 3 fill two sheets and no more."""
    asked = ask((10, 10), size(6, 1, 20), size(3, 1, 21))
    best = Best(asked, 10)
    rows = Rows(asked, ALONG), Rows(asked, ACROSS)

    bars(best, rows, (rows[0].plain(), rows[1].plain()), "bars")

    assert sum(each.area * each.demand for each in asked.sizes) <= 2 * 100
    assert best.cost == 3
