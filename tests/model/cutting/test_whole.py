"""Expected numbers are worked out by hand from the sizes as typed."""

from model.cutting.record import Box, Piece, Stock, Task, Trim
from model.cutting.whole import whole


def task(*pieces: Piece, kerf: float = 3.0, **stock: object) -> Task:
    sheet = Stock(key="sheet", length=2440.0, width=1220.0, **stock)  # type: ignore[arg-type]
    return Task(kind="sheets", pieces=pieces, stock=(sheet,), kerf=kerf)


def test_pieces_that_just_fit_in_128ths_of_an_inch_do_fit() -> None:
    """96 in are eight pieces of 11 7/8 in and 1/128 in, with seven kerfs of 17/128 in (and one of
    them more behind the last): 8 x 1521/128 + 8 x 15/128 = 96 in.
    """
    inch = 25.4
    sheet = Stock(key="s", length=96 * inch - 15 / 128 * inch, width=100.0)
    piece = Piece(mark="A", length=1521 / 128 * inch, width=100.0, quantity=8)

    made = whole(Task(kind="sheets", pieces=(piece,), stock=(sheet,), kerf=15 / 128 * inch))

    assert 8 * made.sizes[0].along == made.sheets[0].length


def test_the_kerf_is_folded_into_pieces_and_room() -> None:
    made = whole(task(Piece(mark="A", length=400.0, width=200.0), trim=Trim(5.0, 6.0, 7.0, 8.0)))

    (size,), (sheet,) = made.sizes, made.sheets
    assert made.mm(size.along) == 403.0 and made.mm(size.across) == 203.0
    assert made.mm(sheet.length) == 2440 - 7 - 8 + 3
    assert made.mm(sheet.width) == 1220 - 5 - 6 + 3


def test_grain_across_is_turned_beforehand_and_not_again() -> None:
    made = whole(task(Piece(mark="A", length=400.0, width=200.0, grain="width")))

    (size,) = made.sizes
    assert (made.mm(size.along), made.mm(size.across)) == (203.0, 403.0)
    assert size.units[0].turned
    assert len(made.ways(size, made.sheets[0])) == 1


def test_without_grain_anything_may_be_turned() -> None:
    made = whole(task(Piece(mark="A", length=400.0, width=200.0), has_grain=False))

    assert len(made.ways(made.sizes[0], made.sheets[0])) == 2


def test_alike_pieces_of_several_marks_are_one_size() -> None:
    made = whole(
        task(
            Piece(mark="A", length=400.0, width=200.0, quantity=2),
            Piece(mark="B", length=200.0, width=400.0, grain="width"),
        )
    )

    assert [size.demand for size in made.sizes] == [3]


def test_a_row_is_one_piece_with_kerfs_between_its_members() -> None:
    made = whole(
        task(
            Piece(mark="A", length=400.0, width=200.0, quantity=2, row="fronts"),
            Piece(mark="B", length=300.0, width=200.0, row="fronts", first=4),
        )
    )

    (size,) = made.sizes
    assert made.mm(size.along - made.kerf) == 400 + 3 + 400 + 3 + 300
    assert [piece[:2] for piece in size.units[0].pieces] == [("A", 1), ("A", 2), ("B", 4)]


def test_bad_spans_are_told_from_the_corner_of_the_room() -> None:
    made = whole(task(trim=Trim(lower=10.0, left=20.0), bad=(Box(0.0, 0.0, 100.0, 50.0),)))

    assert [[made.mm(each) for each in span] for span in made.sheets[0].bad] == [[0, 0, 80, 40]]


def test_sheets_of_several_sizes_without_prices_are_compared_by_area() -> None:
    large = Stock(key="large", length=2000.0, width=1000.0)
    small = Stock(key="small", length=1000.0, width=1000.0)
    left = Stock(key="left", length=500.0, width=500.0, on_hand=True, quantity=1)

    made = whole(Task(kind="sheets", pieces=(), stock=(large, small, left), kerf=0.0))

    assert made.measure == "area"
    assert [sheet.cost * made.worth for sheet in made.sheets] == [2e6, 1e6, 0.0]


def test_prices_count_where_all_that_is_bought_is_priced() -> None:
    large = Stock(key="large", length=2000.0, width=1000.0, price=64.95)
    small = Stock(key="small", length=1000.0, width=1000.0, price=35.5)

    made = whole(Task(kind="sheets", pieces=(), stock=(large, small), kerf=0.0))

    assert made.measure == "price"
    assert [round(sheet.cost * made.worth, 6) for sheet in made.sheets] == [64.95, 35.5]
