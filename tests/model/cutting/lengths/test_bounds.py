"""Bounds that are certain before anything is solved, and the next cost that can be made."""

from fractions import Fraction

from model.cutting.lengths.bounds import least_sticks, reachable


def test_pieces_over_half_a_stick_need_one_each() -> None:
    assert least_sticks([60, 51], [4, 3], 100) == 7


def test_area_alone_is_rounded_up() -> None:
    assert least_sticks([10], [21], 100) == 3


def test_three_just_over_a_third_do_not_share_a_stick() -> None:
    """By length alone ten of 34 would go on 3.4 sticks of 100, but each holds only two."""
    assert least_sticks([34], [10], 100) == 5


def test_small_pieces_do_not_fill_the_room_beside_large_ones_that_is_too_short() -> None:
    """Martello and Toth's bound: 70 leaves 30, which no 31 uses: 6 + 2 sticks (by hand)."""
    assert least_sticks([70, 31], [6, 6], 100) == 8


def test_a_bound_rises_to_the_next_sum_of_costs() -> None:
    assert reachable(Fraction(1001, 100), [4, 10], [None, None], 100) == 12
    assert reachable(Fraction(10), [4, 10], [None, None], 100) == 10


def test_stock_that_is_used_up_makes_no_further_sums() -> None:
    """With one of 4 at most, 8 cannot be made: 10 is next."""
    assert reachable(Fraction(5), [4, 10], [1, None], 100) == 10
