"""Lumber on the bill.

A board foot is 144 cubic inches of rough board; the worked examples are those of every primer on
buying hardwood: 1 x 12 in x 1 ft is one board foot, 2 x 4 in x 8 ft is 5 1/3, and 8/4 x 6 in x 8 ft
is 8. Board foot and cubic metre: 423.776 board feet to a cubic metre (from memory: conversion table
of the forest products trade).
"""

from __future__ import annotations

import pytest

from model.cost.lumber_measure import measure
from model.units import INCH

FOOT = 12 * INCH


@pytest.mark.parametrize(
    ("thickness", "width", "length", "feet"),
    [(1, 12, 1, 1.0), (2, 4, 8, 5 + 1 / 3), (2, 6, 8, 8.0), (1.25, 8, 10, 8 + 1 / 3)],
)
def test_a_board_foot_is_144_cubic_inches(
    thickness: float, width: float, length: float, feet: float
) -> None:
    sides = (thickness * INCH, length * FOOT, width * INCH)

    assert measure(*sides, "board foot") == pytest.approx(feet)


def test_thin_boards_are_billed_as_an_inch() -> None:
    thin, inch = (measure(thick, 8 * FOOT, 6 * INCH, "board foot") for thick in (INCH / 2, INCH))

    assert thin == inch == pytest.approx(4.0)


def test_a_cubic_metre_is_424_board_feet() -> None:
    cube = (1000.0, 1000.0, 1000.0)

    assert measure(*cube, "cubic metre") == pytest.approx(1.0)
    assert measure(*cube, "board foot") == pytest.approx(423.776, abs=0.001)
