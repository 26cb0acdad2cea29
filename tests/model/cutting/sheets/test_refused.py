"""What cannot be cut is said in a sentence, and the rest is planned."""

from model.cutting.plan import plan
from model.cutting.record import Box, Effort, Piece, Plan, Stock, Task, Trim
from tests.checkers.plans import faults

SHORT = Effort(tries=20, moves=60, nodes=50)
SMALL = Piece(mark="A", length=400.0, width=200.0)


def planned(*pieces: Piece, kerf: float = 3.0, stock: tuple[Stock, ...] | None = None) -> Plan:
    sheet = Stock(key="s", length=2440.0, width=1220.0, trim=Trim(lower=6.0, left=6.0))
    made = plan(
        Task(kind="sheets", pieces=pieces, stock=(sheet,) if stock is None else stock, kerf=kerf),
        SHORT,
    )
    assert faults(made) == []
    return made


def sentence(made: Plan, mark: str) -> str:
    (left,) = [each for each in made.left_out if each.mark == mark]
    return left.sentence


def placed(made: Plan) -> set[str]:
    return {each.mark for layout in made.layouts for each in layout.placed}


def test_a_piece_larger_than_every_sheet_is_told_what_would_do() -> None:
    made = planned(SMALL, Piece(mark="B", length=2600.0, width=300.0, quantity=2))

    assert "at least 2606 x 306 mm would do" in sentence(made, "B")
    assert "two pieces" in sentence(made, "B")
    assert [(each.mark, each.quantity) for each in made.left_out] == [("B", 2)]
    assert placed(made) == {"A"}


def test_a_piece_that_fits_only_across_the_grain_is_told_so() -> None:
    made = planned(SMALL, Piece(mark="B", length=2000.0, width=900.0, grain="width"))

    assert "grain across" in sentence(made, "B")


def test_a_piece_that_fits_only_over_a_knot_is_told_so() -> None:
    knotty = Stock(key="k", length=1000.0, width=600.0, bad=(Box(450.0, 250.0, 550.0, 350.0),))

    made = planned(SMALL, Piece(mark="B", length=900.0, width=500.0), stock=(knotty,))

    assert "bad wood" in sentence(made, "B")
    assert placed(made) == {"A"}


def test_without_stock_every_piece_is_left_out() -> None:
    none = Stock(key="s", length=2440.0, width=1220.0, quantity=0)
    for stock in ((), (none,)):
        made = planned(SMALL, stock=stock)

        assert "There is no sheet" in sentence(made, "A")
        assert made.layouts == () and made.value == made.lower_bound == 0.0


def test_when_the_stock_is_used_up_as_much_as_can_be_is_planned() -> None:
    """Three of 400 x 600 fill 1200 x 600; the fourth and the small one have no place."""
    one = Stock(key="s", length=1200.0, width=600.0, quantity=1)
    large = Piece(mark="L", length=400.0, width=600.0, quantity=4)

    made = planned(large, SMALL, stock=(one,), kerf=0.0)

    assert {(each.mark, each.quantity) for each in made.left_out} == {("L", 1), ("A", 1)}
    assert "used up" in sentence(made, "L")


def test_a_row_longer_than_any_sheet_is_cut_one_by_one() -> None:
    row = Piece(mark="F", length=900.0, width=200.0, quantity=3, row="fronts")

    made = planned(row)

    assert made.left_out == ()
    assert "row fronts" in made.notes[0]


def test_a_kerf_wider_than_a_piece_is_noted() -> None:
    made = planned(Piece(mark="T", length=300.0, width=2.0), kerf=3.0)

    assert "sawdust" in made.notes[0]
    assert placed(made) == {"T"}


def test_no_pieces_need_no_sheets() -> None:
    made = planned()

    assert made.layouts == () and made.is_proven
