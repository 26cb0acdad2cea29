"""Grooves, rabbets, dadoes and tongues: where each takes wood away."""

from model.joints.dado import dado
from model.joints.groove import middle_groove
from model.joints.rabbet import rabbet
from model.joints.tongue import tongue
from model.part import Face

BOARD = (600.0, 90.0, 20.0)


def test_a_groove_in_an_edge_lies_in_the_middle_of_the_thickness() -> None:
    cut = middle_groove(BOARD, Face.UPPER, width=6, depth=10)

    assert (cut.low, cut.high) == ((0, 80, 7), (600, 90, 13))


def test_a_stopped_groove_ends_where_it_is_told() -> None:
    cut = middle_groove(BOARD, Face.LOWER, width=6, depth=10, along=(50, 550))

    assert (cut.low, cut.high) == ((50, 0, 7), (550, 10, 13))


def test_a_rabbet_takes_the_corner_of_a_face_and_an_edge() -> None:
    cut = rabbet(BOARD, Face.BACK, Face.UPPER, width=12, depth=5)

    assert (cut.low, cut.high) == ((0, 78, 0), (600, 90, 5))


def test_a_rabbet_at_an_end_runs_across_the_board() -> None:
    cut = rabbet(BOARD, Face.FACE, Face.NEAR, width=12, depth=5)

    assert (cut.low, cut.high) == ((0, 0, 15), (12, 90, 20))


def test_a_dado_runs_across_the_grain() -> None:
    cut = dado(BOARD, Face.FACE, between=(100, 118), depth=7)

    assert (cut.low, cut.high) == ((100, 0, 13), (118, 90, 20))


def test_a_tongue_is_what_two_rabbets_leave() -> None:
    back, face = tongue(BOARD, Face.UPPER, length=8, thickness=6)

    assert back.high[2] == 7 and face.low[2] == 13
    assert back.low[1] == face.low[1] == 82


def test_a_tongue_flush_with_the_back_needs_one_rabbet() -> None:
    assert len(tongue(BOARD, Face.UPPER, length=8, between=(0, 6))) == 1


def test_a_tongue_as_thick_as_its_part_needs_no_rabbet() -> None:
    assert tongue(BOARD, Face.UPPER, length=8) == ()
