"""What a router cuts of a part that lies flat, read from parts made up by hand."""

from __future__ import annotations

from typing import Any

from model.drawings.flat_bores import Bore
from model.drawings.flat_profile import FlatProfile, flat_profile
from model.part import Cut, Face, Hole, Part

LONG, WIDE, THICK = 600.0, 200.0, 18.0


def profile(*work: Cut | Hole, **more: Any) -> FlatProfile:
    cuts = tuple(each for each in work if isinstance(each, Cut))
    holes = tuple(each for each in work if isinstance(each, Hole))
    return flat_profile(
        Part(
            name="board", assembly="drawers", length=LONG, width=WIDE, thickness=THICK,
            lies="uvz", at=(0.0, 0.0, 0.0), material="ply", cuts=cuts, holes=holes, **more,
        )  # type: ignore[arg-type]
    )  # fmt: skip


def groove(face: Face, low: float, high: float, deep: float) -> Cut:
    """Along the whole part, between two heights."""
    z = (THICK - deep, THICK) if face is Face.FACE else (0.0, deep)
    return Cut("groove", face, (0.0, low, z[0]), (LONG, high, z[1]))


def drilled(face: Face, at: tuple[float, float], diameter: float, deep: float) -> Hole:
    z, toward = (THICK, -1.0) if face is Face.FACE else (0.0, 1.0)
    return Hole("hole", face, (*at, z), (0.0, 0.0, toward), diameter, deep)


def test_a_plain_part_is_its_outline() -> None:
    found = profile()

    assert [set(loop) for loop in found.outline] == [
        {(0.0, 0.0), (LONG, 0.0), (LONG, WIDE), (0.0, WIDE)}
    ]
    assert (found.openings, found.pockets, found.bores, found.left_out) == ((), (), (), ())
    assert found.up is Face.FACE and not found.works_below


def test_a_notch_shapes_the_outline_and_an_opening_has_its_own() -> None:
    notch = Cut("notch", Face.NEAR, (-1.0, 150.0, -1.0), (40.0, 201.0, 19.0))
    slot = Cut("slot", Face.FACE, (100.0, 50.0, 0.0), (200.0, 80.0, THICK))

    found = profile(notch, slot)

    assert len(found.outline[0]) == 6 and (40.0, 150.0) in found.outline[0]
    assert set(found.openings[0]) == {(100.0, 50.0), (200.0, 50.0), (200.0, 80.0), (100.0, 80.0)}


def test_a_groove_is_a_pocket_of_its_depth_and_a_deeper_one_in_it_another() -> None:
    mortise = Cut("mortise", Face.FACE, (50.0, 20.0, 6.0), (90.0, 30.0, THICK))

    shallow, deep = profile(groove(Face.FACE, 20.0, 30.0, 5.0), mortise).pockets

    assert (shallow.face, shallow.depth, len(shallow.loops)) == (Face.FACE, 5.0, 2)
    assert (deep.depth, set(deep.loops[0])) == (
        12.0, {(50.0, 20.0), (90.0, 20.0), (90.0, 30.0), (50.0, 30.0)},
    )  # fmt: skip


def test_cuts_that_meet_from_both_faces_are_an_opening() -> None:
    above = Cut("recess", Face.FACE, (100.0, 50.0, 9.0), (200.0, 80.0, THICK))
    below = Cut("recess", Face.BACK, (100.0, 50.0, 0.0), (200.0, 80.0, 9.0))

    found = profile(above, below)

    assert len(found.openings) == 1 and found.pockets == ()


def test_work_on_the_back_alone_has_the_back_lie_up() -> None:
    """Rolled about its length, the near end at the left: the lower edge is then on top."""
    found = profile(groove(Face.BACK, 20.0, 30.0, 5.0))

    assert found.up is Face.BACK and not found.works_below
    assert {y for _, y in found.pockets[0].loops[0]} == {WIDE - 30.0, WIDE - 20.0}


def test_work_on_both_faces_is_told_from_one() -> None:
    found = profile(
        groove(Face.FACE, 20.0, 30.0, 5.0),
        groove(Face.BACK, 50.0, 60.0, 4.0),
        drilled(Face.FACE, (300.0, 100.0), 8.0, 10.0),
    )

    assert found.up is Face.FACE and found.works_below
    assert [(each.face, each.depth) for each in found.pockets] == [
        (Face.FACE, 5.0), (Face.BACK, 4.0),
    ]  # fmt: skip
    assert {y for _, y in found.pockets[1].loops[0]} == {50.0, 60.0}


def test_holes_are_through_or_so_deep_below_a_face() -> None:
    found = profile(
        drilled(Face.FACE, (100.0, 40.0), 8.0, THICK),
        drilled(Face.FACE, (200.0, 40.0), 5.0, 12.0),
        drilled(Face.BACK, (300.0, 40.0), 5.0, 12.0),
    )

    assert found.bores == (
        Bore((100.0, 40.0), 8.0, Face.FACE, None),
        Bore((200.0, 40.0), 5.0, Face.FACE, 12.0),
        Bore((300.0, 40.0), 5.0, Face.BACK, 12.0),
    )


def test_a_hole_in_the_ground_of_a_groove_is_measured_from_the_face() -> None:
    below = Hole("hole", Face.FACE, (100.0, 25.0, 12.0), (0.0, 0.0, -1.0), 4.0, 6.0)

    found = profile(groove(Face.FACE, 20.0, 30.0, 6.0), below)

    assert found.bores == (Bore((100.0, 25.0), 4.0, Face.FACE, 12.0),)


def test_a_hole_below_a_counterbore_is_through() -> None:
    wide = drilled(Face.FACE, (100.0, 40.0), 20.0, 8.0)
    below = Hole("hole", Face.FACE, (100.0, 40.0, 10.0), (0.0, 0.0, -1.0), 8.0, 10.0)

    assert [bore.depth for bore in profile(wide, below).bores] == [8.0, None]


def test_what_comes_in_from_an_edge_is_named_and_not_drawn() -> None:
    inside = Cut("groove", Face.UPPER, (0.0, 190.0, 6.0), (LONG, WIDE, 12.0))
    dowel = Hole("dowel hole", Face.NEAR, (0.0, 40.0, 9.0), (1.0, 0.0, 0.0), 8.0, 30.0)
    slanting = Hole("pocket hole", Face.FACE, (50.0, 40.0, 18.0), (0.8, 0.0, -0.6), 9.0, 30.0)

    found = profile(inside, dowel, slanting, eased=3.0)

    assert found.left_out == (
        "groove in the upper edge", "dowel holes in the near end", "pocket holes in the face",
        "eased edges",
    )  # fmt: skip
    assert (found.pockets, found.bores) == ((), ())


def test_a_taper_narrows_the_outline_towards_the_near_end() -> None:
    found = profile(taper=10.0, taper_length=250.0)

    assert set(found.outline[0]) == {
        (0.0, 10.0), (250.0, 0.0), (LONG, 0.0), (LONG, WIDE), (250.0, WIDE), (0.0, WIDE - 10.0),
    }  # fmt: skip
    assert found.left_out == ("taper of the thickness",)
