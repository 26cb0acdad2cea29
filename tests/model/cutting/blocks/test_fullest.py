"""One sheet filled for the most value: published optima, and every list of pieces tried."""

from collections import Counter
from random import Random

import pytest

from model.cutting.blocks.fullest import Filled, Filler
from model.cutting.bounds.question import Question, Size
from tests.model.cutting.blocks.sawn import check_pieces, plain_blocks, saw
from tests.model.cutting.bounds.questions import ask, size

ALL = 10**6

# Christofides, Whitlock, An algorithm for two-dimensional cutting problems, Operations Research
# 25:30-44, 1977, first instance (cgcut1): length, width, demand, value; sheet 15 x 10; 244.
CGCUT1 = (
    *((8, 4, 2, 66), (3, 7, 1, 35), (8, 2, 3, 24), (3, 4, 5, 17), (3, 3, 2, 11), (3, 2, 2, 8)),
    (2, 1, 1, 2),
)

# Beasley, Algorithms for unconstrained two-dimensional guillotine cutting, Journal of the
# Operational Research Society 36:297-306, 1985 (gcut1), one of each: length, width; sheet
# 250 x 250, value by area; 48368 as collected in Furini, Malaguti, Thomopoulos, INFORMS Journal
# on Computing 28(4), 2016 (as is the 244 above).
GCUT1 = (
    *((167, 184), (114, 118), (167, 152), (83, 140), (70, 86), (143, 166), (120, 160), (66, 148)),
    *((87, 141), (69, 165)),
)


def best(asked: Question, values: list[int], width: int = ALL) -> Filled:
    filled = Filler(asked, 0).best_filled(values, width)
    assert filled is not None
    sheet = asked.sheets[0]
    counts = check_pieces(asked, saw(filled.pattern.tree, sheet.length, sheet.width))
    assert counts == +Counter(dict(enumerate(filled.pattern.counts)))
    assert all(counts[at] <= each.demand for at, each in enumerate(asked.sizes))
    assert filled.value == sum(values[at] * count for at, count in counts.items())
    return filled


def test_cgcut1_reaches_its_published_value() -> None:
    asked = ask((15, 10), *(size(*each[:3]) for each in CGCUT1))

    filled = best(asked, [each[3] for each in CGCUT1])

    assert (filled.value, filled.is_best) == (244, True)


def test_gcut1_reaches_its_published_value() -> None:
    asked = ask((250, 250), *(size(*each) for each in GCUT1))

    filled = best(asked, [length * width for length, width in GCUT1])

    assert (filled.value, filled.is_best) == (48368, True)


def drawn(seed: int) -> tuple[Question, list[int]]:
    draw = Random(seed)
    sizes: list[Size] = [
        size(draw.randint(15, 60), draw.randint(15, 50), draw.randint(1, 2), draw.random() < 0.4)
        for _ in range(4)
    ]
    return ask((100, 60), *sizes), [draw.randint(0, 50) for _ in sizes]


@pytest.mark.parametrize("seed", range(40))
def test_no_pieces_that_fit_are_worth_more(seed: int) -> None:
    asked, values = drawn(seed)
    true = max(sum(map(int.__mul__, counts, values)) for counts in plain_blocks(asked))

    filled = best(asked, values)

    assert (filled.value, filled.is_best) == (true, True)


@pytest.mark.parametrize("seed", range(40))
def test_a_narrow_search_says_best_only_of_the_best(seed: int) -> None:
    asked, values = drawn(seed)
    true = best(asked, values).value

    narrow = best(asked, values, width=3)

    assert narrow.value <= true
    assert not narrow.is_best or narrow.value == true


def test_a_sheet_too_small_for_all_that_is_worth_something_stays_empty() -> None:
    asked = ask((100, 60), size(50, 30, 4))

    assert Filler(asked, 0).best_filled([0], ALL) is None
