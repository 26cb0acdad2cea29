"""How much water wood takes on in a room, and what that does to its weight.

Moisture is in % of the oven-dry mass, relative humidity in %, temperature in degrees Celsius. Wood
left in a room comes to its equilibrium moisture content; 0.1 % is no real precision.
"""

from __future__ import annotations

import math

from model.errors import BadInput
from model.units import Celsius, KgPerM3, Percent

DRIEST_AIR, DAMPEST_AIR = 5.0, 95.0  # % relative humidity: what table 4-2 covers
COLDEST, HOTTEST = (30 - 32) / 1.8, (270 - 32) / 1.8  # °C: 30 to 270 °F, as table 4-2
_KELVIN = 273.15

# Wood Handbook 2021 (FPL-GTR-282), eq 4-5: constant, T and T² of W, K, K1 and K2.
_IN_CELSIUS = (
    (349, 1.29, 0.0135),
    (0.805, 0.000736, -0.00000273),
    (6.27, -0.00938, -0.000303),
    (1.91, 0.0407, -0.000293),
)
_IN_FAHRENHEIT = (
    (330, 0.452, 0.00415),
    (0.791, 0.000463, -0.000000844),
    (6.34, 0.000775, -0.0000935),
    (1.09, 0.0284, -0.0000904),
)


def equilibrium_moisture(humidity: Percent, temperature: Celsius) -> Percent:
    """The moisture that wood comes to in air of that humidity and temperature.

    Refused with BadInput: air outside 5 to 95 % or -1.1 to 132.2 °C.
    Source: Wood Handbook 2021 (FPL-GTR-282), eq 4-5, in °C
    """
    _check_air(humidity, temperature)
    return _isotherm(humidity / 100, temperature, _IN_CELSIUS)


def equilibrium_moisture_fahrenheit(humidity: Percent, fahrenheit: float) -> Percent:
    """The same by the constants for degrees Fahrenheit, which the handbook gives beside the others.

    Refused as above.
    Source: Wood Handbook 2021 (FPL-GTR-282), eq 4-5, in °F
    """
    _check_air(humidity, (fahrenheit - 32) / 1.8)
    return _isotherm(humidity / 100, fahrenheit, _IN_FAHRENHEIT)


def equilibrium_moisture_newer(humidity: Percent, temperature: Celsius) -> Percent:
    """The same by the newer fit, about 0.2 % above the table in a living room.

    Refused as above.
    Source: Wood Handbook 2021 (FPL-GTR-282), eq 4-6
    """
    _check_air(humidity, temperature)
    kelvin = temperature + _KELVIN
    base = -0.000612 * kelvin * (1 - kelvin / 647.1) ** 2.43 * math.log(1 - humidity / 100)
    return float(100 * base ** (0.0577 * kelvin**0.430))


def _isotherm(h: float, t: float, constants: tuple[tuple[float, float, float], ...]) -> float:
    """Eq 4-5: h relative humidity from 0 to 1, t in the degrees of the constants."""
    w, k, k1, k2 = (a + b * t + c * t * t for a, b, c in constants)
    kh = k * h
    first, second = k1 * kh, k1 * k2 * kh * kh
    return 1800 / w * (kh / (1 - kh) + (first + 2 * second) / (1 + first + second))


def _check_air(humidity: Percent, temperature: Celsius) -> None:
    if not DRIEST_AIR <= humidity <= DAMPEST_AIR:
        raise BadInput(
            "humidity",
            f"Wood's moisture is known for air of {DRIEST_AIR:g} to {DAMPEST_AIR:g} % relative "
            f"humidity, not for {humidity:g} %.",
        )
    if not COLDEST <= temperature <= HOTTEST:
        raise BadInput(
            "temperature",
            f"Wood's moisture is known for air of {COLDEST:.1f} to {HOTTEST:.1f} °C, not for "
            f"{temperature:g} °C.",
        )


def density_at(specific_gravity: float, moisture: Percent) -> KgPerM3:
    """What a cubic metre weighs; the specific gravity is that of the same moisture.

    Source: Wood Handbook 2021 (FPL-GTR-282), eq 4-14
    """
    return 1000 * specific_gravity * (1 + moisture / 100)


def gravity_at(basic: float, volume_shrinkage: Percent, moisture: Percent) -> float:
    """Specific gravity at a moisture below 30 %, from that on the green volume.

    Source: Wood Handbook 2021 (FPL-GTR-282), eq 4-11 with 4-9
    """
    return basic / (1 - volume_shrinkage * (1 - moisture / 30) / 100)
