"""Scales and their products, by hand."""

from model.cutting.bounds.cover import Weighing
from model.cutting.bounds.question import ACROSS, ALONG, Sheet
from model.cutting.bounds.scale import Rows, product
from tests.model.cutting.bounds.questions import ask, asks, size


def test_a_row_holds_what_sums_of_lengths_can_reach() -> None:
    """Along 100 lie 45 and 45, across 60 lie 20, 20 and 20."""
    asked = ask((100, 60), size(45, 20, 9))

    assert Rows(asked, ALONG).plain().holds == (90,)
    assert Rows(asked, ACROSS).plain().holds == (60,)


def test_a_row_holds_no_more_pieces_than_there_are() -> None:
    asked = ask((100, 60), size(45, 20, 1), size(30, 30, 1))

    assert Rows(asked, ALONG).plain().holds == (75,)


def test_a_row_of_a_small_sheet_holds_only_what_fits_that_sheet() -> None:
    """50 x 40 is too wide for the strip, though not too long."""
    asked = asks((Sheet(100, 60, None, 1), Sheet(100, 30, 1, 0)), size(50, 40, 2), size(20, 20, 2))

    assert Rows(asked, ALONG).plain().holds == (100, 40)


def test_a_piece_that_may_turn_weighs_the_least_of_its_ways() -> None:
    """Along, what is over 50 weighs 1; across, what is over 10. The piece that may lie 20 along
    weighs nothing; of the others one lies in a row along, two across (20 + 31 in 60)."""
    asked = ask((100, 60), size(51, 31, 3), size(51, 20, turns=True))
    along = Rows(asked, ALONG).scale([int(each > 50) for each in (20, 51)])
    across = Rows(asked, ACROSS).scale([int(each > 10) for each in (20, 31, 51)])

    assert product(asked, along, across) == Weighing(total=3, holds=(2,))
