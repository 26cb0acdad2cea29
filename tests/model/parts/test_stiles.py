"""Stiles stand where the row was laid out, reach into both rails, and are grooved beside panels."""

from __future__ import annotations

from typing import Any

import pytest

from model.frame import side_frame_at
from model.joints.end_joint import EndJoint
from model.joints.pocket import screw_for
from model.joints.work import Work
from model.materials import material
from model.part import Face, Hole, Part
from model.parts.frame_dowels import frame_dowel_places
from model.parts.rail_work import frame_rail_work, panel_grooves
from model.parts.stile_kinds import StileKind, stile_kinds
from model.parts.stiles import stile_shoulders, stiles
from model.units import GRIDS

NEAR = Work(holes=(Hole("pilot hole", Face.LOWER, (30.0, 0.0, 11.0), (0.0, 1.0, 0.0), 3.0, 20.0),))
FAR = Work(holes=(Hole("pilot hole", Face.UPPER, (30.0, 51.0, 11.0), (0.0, -1.0, 0.0), 3.0, 20.0),))
TENON = EndJoint(kind="mortise and tenon", adds=25, reach=26.6, tenon_thickness=8)
DOWEL = EndJoint(kind="dowel", reach=26.6, dowel_diameter=10, dowel_length=50)
POCKET = EndJoint(kind="pocket screw", screw=screw_for(22, "frame_stock"))
# Three openings of 619 mm: 50 + 619 + 50 + 619 + 50 + 619 + 51 = 2058.
SPANS = ((66.0, 116.0), (735.0, 785.0), (1404.0, 1454.0), (2073.0, 2124.0))
OPENINGS = (116.0, 785.0, 1454.0)
# Behind foot drawers: a corner stile of 50 mm, a blind bay of 450, and then the row.
CORNER = ((66.0, 116.0), (566.0, 616.0), (1345.0, 1395.0), (2074.0, 2124.0))


def kinds(**changes: Any) -> tuple[StileKind, ...]:
    needs = {
        "bays": 3, "stile_spans": SPANS, "blind_bays": (), "closed_bays": (),
        "end_stile_least": 50.0, "first_end_stile": 50.0, "mid_stile": 50.0,
        "last_end_stile": 51.0, "stile_connector_near": NEAR, "stile_connector_far": FAR,
    }  # fmt: skip
    return stile_kinds(**(needs | changes))


def made(
    joint: EndJoint = TENON, shun: tuple[float, ...] = (), shoulder: float = 6.0, **changes: Any
) -> tuple[Part, ...]:
    length = 233 + 2 * joint.adds
    row = kinds(**changes)
    return stiles(
        stile_kinds=row, frame=side_frame_at(-803, 1), front_plane=6.0,
        stile_bottom=65 - joint.adds, stile_length=length, frame_thickness=22.0,
        frame_wood=material("yellow_poplar"), frame_assembly="left side", frame_joinery=joint,
        stile_shoulders=stile_shoulders(row, joint, shoulder, shun, GRIDS["0.5 mm"]),
        panel_thickness=6.0, panel_groove_depth=10.0,
    )  # fmt: skip


# ---------------------------------------------------------------- which stiles there are


def test_three_drawers_stand_between_two_end_stiles_and_two_mid_stiles() -> None:
    assert [(k.name, k.at) for k in kinds()] == [
        ("end stile", (66,)),
        ("mid stile", (735, 1404)),
        ("end stile", (2073,)),
    ]


def test_one_drawer_needs_no_mid_stile() -> None:
    row = kinds(bays=1, stile_spans=((66.0, 700.0), (1490.0, 2124.0)))

    assert [k.name for k in row] == ["end stile", "end stile"]


def test_a_plain_side_has_no_stiles() -> None:
    assert kinds(bays=0, stile_spans=()) == ()


def test_stiles_are_as_wide_as_the_row_laid_them_out() -> None:
    for kind in kinds():
        for at in kind.at:
            assert (at, at + kind.width) in SPANS


def test_end_stiles_take_the_connectors_of_their_own_post() -> None:
    first, mid, last = kinds()

    assert (first.connector_work, mid.connector_work, last.connector_work) == (NEAR, Work(), FAR)


def test_beside_foot_drawers_the_corner_stile_meets_the_post() -> None:
    corner, first, *_, last = kinds(bays=2, stile_spans=CORNER, blind_bays=(116.0,))

    assert corner.at == (66,)
    assert corner.connector_work == NEAR
    assert first.connector_work == Work()
    assert last.connector_work == FAR


# ---------------------------------------------------------------- grooves for panels


def test_stiles_of_an_open_row_have_no_grooves() -> None:
    assert all(kind.grooved == () for kind in kinds())


def test_stiles_of_a_closed_side_are_grooved_towards_every_panel() -> None:
    first, mid, last = kinds(closed_bays=OPENINGS)

    assert first.grooved == (Face.UPPER,)
    assert set(mid.grooved) == {Face.LOWER, Face.UPPER}
    assert last.grooved == (Face.LOWER,)


def test_a_blind_bay_has_a_groove_on_both_its_sides() -> None:
    corner, first, mid, last = kinds(bays=2, stile_spans=CORNER, blind_bays=(116.0,))

    assert (corner.grooved, first.grooved) == ((Face.UPPER,), (Face.LOWER,))
    assert mid.grooved == last.grooved == ()


def test_a_closed_side_beside_foot_drawers_has_panels_on_both_sides_of_its_first_stile() -> None:
    row = kinds(bays=2, stile_spans=CORNER, blind_bays=(116.0,), closed_bays=(616.0, 1395.0))

    assert set(row[1].grooved) == {Face.LOWER, Face.UPPER}


def test_a_groove_runs_between_the_rails_and_not_into_the_tenons() -> None:
    first = made(closed_bays=OPENINGS)[0]

    (groove,) = [cut for cut in first.cuts if cut.kind == "groove"]

    assert (groove.low[0], groove.high[0]) == (25, 25 + 233)
    assert (groove.low[1], groove.high[1]) == (50 - 10, 50)
    assert (groove.low[2], groove.high[2]) == (8, 14)


# ---------------------------------------------------------------- the pieces


@pytest.mark.parametrize("joint", [TENON, POCKET], ids=lambda joint: joint.kind)
def test_shoulders_stand_on_the_rails_whatever_the_joint(joint: EndJoint) -> None:
    for part in made(joint):
        assert part.at[2] + joint.adds == 65
        assert part.at[2] + part.length - joint.adds == 65 + 233


def test_there_is_a_piece_for_every_stile_of_the_row() -> None:
    stand = [part.at[0] + place.u for part in made() for place in part.places]

    assert stand == [start for start, _ in SPANS]


def test_stiles_are_glued_into_both_rails() -> None:
    for part in made():
        assert [hold.by for hold in part.held] == ["bottom_rail", "top_rail|end_rail"]
        assert all(hold.glued and not hold.knock_down for hold in part.held)


def test_pocket_screws_of_a_stile_go_into_the_rail_at_their_end() -> None:
    for part in made(POCKET):
        for screw in part.screws:
            is_at_the_bottom = screw.at[0] < part.length / 2

            assert screw.into == ("bottom_rail" if is_at_the_bottom else "top_rail|end_rail")
            assert (screw.toward[0] < 0) is is_at_the_bottom


# ---------------------------------------------------------------- stiles and rails meet


def test_every_tenon_has_its_mortise_in_the_bottom_rail() -> None:
    """Both in mm along the frame and up from the floor; the mortise is deeper by its relief."""
    work = frame_rail_work(
        frame_joinery=TENON, stile_spans=SPANS,
        stile_shoulders={low: (6.0, 6.0) for low, _ in SPANS}, panel_grooves=(),
        panel_thickness=6.0, panel_groove_depth=10.0, run_from=66.0,
    )  # fmt: skip
    mortises = work.on_edge((2058.0, 45.0, 22.0), Face.UPPER).cuts

    tenons = []
    for part in made():
        cheeks = [c for c in part.cuts if c.kind == "tenon cheek" and c.low[0] == 0]
        thick = (min(c.high[2] for c in cheeks), max(c.low[2] for c in cheeks))
        for place in part.places:
            at = part.at[0] + place.u
            tenons.append((at + 6, at + part.width - 6, *thick, part.at[2]))

    for mortise, (start, end, back, face, foot) in zip(mortises, tenons, strict=True):
        assert (mortise.low[0] + 66, mortise.high[0] + 66) == (start, end)
        assert (mortise.low[2], mortise.high[2]) == (back, face)
        assert 20 + mortise.low[1] == pytest.approx(foot - 1.6)


def test_panels_reach_into_the_rails_as_far_as_into_the_stiles() -> None:
    spans = panel_grooves((785.0,), 619.0, (116.0,), 450.0, 10.0)

    assert spans == ((106, 576), (775, 1414))


def pockets(part: Part, end: float) -> list[float]:
    """Where across the stile its pocket screws go out through an end."""
    ways = [s for s in part.screws if (s.toward[0] > 0) == (end > 0)]
    return sorted(screw.at[1] for screw in ways)


def test_pockets_of_a_stile_stand_clear_of_the_screws_of_brackets() -> None:
    """A mid stile of 50 from 735, bearers of 19 at both edges: screws of brackets come in at 9.5
    and 40.5, 4.17 thick as the pocket screws. 8.34 from them are 17.84 and 32.16; two pockets stand
    at least 16 apart: 17 and 33.
    """
    mid = made(POCKET, shun=(744.5, 775.5))[1]

    assert mid.name == "mid stile"
    assert pockets(mid, -1) == pytest.approx([17, 33])


def test_pockets_move_no_farther_than_they_need_and_alike_at_both_edges_and_ends() -> None:
    """In an end stile a bracket's screw comes in beside one pocket only; the stile stays the same
    when it is turned.
    """
    first = made(POCKET, shun=(66 + 43.0,))[0]

    last = 43 - 2 * 4.17
    assert pockets(first, -1) == pytest.approx([50 - last, last])
    assert pockets(first, 1) == pytest.approx(pockets(first, -1))


def dowels(part: Part, end: Face) -> list[float]:
    """Where across the stile its dowels stand at an end."""
    return sorted(hole.at[1] for hole in part.holes if hole.face is end and "dowel" in hole.kind)


def test_dowels_of_a_stile_stand_clear_of_the_screws_of_brackets() -> None:
    """A bearer of 19 at the inner edge of an end stile of 50 from 66: bracket screws 4.17 thick
    come in at 41, and a dowel of 10 is 5 + 2.1 + 4.17 = 11.3 off. Both ends of the stile alike, and
    two diameters between the dowels; the mate's holes and the dowels themselves use the same.
    """
    shun = (66.0 + 41.5,)
    first = made(DOWEL, shun, shoulder=0.0)[0]
    clear = 5.0 + 4.17 / 2 + 4.17

    near, far = dowels(first, Face.NEAR)

    assert dowels(first, Face.FAR) == [near, far]
    assert 41.5 - clear - 0.5 < far <= 41.5 - clear  # on the half millimetre of the shop's rule
    assert near == 10.0 and far - near >= 19.5


def test_dowels_with_no_room_to_give_way_stay_where_they_hold_best() -> None:
    """Screws at both edges of a stile of 50 leave 8.5 mm between two clear places, not 20."""
    spots = (735.0 + 9.5, 735.0 + 40.5)
    mid = made(DOWEL, spots, shoulder=0.0)[1]

    assert dowels(mid, Face.NEAR) == [10.0, 40.0]


def test_the_rails_take_the_dowels_where_the_stiles_have_them() -> None:
    row = kinds(first_end_stile=60.0, stile_spans=((66.0, 126.0), *SPANS[1:]))
    shoulders = stile_shoulders(row, DOWEL, 0.0, (66.0 + 50.5,), GRIDS["0.5 mm"])
    work = frame_rail_work(
        frame_joinery=DOWEL, stile_spans=((66.0, 126.0),), stile_shoulders=shoulders,
        panel_grooves=(), panel_thickness=6.0, panel_groove_depth=10.0, run_from=66.0,
    )  # fmt: skip
    places = frame_dowel_places(DOWEL, ((66.0, 126.0),), shoulders, 10.0)

    in_rail = [hole.at[0] for hole in work.on_edge((2058.0, 45.0, 22.0), Face.UPPER).holes]

    assert shoulders[66.0] != (0.0, 0.0)
    assert in_rail == [at + 5.0 - 66.0 for at in places]
