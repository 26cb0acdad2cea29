"""Screws pushed sideways: bite, side, steel, end grain."""

from __future__ import annotations

from dataclasses import replace

import pytest

from model.errors import BadInput
from model.mechanics.fasteners.dowel_bearing import STEEL_PLATE, bending_yield
from model.mechanics.fasteners.lateral import (
    END_GRAIN,
    ScrewJoint,
    design_screw_lateral,
    reduction,
    wood_side,
)

JOINT = ScrewJoint(shank=4.17, side=19, side_bearing=wood_side(0.5), main_gravity=0.5, bite=30)


def test_a_screw_in_end_grain_keeps_two_thirds() -> None:
    side, end = (design_screw_lateral(JOINT, in_end_grain=each) for each in (False, True))

    assert end == pytest.approx(END_GRAIN * side)


def test_a_shorter_bite_holds_no_more() -> None:
    loads = [design_screw_lateral(replace(JOINT, bite=bite)) for bite in (6, 10, 20, 40)]

    assert loads == sorted(loads)
    assert loads[0] < loads[-1]


def test_a_deep_bite_gives_all_that_the_side_lets_it() -> None:
    assert design_screw_lateral(replace(JOINT, bite=40)) == pytest.approx(
        design_screw_lateral(replace(JOINT, bite=80))
    )


def test_a_steel_plate_holds_a_screw_better_than_thin_wood() -> None:
    wood = replace(JOINT, side=6.0)
    steel = replace(JOINT, side=1.2, side_bearing=STEEL_PLATE)

    assert design_screw_lateral(steel) > design_screw_lateral(wood)


def test_six_diameters_are_a_full_bite() -> None:
    assert replace(JOINT, bite=6 * 4.17).bite_share == pytest.approx(1)


def test_a_screw_whose_tip_alone_is_in_the_wood_is_refused() -> None:
    with pytest.raises(BadInput, match="Only the tip"):
        design_screw_lateral(replace(JOINT, bite=4))


def test_thick_screws_are_divided_by_more() -> None:
    """10 D + 0.5 from 0.17 in up; 2.2 at 0.17 itself, so that there is no step."""
    assert reduction(0.1 * 25.4) == 2.2
    assert reduction(0.17 * 25.4) == pytest.approx(2.2)
    assert reduction(0.2 * 25.4) == pytest.approx(2.5)
    with pytest.raises(BadInput, match="thinner than 1/4 in"):
        reduction(6.35)


def test_thin_steel_bends_later_for_its_size() -> None:
    """100 000 lbf/in2 for No. 6, 90 000 for No. 8, 45 000 for a 1/2 in bolt."""
    assert [round(bending_yield(d) / 0.006894757) for d in (3.505, 4.166, 12.7)] == [
        100_000, 90_000, 45_000,
    ]  # fmt: skip
