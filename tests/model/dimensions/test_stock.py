"""Measured beats nominal: what the caliper said is what the rules go on with."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from model.dimensions import stock

INCH = 25.4


@pytest.mark.parametrize(
    "thickness",
    [
        *(stock.frame_thickness, stock.slat_thickness, stock.deck_sheet_thickness),
        *(stock.box_thickness, stock.bottom_thickness, stock.front_thickness),
        *(stock.panel_layer_thickness, stock.mattress_piece_width),
        *(stock.mattress_along, stock.mattress_high),
    ],
    ids=lambda rule: rule.__name__,
)
def test_a_measured_size_beats_the_nominal_one(thickness: Callable[..., float]) -> None:
    """A cabinet of 3/4 in plywood came out narrow: the sheet measured less than its name."""
    assert thickness(19.05, None) == 19.05
    assert thickness(19.05, 17.7) == 17.7


def test_the_mattress_lies_on_what_the_deck_is_made_of() -> None:
    assert stock.deck_thickness("slats", 19, 15) == 19
    assert stock.deck_thickness("panels", 19, 15) == 15


def test_a_panel_is_as_thick_as_all_its_layers() -> None:
    assert stock.panel_thickness(6.35, 2) == 2 * 6.35


def test_a_laminated_post_is_as_deep_as_its_layers() -> None:
    assert stock.post_along("laminated", 70, 3, 22) == 3 * 22


def test_a_solid_post_is_as_deep_as_it_was_chosen() -> None:
    assert stock.post_along("solid", 70, 3, 22) == 70


def test_a_measured_stock_makes_the_laminated_post_thinner() -> None:
    nominal = stock.post_along("laminated", 70, 3, stock.frame_thickness(22.225, None))
    measured = stock.post_along("laminated", 70, 3, stock.frame_thickness(22.225, 21.9))

    assert nominal - measured == pytest.approx(3 * (22.225 - 21.9))


def test_two_mattresses_lie_side_by_side_and_are_as_wide_as_both() -> None:
    """A builder counted on 76 in for two narrow mattresses; they measured 39 in each."""
    label = stock.mattress_piece_width(38 * INCH, None)
    measured = stock.mattress_piece_width(38 * INCH, 39 * INCH)

    assert stock.mattress_across(label, 2) == pytest.approx(76 * INCH)
    assert stock.mattress_across(measured, 2) == pytest.approx(78 * INCH)


def test_a_mattress_lies_in_the_middle() -> None:
    from_x = stock.mattress_from_x(1524)

    assert from_x + 1524 == -from_x
