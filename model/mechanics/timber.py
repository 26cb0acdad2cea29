"""How the strength of wood changes with depth, with the angle to the grain and with moisture."""

from __future__ import annotations

import math

from model.units import Degrees, Mm, Mpa

_USUAL_DEPTH: Mm = 50.8  # the depth of the pieces whose strength the tables give: 2 in


def depth_factor(depth: Mm) -> float:
    """Deep beams fail at a lower bending stress: (2 in / depth)^(1/9), never above 1.

    Source: ASTM D245, from memory
    """
    return min(1.0, float((_USUAL_DEPTH / depth) ** (1 / 9)))


def at_angle(along: Mpa, across: Mpa, angle: Degrees) -> Mpa:
    """What wood bears at an angle to its grain: Hankinson, P Q / (P sin^2 + Q cos^2).

    Source: Wood Handbook 2021 (FPL-GTR-282), eq 8-16
    """
    sine, cosine = math.sin(math.radians(angle)), math.cos(math.radians(angle))
    return along * across / (along * sine**2 + across * cosine**2)


def at_moisture(dry: Mpa, green: Mpa, moisture: float, turning: float = 25.0) -> Mpa:
    """A strength at another moisture: `dry` at 12 %, `green` above `turning` (% where drying begins
    to strengthen this wood: 24 ash and Douglas-fir, 27 yellow birch, 21 loblolly and redwood).

    Wetter than `turning` it stays the green one. Not for tension across the grain.
    Source: Wood Handbook 2021 (FPL-GTR-282), eq 5-3
    """
    if moisture >= turning:
        return green
    return float(dry * (dry / green) ** ((12 - moisture) / (turning - 12)))
