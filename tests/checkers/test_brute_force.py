"""Looking at every way to cut needs as many sheets as can be seen by eye."""

from __future__ import annotations

from model.cutting.record import Piece, Stock, Task
from tests.checkers.brute_force import fewest_sheets

SHEET = Stock(key="S", length=100.0, width=100.0)


def asked(*pieces: Piece, kerf: float = 0.0) -> Task:
    return Task(kind="sheets", pieces=pieces, stock=(SHEET,), kerf=kerf)


def test_quarters_fill_a_sheet_and_with_a_kerf_no_longer() -> None:
    quarters = Piece(mark="Q", length=50.0, width=50.0, quantity=4)

    assert fewest_sheets(asked(quarters)) == 1
    assert fewest_sheets(asked(quarters, kerf=1.0)) == 4


def test_a_pinwheel_fits_one_sheet_but_no_cut_goes_through() -> None:
    """Four pieces 60 x 40 around a hole of 20 x 20: the least layout that is not cut edge to edge.

    Cut edge to edge, three fit: two in one strip of 40 need 120 of 100.
    """
    pinwheel = Piece(mark="W", length=60.0, width=40.0, quantity=4, grain="free")

    assert fewest_sheets(asked(pinwheel)) == 2


def test_what_fits_no_sheet_has_no_answer() -> None:
    assert fewest_sheets(asked(Piece(mark="L", length=101.0, width=10.0))) is None
