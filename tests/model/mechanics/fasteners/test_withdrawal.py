"""Screws drawn out: what grows with what, and what is not allowed."""

from __future__ import annotations

import pytest

from model.errors import BadInput
from model.mechanics.fasteners.withdrawal import (
    design_head_pull_through,
    design_lag_withdrawal,
    design_screw_withdrawal,
    threaded_in,
    ultimate_screw_withdrawal,
)


def test_a_wood_screw_may_not_be_drawn_out_of_end_grain() -> None:
    assert design_screw_withdrawal(0.6, 4.83, 30, in_end_grain=True) == 0


def test_a_lag_screw_keeps_three_quarters_in_end_grain() -> None:
    side, end = (design_lag_withdrawal(0.5, 8, 60, in_end_grain=each) for each in (False, True))

    assert end == pytest.approx(0.75 * side)


def test_half_the_thread_holds_half() -> None:
    whole, half = (design_screw_withdrawal(0.5, 4.17, thread) for thread in (30, 15))

    assert half == pytest.approx(whole / 2)


def test_wood_twice_as_heavy_holds_four_times_as_much() -> None:
    light, heavy = (ultimate_screw_withdrawal(gravity, 4.17, 20) for gravity in (0.35, 0.70))

    assert heavy == pytest.approx(4 * light)


def test_two_thirds_of_a_screw_are_threaded() -> None:
    """A screw of 38 mm that bites 30 mm has 25.3 mm of thread to hold by."""
    assert threaded_in(30, 38.1) == pytest.approx(25.4)
    assert threaded_in(15, 38.1) == 15


def test_a_head_is_pulled_through_a_thin_side_sooner() -> None:
    """Both forms of the standard meet at 2.5 head diameters: 690 x 2.5 = 1725."""
    head = 8.3
    thin, at, thick = (design_head_pull_through(0.5, head, t) for t in (6, 2.5 * head, 60))

    assert thin == pytest.approx(at * 6 / (2.5 * head))
    assert thick == at


def test_a_screw_without_thread_in_the_wood_is_refused() -> None:
    with pytest.raises(BadInput, match="threaded length"):
        design_screw_withdrawal(0.5, 4.17, 0)
