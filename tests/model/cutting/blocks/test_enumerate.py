"""All blocks of short lists, against the plainest search."""

from random import Random

import pytest

from model.cutting.blocks.enumerate import Blocks, blocks
from model.cutting.bounds.question import Question
from tests.model.cutting.blocks.sawn import check_pieces, plain_blocks, saw
from tests.model.cutting.bounds.questions import ask, size


def found(asked: Question, most: int = 20_000) -> Blocks:
    answer = blocks(asked, most)
    assert answer is not None
    return answer


def multisets(answer: Blocks) -> set[tuple[int, ...]]:
    return set(map(tuple, answer.counts.all(answer.boxes.keys).tolist()))


def drawn(seed: int) -> Question:
    """Few pieces of odd sizes, so that sums seldom fill a sheet: where boxes are told apart by
    what still fits beside them, not by a hair of their size."""
    draw = Random(seed)
    side = draw.choice((12, 30, 97))
    sizes = (
        size(
            draw.randint(side // 5, side * 2 // 3),
            draw.randint(side // 5, side * 2 // 3),
            draw.randint(1, 3),
            draw.random() < 0.4,
        )
        for _ in range(draw.randint(2, 3))
    )
    return ask((side, draw.randint(side * 2 // 3, side)), *sizes)


@pytest.mark.parametrize("seed", range(60))
def test_no_multiset_that_fits_a_sheet_is_missed_or_made_up(seed: int) -> None:
    asked = drawn(seed)

    answer = found(asked)

    assert answer.is_complete
    assert multisets(answer) == plain_blocks(asked)


@pytest.mark.parametrize("seed", range(20))
def test_each_block_can_be_sawn_into_its_pieces(seed: int) -> None:
    asked = drawn(seed)
    answer = found(asked)

    for at in range(len(answer.boxes)):
        tree = answer.tree(at)
        pieces = check_pieces(asked, saw(tree, tree.length, tree.width))
        counts = answer.counts.all(answer.boxes.keys[at : at + 1])[0]
        assert [pieces[number] for number in range(len(asked.sizes))] == counts.tolist()
        assert (tree.length, tree.width) == (answer.boxes.lengths[at], answer.boxes.widths[at])


def test_a_long_list_is_given_up_and_says_so() -> None:
    asked = ask((2440, 1220), *(size(100 + 7 * at, 90 + 5 * at, 20, True) for at in range(5)))

    assert not found(asked, most=500).is_complete


def test_too_many_sizes_to_count_are_refused() -> None:
    asked = ask((2440, 1220), *(size(100 + at, 90 + at, 200) for at in range(40)))

    assert blocks(asked) is None
