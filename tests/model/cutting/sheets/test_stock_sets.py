"""Sets of sheets counted by hand."""

from model.cutting.record import Piece, Stock, Task
from model.cutting.sheets.blank import blanks
from model.cutting.sheets.depot import Depot
from model.cutting.sheets.stock_sets import cheaper
from model.cutting.whole import whole


def depot(*stock: Stock, quantity: int = 8) -> Depot:
    """Pieces of a quarter of a square metre each."""
    piece = Piece(mark="A", length=500.0, width=500.0, quantity=quantity)
    made = whole(Task(kind="sheets", pieces=(piece,), stock=stock, kerf=0.0))
    return Depot(made, blanks(made))


def test_of_one_kind_it_is_one_sheet_less() -> None:
    sheet = Stock(key="s", length=1000.0, width=1000.0)

    assert cheaper(depot(sheet), 4) == [(3,)]


def test_less_than_the_area_of_the_pieces_is_not_tried() -> None:
    sheet = Stock(key="s", length=1000.0, width=1000.0)

    assert cheaper(depot(sheet), 2) == []


def test_of_two_kinds_only_what_spends_the_purse() -> None:
    """For less than 100 and 2 m2 at least: a large one and two small ones, or five small ones."""
    large = Stock(key="l", length=2000.0, width=1000.0, price=50.0)
    small = Stock(key="s", length=1000.0, width=1000.0, price=19.0)
    made = depot(large, small)

    sets = cheaper(made, round(100 / made.whole.worth))

    assert sets == [(0, 5), (1, 2)]


def test_what_is_on_hand_is_in_every_set() -> None:
    sheet = Stock(key="s", length=1000.0, width=1000.0)
    left = Stock(key="o", length=1000.0, width=500.0, on_hand=True, quantity=2)

    assert cheaper(depot(sheet, left), 2) == [(1, 2)]
