"""Trees laid out by hand; expected batches follow from what must be cut before what."""

from model.cutting.order import batches, distinct_settings, setting_changes
from model.cutting.record import Plan, Region, Stock, Task, Wishes
from tests.checkers.by_hand import crosscut, layout, offcut, piece, rip, strip, waste

SHEET = Stock(key="sheet", length=1000.0, width=600.0)
TASK = Task(kind="sheets", pieces=(), stock=(SHEET,), kerf=0.0, wishes=Wishes())


def plan(*trees: object) -> Plan:
    laid = (layout(number, SHEET, tree) for number, tree in enumerate(trees, 1))  # type: ignore[arg-type]
    return Plan(task=TASK, layouts=tuple(laid))


def stepwise(found: Plan) -> list[tuple[str, float, list[int]]]:
    return [
        (each.setting.way, each.setting.distance, [step.layout for step in each.steps])
        for each in batches(found)
    ]


def cut(
    way: str, size: float, low: object = offcut, high: object = offcut, **told: object
) -> object:
    make = rip if way == "rip" else crosscut
    return make(size, low, high, kerf=0.0, **told)  # type: ignore[arg-type]


def test_a_setting_serves_all_sheets() -> None:
    strips = cut("rip", 200.0, cut("crosscut", 300.0), cut("rip", 200.0))

    found = plan(strips, strips)

    assert stepwise(found) == [("rip", 200.0, [1, 1, 2, 2]), ("crosscut", 300.0, [1, 2])]
    assert [step.number for each in batches(found) for step in each.steps] == [1, 2, 3, 4, 5, 6]


def test_a_cut_waits_for_its_parent() -> None:
    """Sheet 1 needs 300 before 200, sheet 2 the other way round: one of them is set twice."""
    found = plan(
        cut("rip", 300.0, high=cut("rip", 200.0)), cut("rip", 200.0, high=cut("rip", 300.0))
    )

    assert distinct_settings(found) == 2
    assert setting_changes(found) == 3


def test_what_can_be_finished_is_made_first() -> None:
    """200 is ready twice, but a third cut of it waits behind 300: 300 first spares a setting."""
    found = plan(
        cut("rip", 200.0),
        cut("rip", 200.0),
        cut("rip", 300.0, high=cut("rip", 200.0)),
    )

    assert stepwise(found) == [("rip", 300.0, [3]), ("rip", 200.0, [1, 2, 3])]


def test_trims_are_settings_of_their_own() -> None:
    found = plan(cut("rip", 10.0, low=waste, is_trim=True, high=cut("rip", 10.0)))

    assert [each.setting.is_trim for each in batches(found)] == [True, False]


def test_a_trim_is_what_is_taken_off_at_either_end_and_the_kerf_with_it() -> None:
    """What stays differs from board to board; 22 mm and a kerf of 3 go off every end."""
    far = crosscut(950.0, offcut, waste, kerf=3.0, is_trim=True)
    near = crosscut(22.0, waste, far, kerf=3.0, is_trim=True)

    (batch,) = batches(plan(near))

    assert batch.setting == ("crosscut", 25.0, True)
    assert len(batch.steps) == 2


def test_a_cut_beside_a_bad_span_that_frees_good_wood_on_both_sides_is_no_trim() -> None:
    found = plan(cut("crosscut", 400.0, low=offcut, high=offcut, is_trim=True))

    assert batches(found)[0].setting == ("crosscut", 400.0, False)


def test_where_the_blade_leaves_nothing_before_it_what_lies_behind_is_measured() -> None:
    behind = Region(x=3.0, y=0.0, length=997.0, width=600.0, use="offcut")
    tree = Region(
        x=0.0, y=0.0, length=1000.0, width=600.0, cut="crosscut", at=0.0, kerf=3.0, high=behind
    )

    (batch,) = batches(plan(lambda _: tree))

    assert batch.setting.distance == 997.0


def test_cuts_that_wait_for_milling_are_left_out() -> None:
    row = strip("short", cut("crosscut", 100.0, piece("A", 1), piece("A", 2)), stays_whole=True)

    assert stepwise(plan(cut("rip", 50.0, row))) == [("rip", 50.0, [1])]
