"""What pieces weigh: box volume times density."""

import pytest

from model.bed import Design, solve
from model.exports.summary import weight


def test_a_slat_weighs_its_volume_times_its_density() -> None:
    bed = solve(Design())
    slat = next(mark for mark in bed.marks if mark.name == "slat")

    # Yellow-poplar, 470 kg/m3 (Wood Handbook 2021, eq 4-14 with specific gravity 0.42).
    by_hand = slat.length * slat.width * slat.thickness * 470e-9
    assert bed.masses[slat.pieces[0]] == pytest.approx(by_hand)


def test_masses_follow_the_exact_solids_but_for_round_holes() -> None:
    bed = solve(Design())

    for mark in bed.marks:
        exact = weight(bed, mark)
        assert exact <= bed.masses[mark.pieces[0]] * (1 + 1e-6)
        assert bed.masses[mark.pieces[0]] == pytest.approx(exact, rel=0.05)


def test_what_is_bought_weighs_nothing_here() -> None:
    bed = solve(Design())
    bought = [piece for each in bed.hardware for piece in each.pieces]

    assert not bed.masses[bought].any()
