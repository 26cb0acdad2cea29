"""Bounds from the larger pieces alone: never above what is enough, and worth their while."""

import pytest

from model.cutting.blocks.floor import floor
from model.cutting.bounds import bound_of
from tests.model.cutting.bounds.questions import A43, ask, cut_at_random, size

OUT_OF_REACH = 10**9
NODES = 100


@pytest.mark.parametrize("seed", range(30))
def test_what_was_cut_from_some_sheets_never_needs_dearer_ones(seed: int) -> None:
    """They were cut from edge to edge, so this floor holds for them."""
    asked, cost = cut_at_random(seed)

    assert 0 <= floor(asked, OUT_OF_REACH, NODES, most=1000) <= cost


def test_a_published_list_reaches_its_optimum_by_its_larger_pieces() -> None:
    """A43 takes 7 sheets (source beside the list)."""
    assert floor(ask((2750, 1220), *(size(*each) for each in A43)), OUT_OF_REACH, NODES) == 7


def test_a_saw_needs_more_than_a_bound_for_any_layout_says() -> None:
    """Two strips of 2 x 1 lengthwise and two crosswise go around a hole in 3 x 3, where no cut
    runs from edge to edge; with many small pieces beside them all blocks could not be tried."""
    strips = size(200, 100, 2), size(100, 200, 2)
    crumbs = tuple(size(10 + at, 9, 9) for at in range(6))
    asked = ask((300, 300), *strips, *crumbs)

    assert bound_of(asked, OUT_OF_REACH).cost == 1
    assert floor(asked, OUT_OF_REACH, NODES) == 2


def test_it_is_looked_for_no_further_than_asked() -> None:
    """The two largest sizes take a sheet for each of their six pieces, the third six more."""
    asked = ask((100, 100), size(60, 70, 3), size(65, 60, 3), size(55, 60, 6))

    assert floor(asked, 6, NODES) == 6
    assert floor(asked, 12, NODES) == 12
