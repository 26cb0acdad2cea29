"""Where pockets stand across a member's width."""

from __future__ import annotations

import pytest

from model.joints.pocket import pocket_offsets, width_for_two

BORE = 9.525  # 3/8 in


def offsets(width: float, lower: float = 0.0, upper: float = 0.0) -> tuple[float, ...]:
    return pocket_offsets(width, lower=lower, upper=upper, bore=BORE)


def test_a_2_in_stile_takes_two_pockets() -> None:
    """Two pocket screws in each end of a 2 in stile: common practice."""
    assert offsets(50.8) == pytest.approx((12.0, 38.8))


def test_a_narrow_stile_takes_one_in_its_middle() -> None:
    assert offsets(38.0) == pytest.approx((19.0,))


@pytest.mark.parametrize(("lower", "upper"), [(0, 0), (9.525, 9.525), (0, 20)])
def test_two_find_room_from_the_width_that_is_told(lower: float, upper: float) -> None:
    least = width_for_two(lower, upper, BORE)

    assert len(offsets(least, lower, upper)) == 2
    assert len(offsets(least - 0.1, lower, upper)) == 1


def test_two_bores_never_meet_each_other_an_edge_or_a_groove() -> None:
    for width in range(20, 120):
        for cut in (0.0, 9.525):
            at = offsets(width, cut, cut)
            if len(at) > 1:
                assert min(b - a for a, b in zip(at, at[1:], strict=False)) >= BORE + 6
                assert at[0] - BORE / 2 >= max(cut + 3, 12 - BORE / 2) - 1e-9
                assert width - at[-1] == pytest.approx(at[0])


def test_wide_members_take_more() -> None:
    assert len(offsets(190.0)) == 3
