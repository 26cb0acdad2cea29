"""Settings counted by hand; extents are with kerf."""

from model.cutting.sheets.settings import ordered, sawn, spared
from model.cutting.sheets.survey import CROSSCUT_KIND, RIP_KIND, survey
from tests.model.cutting.sheets.stacks import crosscut, leaf, rip


def test_what_fills_the_wood_spares_a_cut() -> None:
    full = survey(rip(leaf(100, 20), leaf(100, 40)), 100, 60)
    loose = survey(rip(leaf(100, 20), leaf(100, 30)), 100, 60)

    assert (full.cuts, full.rests) == (1, ())
    assert (loose.cuts, loose.rests) == (2, ((100, 10),))


def test_a_piece_smaller_than_its_strip_is_trimmed() -> None:
    found = survey(crosscut(leaf(50, 60), leaf(50, 40)), 100, 60)

    assert [(row.kind, row.members) for row in found.rows] == [
        (CROSSCUT_KIND, ((50, -1), (50, 1))),
        (RIP_KIND, ((40, -1),)),
    ]
    assert found.rests == ((50, 20),)


def test_the_blade_goes_as_far_as_the_wood_is_wide() -> None:
    assert survey(rip(leaf(100, 20), leaf(100, 30)), 100, 60).length == 200


def test_the_setting_that_nothing_else_needs_is_spared() -> None:
    """One of 20 and 40 needs no cut in the full strip; 40 is cut elsewhere anyway."""
    rows = [
        *survey(rip(leaf(100, 40), leaf(100, 20)), 100, 60).rows,
        *survey(leaf(100, 40), 100, 60).rows,
    ]

    assert spared(rows) == ({(RIP_KIND, 40)}, [1, -1])


def test_members_are_cut_in_the_order_that_serves_the_settings() -> None:
    """Sheet 1 holds 20 inside a strip of 30: ripped last, 20 is set once for all."""
    inner = crosscut(leaf(60, 30), leaf(40, 20))
    first = survey(rip(leaf(100, 20), inner), 100, 60).rows
    second = survey(rip(leaf(100, 20), leaf(100, 30)), 100, 60).rows
    moved = tuple(
        row._replace(
            members=tuple((e, at + len(first) if at >= 0 else at) for e, at in row.members)
        )
        for row in second
    )

    found = sawn([*first, *moved], [0, len(first)])

    assert found.changes == 3  # rip 30, crosscut, rip 20
    assert found.order[len(first)][0] == 1


def test_a_tree_is_put_into_the_order_of_its_cuts() -> None:
    tree = rip(leaf(100, 20), leaf(100, 30))
    rows = survey(tree, 100, 60).rows

    assert ordered(tree, rows, [(1, 0)], 0) == rip(leaf(100, 30), leaf(100, 20))
