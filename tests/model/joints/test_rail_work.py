"""What is cut into the rails of a frame meets the stiles and panels that stand between them."""

from __future__ import annotations

from dataclasses import replace

import pytest

from model.joints.end_joint import EndJoint, member_dowels
from model.joints.pocket import screw_for
from model.joints.rail_work import RailWork
from model.part import Cut, Face

TENON = EndJoint(kind="mortise and tenon", adds=25, reach=26.6, tenon_thickness=7)
DOWEL = EndJoint(kind="dowel", reach=21.6, dowel_diameter=8, dowel_length=40)
POCKET = EndJoint(kind="pocket screw", screw=screw_for(21, "frame_stock"))

RUN_FROM = 66.0
STILES = ((66.0, 116.0), (735.0, 785.0), (1404.0, 1454.0))
TOP = (1388.0, 102.0, 21.0)  # as long as the stiles' run: 1454 - 66
WORK = RailWork(
    joint=TENON, stiles=STILES, shoulders=((6, 6),) * 3, grooves=((106.0, 745.0),), groove_width=6,
    groove_depth=10, starts_at=RUN_FROM,
)  # fmt: skip


def of_kind(cuts: tuple[Cut, ...], kind: str) -> list[Cut]:
    return [cut for cut in cuts if cut.kind == kind]


def test_each_stile_has_its_mortise_where_it_meets_the_rail() -> None:
    mortises = of_kind(WORK.on_edge(TOP, Face.LOWER).cuts, "mortise")

    assert [(m.low[0] + RUN_FROM, m.high[0] + RUN_FROM) for m in mortises] == [
        (start + 6, end - 6) for start, end in STILES
    ]


@pytest.mark.parametrize(("edge", "from_width"), [(Face.LOWER, 0.0), (Face.UPPER, 102 - 26.6)])
def test_mortises_open_at_the_edge_that_looks_at_the_opening(edge: Face, from_width: float) -> None:
    for mortise in of_kind(WORK.on_edge(TOP, edge).cuts, "mortise"):
        assert mortise.low[1] == pytest.approx(from_width)
        assert mortise.high[1] - mortise.low[1] == pytest.approx(26.6)
        assert mortise.face is edge


def test_mortises_lie_in_the_middle_of_the_rails_thickness() -> None:
    for mortise in of_kind(WORK.on_edge(TOP, Face.LOWER).cuts, "mortise"):
        assert (mortise.low[2], mortise.high[2]) == ((21 - 7) / 2, (21 + 7) / 2)


def test_panels_have_their_groove_in_the_rail() -> None:
    (groove,) = of_kind(WORK.on_edge(TOP, Face.LOWER).cuts, "groove")

    assert (groove.low[0] + RUN_FROM, groove.high[0] + RUN_FROM) == (106, 745)
    assert (groove.low[1], groove.high[1]) == (0, 10)
    assert (groove.low[2], groove.high[2]) == (7.5, 13.5)


def test_a_rail_with_its_own_tenons_is_cut_as_far_in_again() -> None:
    """The foot's rail is longer by its tenon: shoulders, not ends, stand at the posts."""
    plain = WORK.on_edge(TOP, Face.LOWER).cuts

    with_tenons = WORK.on_edge((1388.0 + 2 * 25, 102.0, 21.0), Face.LOWER, added=25).cuts

    moved = [(b.low[0] - a.low[0], b.high[0] - a.high[0]) for a, b in zip(plain, with_tenons)]  # noqa: B905
    assert moved == [(25, 25)] * len(plain)


def test_both_rails_are_cut_alike_along_their_run() -> None:
    top, bottom = WORK.on_edge(TOP, Face.LOWER), WORK.on_edge((1388.0, 45.0, 21.0), Face.UPPER)

    assert [(c.low[0], c.high[0]) for c in top.cuts] == [(c.low[0], c.high[0]) for c in bottom.cuts]


def test_dowel_holes_stand_where_the_stiles_have_theirs() -> None:
    holes = replace(WORK, joint=DOWEL, grooves=()).on_edge(TOP, Face.LOWER).holes

    in_stile = member_dowels(DOWEL, 50, lower=6, upper=6)
    expected = [start - RUN_FROM + x for start, _ in STILES for x in in_stile]
    assert [hole.at[0] for hole in holes] == pytest.approx(expected)
    assert {hole.toward for hole in holes} == {(0, 1, 0)}


def test_pocket_screws_cut_nothing_in_the_rails() -> None:
    work = replace(WORK, joint=POCKET, grooves=()).on_edge(TOP, Face.LOWER)

    assert (work.cuts, work.holes, work.screws) == ((), (), ())
