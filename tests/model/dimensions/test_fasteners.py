"""Screws are as long as the wood lets them be."""

from model.dimensions.fasteners import longest_screw


def test_the_longest_screw_that_stays_inside_is_taken() -> None:
    assert longest_screw(28.0).length == 25.4
    assert longest_screw(28.0).screw.key == "8"


def test_thin_stock_takes_a_thinner_gauge() -> None:
    assert longest_screw(16.0).screw.key == "6"
    assert longest_screw(13.0, ("8", "4")).screw.key == "4"


def test_stock_too_thin_for_any_takes_the_shortest_so_that_the_check_can_tell() -> None:
    assert longest_screw(5.0).length == 9.525  # 3/8 in
