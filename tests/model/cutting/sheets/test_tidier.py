"""The same sheets, cut in fewer settings or with a larger offcut."""

from dataclasses import replace

from model.cutting.order import distinct_settings, setting_changes
from model.cutting.plan import AT_ONCE, plan
from model.cutting.record import Effort, Piece, Plan, Stock, Task, Wishes
from tests.properties.cut_lists import bed_list

MOVES = Effort(tries=60, moves=1200, nodes=100)


def largest(found: Plan) -> float:
    return max((each.area for layout in found.layouts for each in layout.offcuts), default=0.0)


def test_settings_are_fewer_than_in_the_first_plan() -> None:
    task = bed_list(0)
    first, found = plan(task, AT_ONCE), plan(task, MOVES)

    assert found.value <= first.value
    assert setting_changes(found) < setting_changes(first)
    assert setting_changes(found) <= 1.2 * distinct_settings(found)


def test_the_offcut_comes_first_where_the_maker_wishes_that() -> None:
    task = bed_list(0)
    wished = replace(task, wishes=Wishes(offcut_before_settings=True))

    usual, larger = plan(task, MOVES), plan(wished, MOVES)

    assert largest(larger) >= largest(usual)
    assert setting_changes(larger) >= setting_changes(usual)


def test_the_first_cut_of_a_heavy_sheet_is_near_its_middle() -> None:
    """Six strips of 200 fill 1215 x 2440 with kerfs of 3: the first cut parts three from three."""
    sheet = Stock(key="s", length=2440.0, width=1215.0, kg_per_m2=12.0)
    piece = Piece(mark="A", length=1000.0, width=200.0, quantity=12)

    found = plan(Task(kind="sheets", pieces=(piece,), stock=(sheet,), kerf=3.0), MOVES)

    for layout in found.layouts:
        shares = [part.area / layout.tree.area for part in layout.tree.parts]
        assert max(shares) <= 0.6


def test_each_better_plan_is_told_and_the_last_is_the_answer() -> None:
    told: list[Plan] = []

    found = plan(bed_list(3), MOVES, told.append)

    assert told[-1] == found
    assert [each.value for each in told] == sorted((each.value for each in told), reverse=True)


def test_a_stop_is_obeyed_with_a_plan_in_hand() -> None:
    told: list[Plan] = []

    found = plan(bed_list(3), Effort(), told.append, lambda: True)

    assert told == [found]
    assert found.layouts
