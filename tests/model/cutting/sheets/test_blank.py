"""Rooms that are left around bad spans, worked out by hand."""

from model.cutting.record import Box, Stock, Task, Trim
from model.cutting.sheets.blank import Blank, blanks
from model.cutting.whole import Whole, whole


def made_of(*bad: Box, kerf: float = 4.0, trim: Trim = Trim()) -> tuple[Whole, tuple[Blank, ...]]:  # noqa: B008
    stock = Stock(key="s", length=1000.0, width=600.0, bad=bad, trim=trim)
    made = whole(Task(kind="sheets", pieces=(), stock=(stock,), kerf=kerf))
    return made, blanks(made)[0]


def rooms(made: Whole, blank: Blank) -> list[tuple[float, float]]:
    return sorted((made.mm(x - made.kerf), made.mm(y - made.kerf)) for x, y in blank.rooms)


def test_a_clean_sheet_is_one_room() -> None:
    made, (blank,) = made_of(trim=Trim(lower=10.0, left=20.0))

    assert rooms(made, blank) == [(980.0, 590.0)]


def test_a_knot_leaves_four_rooms_either_way() -> None:
    """Knot from 400 to 500 along and 200 to 300 up; blades of 4 mm run inside it."""
    made, (ripped, crosscut) = made_of(Box(400.0, 200.0, 500.0, 300.0))

    assert rooms(made, ripped) == [
        (400.0, 92.0), (500.0, 92.0), (1000.0, 200.0), (1000.0, 300.0)
    ]  # fmt: skip
    assert rooms(made, crosscut) == [
        (92.0, 200.0), (92.0, 300.0), (400.0, 600.0), (500.0, 600.0)
    ]  # fmt: skip


def test_a_split_right_across_leaves_the_wood_before_and_behind() -> None:
    made, (blank,) = made_of(Box(300.0, 0.0, 310.0, 600.0))

    assert rooms(made, blank) == [(300.0, 600.0), (690.0, 600.0)]


def test_a_split_finer_than_the_blade_costs_the_blade() -> None:
    made, (blank,) = made_of(Box(300.0, 0.0, 301.0, 600.0))

    assert rooms(made, blank) == [(300.0, 600.0), (696.0, 600.0)]


def test_a_bad_edge_is_cut_off_with_one_blade() -> None:
    made, (blank,) = made_of(Box(0.0, 0.0, 1000.0, 50.0))

    assert rooms(made, blank) == [(1000.0, 550.0)]


def test_a_sheet_that_is_bad_all_over_has_no_room() -> None:
    made, (blank,) = made_of(Box(0.0, 0.0, 1000.0, 600.0))

    assert blank.rooms == ()
