"""Which station, which piece, which load case is the worst, and how large its sag is drawn."""

from dataclasses import replace

import numpy as np
import pytest

from model.bed import Bed, Design, solve
from model.structure.record import Carried, Case, Effect
from model.structure.worst import (
    DRAWN_SHARE,
    cases_of,
    deck_pieces,
    drawn_times,
    greatest_move,
    hardest_first,
    most_sagging,
    sag_limit,
    shares,
    side_rails,
    station_use,
    worst_effects,
    worst_loads,
)
from tests.app.sample_carried import sample_carried


def effect(piece: int, case: int, use: float, at: float, kind: str = "joint") -> Effect:
    return Effect(
        piece=piece, kind=kind, value=use * 100, limit=100.0, unit="N", case=case, at=at,
        source="A handbook",
    )  # type: ignore[arg-type]  # fmt: skip


SAG = Effect(
    piece=2, kind="sag", value=2.0, limit=4.0, unit="mm", case=1, at=50.0, source="A handbook"
)


@pytest.fixture
def loads() -> Carried:
    """Pieces 2 and 5 with three stations each, in two cases. Piece 2 may sag 4 mm."""
    return Carried(
        cases=(Case(key="a", title="A", reason="."), Case(key="b", title="B", reason=".")),
        pieces=np.array([2, 5]),
        first=np.array([0, 3, 6]),
        at=np.array([0.0, 50, 100, 0, 50, 100]),
        point=np.zeros((6, 3)),
        moved=np.array([[(0, 0, 0), (0, 0, -3), (0, 0, 0), (0, 0, 0), (0, 0, -1), (0, 0, 0)],
                        [(0, 0, 0), (0, 3, -4), (0, 0, 0), (0, 0, 0), (0, 0, -9), (0, 0, 0)]],
                       float),
        sag=np.array([[0, 1.0, 0, 0, 1, 0], [0, 2, 0, 0, 9, 0]]),
        use=np.array([[0.1, 0.2, 0.1, 0.1, 0.3, 0.1], [0.1, 0.4, 0.1, 0.1, 0.7, 0.1]]),
        sag_limit=np.array([4.0, np.inf]),
        effects={2: (effect(2, 0, 0.9, 96.0), SAG, effect(2, 1, 0.4, 50.0, "bending")),
                 5: (effect(5, 1, 0.7, 50.0, "bending"),)},
    )  # fmt: skip


def test_sag_counts_under_the_load_in_which_it_is_asked(loads: Carried) -> None:
    """Nobody minds how far a slat gives under a knee, as long as it holds."""
    assert shares(loads)[0, 1] == 0.2  # 1 of 4 mm, and nobody asks
    assert sag_limit(loads, 2, 1) == 4.0
    assert sag_limit(loads, 2, 0) == sag_limit(loads, 5, 1) == float("inf")


def test_sag_counts_where_it_is_the_greater_share(loads: Carried) -> None:
    # 2 of 4 mm is more than 0.4 of the bending strength; piece 5 has no limit for its 9 mm
    assert station_use(loads, [1]).tolist() == [0.1, 0.5, 0.1, 0.1, 0.7, 0.1]


def test_a_joint_counts_at_its_nearest_station_in_its_own_case(loads: Carried) -> None:
    assert station_use(loads, [0])[2] == pytest.approx(0.9)
    assert station_use(loads, [1])[2] == pytest.approx(0.1)


def test_the_worst_of_all_is_no_less_than_any_case(loads: Carried) -> None:
    worst = station_use(loads, [0, 1])

    for case in (0, 1):
        assert (worst >= station_use(loads, [case])).all()
    assert worst.tolist() == pytest.approx([0.1, 0.5, 0.9, 0.1, 0.7, 0.1])


def test_the_shares_of_the_record_itself_stay_as_they_are(loads: Carried) -> None:
    before = loads.use.copy()

    station_use(loads, [0])
    station_use(loads, [0, 1])

    assert (loads.use == before).all()


def test_cases_that_differ_in_place_only_are_one_load(loads: Carried) -> None:
    places = replace(loads, cases=(loads.cases[0], loads.cases[0]))

    (found,) = worst_loads(places)

    assert cases_of(places, "a") == (0, 1)
    assert cases_of(places, "b") == ()
    assert (found.case, found.use) == (0, 0.9)
    assert station_use(places, cases_of(places, "a"))[4] == 0.7  # of the other place


def test_loads_come_worst_first_with_what_is_worst(loads: Carried) -> None:
    first, second = worst_loads(loads)

    assert (first.case, first.piece, first.kind, first.use) == (0, 2, "joint", 0.9)
    assert (second.case, second.piece, second.kind, second.use) == (1, 5, "bending", 0.7)


def test_sag_is_named_when_it_is_worst(loads: Carried) -> None:
    found = worst_loads(replace(loads, effects={2: (replace(SAG, limit=2.0),)}))

    assert (found[0].case, found[0].piece, found[0].kind, found[0].use) == (1, 2, "sag", 1.0)


def test_effects_come_hardest_first(loads: Carried) -> None:
    assert [each.use for each in worst_effects(loads)] == pytest.approx([0.9, 0.7, 0.5, 0.4])


def test_the_worst_slat_is_the_one_that_sags_most_for_its_limit(loads: Carried) -> None:
    other = replace(SAG, piece=5, value=9.0, limit=30.0)
    effects = {2: (SAG,), 5: (other,)}
    limited = replace(loads, sag_limit=np.array([4.0, 30.0]), effects=effects)

    assert most_sagging(limited, [1], {2, 5}) == (2, 1)  # 2 of 4 mm, against 9 of 30
    assert most_sagging(limited, [1], {5}) == (5, 1)
    assert most_sagging(limited, [1], {7}) is None
    assert most_sagging(limited, [0, 1], {2, 5}) == (2, 1)


def test_of_all_loads_the_one_that_makes_a_piece_sag_most_is_found(loads: Carried) -> None:
    assert most_sagging(loads, [0, 1], {2}) == (2, 1)
    assert most_sagging(loads, [0, 1], {5}) == (5, 1)  # 9 mm and no limit, against 1 mm


def test_of_places_that_sag_alike_the_first_is_told(loads: Carried) -> None:
    alike = replace(loads, sag=np.stack([loads.sag[1], loads.sag[1] + 0.001]))

    assert most_sagging(alike, [0, 1], {5}) == (5, 0)
    assert most_sagging(alike, [1, 0], {5}) == (5, 1)


def test_the_hardest_case_comes_first(loads: Carried) -> None:
    assert hardest_first(loads, (0, 1)) == (0, 1)  # a joint at 0.9 in the first, 0.7 in the second
    assert hardest_first(replace(loads, effects={}), (0, 1)) == (1, 0)  # 0.3 against 0.7 in bending


def test_a_piece_that_is_bent_upwards_does_not_sag(loads: Carried) -> None:
    lifted = replace(loads, sag=loads.sag * np.array([1.0, 1, 1, -1, -1, -1]), effects={})

    assert most_sagging(lifted, [1], {2, 5}) == (2, 1)


def test_movement_is_measured_in_space(loads: Carried) -> None:
    assert greatest_move(loads, 0) == 3
    assert greatest_move(replace(loads, moved=loads.moved[:, :3]), 1) == 5  # 3, 4, 5


@pytest.mark.parametrize(
    ("moved", "times"), [(5.0, 20), (4.9, 20), (2.0, 50), (1.0, 100), (0.02, 5000), (99.0, 1)]
)
def test_sag_is_drawn_a_round_number_of_times(moved: float, times: float) -> None:
    assert drawn_times(moved, 2000.0) == times
    assert times == 1 or times * moved <= DRAWN_SHARE * 2000.0 < 2.5 * times * moved


def test_what_moves_too_far_is_drawn_as_it_is() -> None:
    assert drawn_times(500.0, 2000.0) == 1
    assert drawn_times(0.0, 2000.0) == 1


def test_a_frame_of_no_pieces_has_no_worst_case(loads: Carried) -> None:
    none = replace(
        loads, pieces=np.zeros(0, int), first=np.array([0]), at=np.zeros(0), point=np.zeros((0, 3)),
        moved=np.zeros((2, 0, 3)), sag=np.zeros((2, 0)), use=np.zeros((2, 0)),
        sag_limit=np.zeros(0), effects={},
    )  # fmt: skip

    assert worst_loads(none) == ()
    assert greatest_move(none, 0) == 0


@pytest.fixture(scope="module")
def bed() -> Bed:
    return solve(Design())


def test_a_piece_without_stations_is_passed_over(loads: Carried) -> None:
    bare = replace(
        loads, pieces=np.array([2, 5, 9]), first=np.array([0, 3, 6, 6]),
        sag_limit=np.array([4.0, np.inf, np.inf]),
        effects={**loads.effects, 9: (effect(9, 0, 5.0, 0.0),)},
    )  # fmt: skip

    assert station_use(bare, [0, 1]).max() == pytest.approx(0.9)


def test_on_a_real_bed_the_worst_of_all_is_the_first_effect_of_each_piece(bed: Bed) -> None:
    carried = sample_carried(bed)

    use = np.maximum.reduceat(station_use(carried, cases_of(carried)), carried.first[:-1])

    firsts = [carried.effects[piece][0].use for piece in carried.pieces.tolist()]
    assert use == pytest.approx(firsts)


def test_deck_and_side_rails_are_found_by_what_they_are_called(bed: Bed) -> None:
    labels = bed.pieces.labels

    deck = {labels[piece] for piece in deck_pieces(bed.pieces)}
    rails = {labels[piece] for piece in side_rails(bed.pieces)}

    assert all(label.startswith("slat ") for label in deck) and len(deck) > 8
    assert {"top rail of the left side", "bottom rail of the right side"} <= rails
    assert not any("end" in label or "head" in label for label in rails)
