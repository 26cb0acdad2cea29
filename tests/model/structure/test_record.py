"""What a bed carries is looked up by piece and by load case."""

from __future__ import annotations

import numpy as np
import pytest

from model.structure.record import NO_FORCES, Carried, Case, Effect


@pytest.fixture
def loads() -> Carried:
    """Pieces 2 and 5 of the bed, with three stations and two, in two cases."""
    return Carried(
        cases=(Case(key="a", title="A", reason="."), Case(key="b", title="B", reason=".")),
        pieces=np.array([2, 5]),
        first=np.array([0, 3, 5]),
        at=np.array([0.0, 50, 100, 0, 80]),
        point=np.arange(15.0).reshape(5, 3),
        moved=np.arange(30.0).reshape(2, 5, 3),
        sag=np.array([[0, 1.0, 0, 0, 0], [0, 2, 0, 3, 0]]),
        use=np.array([[0.1, 0.2, 0.1, 0.5, 0.1], [0.1, 0.4, 0.1, 0.3, 0.1]]),
        sag_limit=np.array([4.0, np.inf]),
        effects={},
    )


def test_a_curve_is_one_piece_in_one_case(loads: Carried) -> None:
    curve = loads.curve(5, 1)

    assert curve.at.tolist() == [0, 80]
    assert curve.point.tolist() == loads.point[3:].tolist()
    assert curve.moved.tolist() == loads.moved[1, 3:].tolist()
    assert (curve.sag.tolist(), curve.use.tolist()) == ([3, 0], [0.3, 0.1])
    assert loads.curve(2, 0).at.tolist() == [0, 50, 100]


def test_a_limit_is_of_its_piece(loads: Carried) -> None:
    assert (loads.limit_of(2), loads.limit_of(5)) == (4.0, np.inf)


@pytest.mark.parametrize("piece", [0, 3, 9])
def test_a_piece_that_is_not_in_the_frame_is_not_found(loads: Carried, piece: int) -> None:
    with pytest.raises(LookupError):
        loads.curve(piece, 0)
    with pytest.raises(LookupError):
        loads.limit_of(piece)


def test_every_piece_is_told_how_hard_it_works_and_the_others_nothing(loads: Carried) -> None:
    worst, second = loads.piece_use(7), loads.piece_use(7, case=1)

    assert np.flatnonzero(np.isfinite(worst)).tolist() == [2, 5]
    assert worst[[2, 5]].tolist() == [0.4, 0.5]
    assert second[[2, 5]].tolist() == [0.4, 0.3]


def test_a_station_knows_its_piece(loads: Carried) -> None:
    assert loads.station_piece.tolist() == [0, 0, 0, 1, 1]


def test_a_load_with_a_source_is_a_test_and_without_one_an_assumption() -> None:
    test = Case(key="a", title="A", reason=".", source="A standard")
    ours = Case(key="b", title="B", reason=".", choices=("push_force",))

    assert (test.is_test, test.is_assumed) == (True, False)
    assert (ours.is_test, ours.is_assumed) == (False, True)


def test_an_effect_uses_a_share_of_its_limit() -> None:
    effect = Effect(
        piece=1, kind="sag", value=3.0, limit=4.0, unit="mm", case=0, at=10.0, source="."
    )

    assert effect.use == 0.75


def test_no_forces_are_of_no_joints() -> None:
    assert len(NO_FORCES.at) == len(NO_FORCES.pieces) == NO_FORCES.force.shape[1] == 0
