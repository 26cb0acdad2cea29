"""Fronts and pulls as parts."""

from model.frame import side_frame_at
from model.materials import material, pull, pull_screw_for
from model.parts.framed_fronts import front_rails, front_stiles
from model.parts.fronts import front_slabs, pulls

FRAME = side_frame_at(-850.0, 1)
MDF, POPLAR = material("mdf_3_4in"), material("yellow_poplar")
BAR = pull("bar_128")
SCREW = pull_screw_for(31.0, BAR.least_thread_mm)


def slab(drawers_from: int, hand_hole: float = 0.0):  # type: ignore[no-untyped-def]
    screw = None if hand_hole else SCREW
    (front,) = front_slabs(
        (88.0, 688.0), drawers_from, -13.0, 53.0, 574.0, 257.0, 19.05, screw, (203.0, 331.0),
        181.5, hand_hole, 35.0, FRAME, MDF, "left", 2.0,
    )  # fmt: skip
    return front


def test_fronts_move_with_their_drawers() -> None:
    assert [place.drawer for place in slab(1).places] == [1, 2]


def test_fixed_fronts_move_with_none_and_carry_their_own_pull_screws() -> None:
    fixed = slab(0)

    assert [place.drawer for place in fixed.places] == [0, 0]
    assert {screw.into for screw in fixed.screws} == {"pulls"}
    assert slab(1).screws == ()  # counted with the box front, where they start


def test_a_front_is_bored_for_its_pull_half_way_up() -> None:
    assert [hole.at[:2] for hole in slab(1).holes] == [(203.0, 128.5), (331.0, 128.5)]


def test_a_hand_hole_takes_the_place_of_a_pull() -> None:
    (hole,) = slab(1, hand_hole=100.0).cuts

    assert (hole.low[0] + hole.high[0]) / 2 == 287.0
    assert slab(1, hand_hole=100.0).holes == ()


def test_a_pair_of_pulls_has_two_a_drawer() -> None:
    (pair,) = pulls(
        (150.0, 750.0), (400.0, 1000.0), 1, -45.0, 175.0, 168.0, 12.0, 32.0, BAR, FRAME, "left"
    )

    assert sorted(place.drawer for place in pair.places) == [1, 1, 2, 2]
    assert pair.hardware == "PULL-bar_128"


def test_rails_fill_the_grooves_of_the_stiles() -> None:
    near, far = front_stiles(
        (88.0,), (607.0,), 1, -13.0, 53.0, 257.0, 55.0, 19.05, 6.0, 10.0, FRAME, POPLAR, "left"
    )
    lower, upper = front_rails(
        (133.0,), 1, -13.0, 53.0, 255.0, 484.0, 55.0, 19.05, 6.0, 10.0, FRAME, POPLAR, "left"
    )

    assert near.cuts[0].high[1] == 55.0  # grooved on the edge that faces the panel
    assert far.cuts[0].low[1] == 0.0
    assert near.at[0] + 55.0 - 10.0 == lower.at[0] == upper.at[0]
