"""Equilibrium moisture content against the Wood Handbook, 2021 (FPL-GTR-282), chapter 4.

Table 4-2 as a Swedish fact sheet prints ten of its cells; equation 4-5 computed by hand for rooms.
"""

from __future__ import annotations

import pytest

from model.errors import BadInput
from model.materials.moisture import (
    density_at,
    equilibrium_moisture,
    equilibrium_moisture_fahrenheit,
    equilibrium_moisture_newer,
    gravity_at,
)

TABLE_4_2 = [  # °C, relative humidity %, moisture %
    (-1.1, 75, 14.9),
    (-1.1, 95, 24.3),
    (21.1, 5, 1.3),
    (21.1, 30, 6.2),
    (21.1, 50, 9.2),
    (21.1, 75, 14.4),
    (21.1, 85, 17.9),
    (21.1, 95, 23.9),
    (37.8, 50, 8.7),
    (37.8, 90, 19.5),
]
EQ_4_5 = [(20, 30, 6.19), (20, 40, 7.72), (20, 50, 9.27), (20, 65, 12.0), (20, 80, 16.04)]


@pytest.mark.parametrize(("celsius", "humidity", "expected"), TABLE_4_2)
def test_table_4_2_in_celsius(celsius: float, humidity: float, expected: float) -> None:
    # 0.07: the cell is printed to 0.1, and the equation is a fit to the table.
    assert equilibrium_moisture(humidity, celsius) == pytest.approx(expected, abs=0.07)


@pytest.mark.parametrize(("celsius", "humidity", "expected"), TABLE_4_2)
def test_table_4_2_in_fahrenheit(celsius: float, humidity: float, expected: float) -> None:
    found = equilibrium_moisture_fahrenheit(humidity, celsius * 1.8 + 32)

    assert found == pytest.approx(expected, abs=0.07)


@pytest.mark.parametrize(("celsius", "humidity", "expected"), [*EQ_4_5, (24, 65, 11.85)])
def test_equation_4_5_in_a_room(celsius: float, humidity: float, expected: float) -> None:
    assert equilibrium_moisture(humidity, celsius) == pytest.approx(expected, abs=0.006)


def test_equation_4_6_in_a_room() -> None:
    assert equilibrium_moisture_newer(50, 20) == pytest.approx(9.47, abs=0.006)


@pytest.mark.parametrize("fahrenheit", range(30, 111, 5))
@pytest.mark.parametrize("humidity", range(5, 96, 5))
def test_both_columns_of_constants_agree(fahrenheit: float, humidity: float) -> None:
    celsius = (fahrenheit - 32) / 1.8

    found = equilibrium_moisture_fahrenheit(humidity, fahrenheit)

    assert found == pytest.approx(equilibrium_moisture(humidity, celsius), abs=0.02)


def test_degrees_of_one_kind_in_the_constants_of_the_other_are_noticed_in_the_heat() -> None:
    """At 20 °C the slip looks right (9.46 for 9.27); at 37.8 °C it gives 9.52 for 8.7."""
    assert equilibrium_moisture_fahrenheit(50, 37.8) == pytest.approx(9.52, abs=0.01)
    assert equilibrium_moisture(50, 37.8) == pytest.approx(8.7, abs=0.07)


@pytest.mark.parametrize("celsius", [0, 10, 20, 30, 37.8])
def test_damper_air_makes_wetter_wood(celsius: float) -> None:
    found = [equilibrium_moisture(humidity, celsius) for humidity in range(5, 96, 5)]

    assert found == sorted(found)


@pytest.mark.parametrize("humidity", [20, 50, 80])
def test_warmer_air_of_the_same_humidity_makes_drier_wood(humidity: float) -> None:
    found = [equilibrium_moisture(humidity, celsius) for celsius in range(20, 60, 5)]

    assert found == sorted(found, reverse=True)


@pytest.mark.parametrize("humidity", [0, 4.9, 95.1, 100, -10, 1000])
@pytest.mark.parametrize("model", [equilibrium_moisture, equilibrium_moisture_newer])
def test_air_that_the_table_does_not_cover_is_refused(model: object, humidity: float) -> None:
    with pytest.raises(BadInput, match=r"5 to 95 % relative humidity, not for"):
        model(humidity, 20)  # type: ignore[operator]


@pytest.mark.parametrize("celsius", [-20, 133, 1e9])
def test_temperatures_beyond_the_table_are_refused(celsius: float) -> None:
    with pytest.raises(BadInput, match=r"-1.1 to 132.2 °C, not for"):
        equilibrium_moisture(50, celsius)


def test_equation_4_14_weight_of_a_cubic_metre() -> None:
    assert density_at(0.42, 12) == pytest.approx(470.4, abs=0.05)


def test_equation_4_11_specific_gravity_from_the_green_one() -> None:
    assert gravity_at(0.40, 12.7, 12) == pytest.approx(0.433, abs=6e-5)
