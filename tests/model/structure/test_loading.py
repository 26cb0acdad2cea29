"""What is spread over the mattress lies on the deck, all of it, and where it should."""

from __future__ import annotations

import numpy as np
import pytest

from model.mechanics.line_loads import EVERY
from model.structure.loading import (
    BODY,
    BODY_WIDTH,
    GRAVITY,
    PILLOW,
    Deck,
    Loading,
    Spread,
    bodies,
)
from tests.model.structure.frames_of_beds import DEMOS, Worked, demo

WELL = (-700.0, 700.0, 50.0, 2050.0)


def deck_of(here: Worked) -> Deck:
    return Deck(here.frame, *here.bed.pieces.bounds)


def on_pieces(spread: Spread) -> dict[int, float]:
    """What lies on each piece, N."""
    return {int(p): -spread.force[spread.piece == p, 2].sum() for p in np.unique(spread.piece)}


@pytest.mark.parametrize("name", DEMOS)
def test_all_of_a_mattress_lies_on_the_deck(name: str) -> None:
    here = demo(name)
    well = np.array([here.bed["handling"].well])

    spread = deck_of(here).spread(well, np.array([450.0]))

    assert spread.force.sum(axis=0) == pytest.approx((0, 0, -450))
    assert set(here.roles(spread.piece)) <= {"slat", "deck panel"}
    assert set(spread.piece) == set(here.bones.of_role("slat", "deck panel"))  # none is left out


def test_a_slat_takes_the_mattress_half_way_to_its_neighbours() -> None:
    """Slats of one pitch take the same; the outermost what reaches past them as well."""
    here = demo("painted_storage_queen")
    deck = deck_of(here)
    middles = (deck.low[:, 1] + deck.high[:, 1]) / 2
    pitch = np.diff(middles)
    long = WELL[3] - WELL[2]

    found = on_pieces(deck.spread(np.array([WELL]), np.array([long])))  # 1 N on each mm

    inner = [found[int(piece)] for piece in deck.piece[1:-1]]
    assert inner == pytest.approx((pitch[:-1] + pitch[1:]) / 2, abs=1e-6)
    assert found[int(deck.piece[0])] == pytest.approx(middles[0] + pitch[0] / 2 - WELL[2])
    assert found[int(deck.piece[-1])] == pytest.approx(WELL[3] - middles[-1] + pitch[-1] / 2)


def test_a_hard_pad_bears_only_on_the_wood_under_it() -> None:
    """A pad of 200 mm over a gap presses on both slats beside it, by what lies under it."""
    here = demo("loft_single")
    deck = deck_of(here)
    gap = (deck.high[4, 1] + deck.low[5, 1]) / 2
    area = np.array([(-100, 100, gap - 110, gap + 90)])

    spread = deck.spread(area, np.array([1400.0]), touching=True)

    under = {
        int(deck.piece[4]): deck.high[4, 1] - max(gap - 110, deck.low[4, 1]),
        int(deck.piece[5]): min(gap + 90, deck.high[5, 1]) - deck.low[5, 1],
    }
    share = 1400 / sum(under.values())
    assert on_pieces(spread) == pytest.approx({k: v * share for k, v in under.items()})


def test_a_pad_on_the_middle_of_a_slat_that_is_wide_apart_loads_it_alone() -> None:
    """Slats 89 mm wide and more than 56 mm apart: a pad of 200 mm reaches no other."""
    here = demo("painted_storage_queen")
    deck = deck_of(here)
    assert (deck.low[1:, 1] - deck.high[:-1, 1]).min() > 100 - 89 / 2
    middle = (deck.low[6, 1] + deck.high[6, 1]) / 2

    spread = deck.spread(
        np.array([(-480, -280, middle - 100, middle + 100)]), np.array([1400.0]), touching=True
    )

    assert on_pieces(spread) == {int(deck.piece[6]): pytest.approx(1400)}
    near = float(deck.low[6, 0])
    assert (spread.start.item(), spread.end.item()) == pytest.approx((-480 - near, -280 - near))


def test_loads_lie_where_they_press_across_the_bed() -> None:
    here = demo("painted_storage_queen")
    deck = deck_of(here)

    spread = deck.spread(np.array([(-500, -100, 600, 1000)]), np.array([100.0]))

    near = np.array([deck.low[np.flatnonzero(deck.piece == p)[0], 0] for p in spread.piece])
    assert near + spread.start == pytest.approx(np.full(len(near), -500))
    assert near + spread.end == pytest.approx(np.full(len(near), -100))


def test_what_reaches_past_a_slats_end_is_pushed_back_onto_it() -> None:
    here = demo("loft_single")
    deck = deck_of(here)
    wide = deck.high[0, 0] - deck.low[0, 0]

    spread = deck.spread(np.array([(-2000, 2000, 0, 2100)]), np.array([100.0]))

    assert (spread.start == 0).all()
    assert spread.end == pytest.approx(np.full(len(spread.end), wide))
    assert spread.force[:, 2].sum() == pytest.approx(-100)


def test_some_loads_of_many_are_kept_whole() -> None:
    here = demo("loft_single")
    areas = np.array([(-300, 300, 0, 900), (-300, 300, 900, 2000)])
    spread = deck_of(here).spread(areas, np.array([100.0, 250.0]))

    second = spread.only(spread.load == 1)

    assert second.force[:, 2].sum() == pytest.approx(-250)
    assert set(second.load) == {1}


# ------------------------------------------------------------ sleepers


def test_the_shares_of_a_body_add_up_to_all_of_it() -> None:
    assert sum(share for share, _ in BODY) == pytest.approx(1)
    assert sum(long for _, long in BODY) == 1800


@pytest.mark.parametrize("lying", [(110.0,), (110.0, 110.0), (60.0, 95.0)])
def test_each_sleeper_weighs_all_he_weighs(lying: tuple[float, ...]) -> None:
    who, _, force = bodies(lying, WELL)

    weight = np.bincount(who, force)

    assert weight == pytest.approx(np.array(lying) * 9.80665)


def test_44_percent_lie_under_the_hips_on_400_mm() -> None:
    """The head begins 100 mm from the mattress's end; hips lie 850 to 1250 mm from there."""
    _, areas, force = bodies((100.0,), WELL)

    hips = int(np.argmax(force))

    assert force[hips] == pytest.approx(0.44 * 100 * 9.80665)
    assert areas[hips, 2:] == pytest.approx((2050 - 100 - 1150, 2050 - 100 - 750))


def test_a_body_lies_from_the_pillow_down_without_a_gap() -> None:
    _, areas, _ = bodies((80.0,), WELL)

    assert areas[0, 3] == WELL[3] - PILLOW
    assert areas[1:, 3] == pytest.approx(areas[:-1, 2])
    assert areas[0, 3] - areas[-1, 2] == pytest.approx(1800)


def test_two_lie_side_by_side_each_in_the_middle_of_his_half() -> None:
    who, areas, _ = bodies((80.0, 90.0), WELL)

    for i, middle in enumerate((-350.0, 350.0)):
        mine = areas[who == i]
        assert mine[:, :2].mean(axis=1) == pytest.approx(np.full(4, middle))
        assert mine[:, 1] - mine[:, 0] == pytest.approx(np.full(4, BODY_WIDTH))


def test_two_on_a_narrow_mattress_lie_no_wider_than_their_halves() -> None:
    _, areas, _ = bodies((80.0, 90.0), (-500.0, 500.0, 0.0, 2000.0))

    assert (areas[:, 1] - areas[:, 0]).max() == 500
    assert areas[:, 0].min() == -500 and areas[:, 1].max() == 500


# ------------------------------------------------------------ gathering


def test_loads_are_gathered_case_by_case_and_those_of_every_case_are_told() -> None:
    here = demo("loft_single")
    loading = Loading(here.frame)
    slats = here.bones.of_role("slat")[:3]

    loading.on(EVERY, slats, 100.0, 300.0, (0, 0, -50.0))
    loading.on(0, int(slats[0]), 0.0, 0.0, (0, 70.0, 0))
    loading.on(np.array([0, 1]), slats[:2], 200.0, 200.0, np.array([[0, 0, -10.0], [0, 0, -20.0]]))

    assert loading.always() == pytest.approx(150)
    loads = loading.line_loads()
    force = here.on_bed(loads)
    for case, total in {EVERY: (0, 0, -150), 0: (0, 70, -10), 1: (0, 0, -20)}.items():
        assert force[loads.case == case].sum(axis=0) == pytest.approx(total)


def test_gravity_is_standard_gravity() -> None:
    """3rd General Conference on Weights and Measures, 1901."""
    assert GRAVITY == 9.80665
