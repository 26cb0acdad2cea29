"""How long a load lies on wood, and how much more of it wood bears when it lies less long.

Wood gives way to a lasting load that it would carry for an hour. Allowable stresses are for ten
years of full load; a factor from here turns one into the stress for another time. Compression
across the grain is held to a deformation and takes no such factor (NDS 2018, 2.3.2, from memory).
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

LoadTime = Literal[
    "permanent", "ten years", "two months", "seven days", "ten minutes", "impact"
]  # fmt: skip
Product = Literal["solid", "plywood", "fibreboard"]

TEN_YEARS_S = 3.156e8


@dataclass(frozen=True, kw_only=True)
class Lasting:
    """One row: how long the load lies, and each product's strength as a share of that for ten
    years. `seconds` is the time that the curve is compared at; an impact has none.
    """

    time: LoadTime
    seconds: float
    what: str
    solid: float
    plywood: float
    fibreboard: float


# Solid: NDS 2018 (National Design Specification for Wood Construction), table 2.3.2, from memory.
# Sheets: EN 1995-1-1:2004, table 3.1, service class 1, from memory, each over its long-term value:
# plywood 0.60, 0.70, 0.80, 0.90, 1.10; MDF 0.20, 0.40, 0.60, 0.80, 1.10 (hardboard and
# particleboard lie a little above MDF). Ten minutes has no class of its own there: short-term.
# What of a bed counts as what: common practice, no source.
LASTINGS: tuple[Lasting, ...] = (
    Lasting(
        time="permanent", seconds=1.578e9, what="mattress, stored things, the bed itself",
        solid=0.90, plywood=0.60 / 0.70, fibreboard=0.20 / 0.40,
    ),
    Lasting(
        time="ten years", seconds=TEN_YEARS_S, what="sleepers, night after night",
        solid=1.00, plywood=1.00, fibreboard=1.00,
    ),
    Lasting(
        time="two months", seconds=5.26e6, what="guests over a season, boxes put on the bed",
        solid=1.15, plywood=0.80 / 0.70, fibreboard=0.60 / 0.40,
    ),
    Lasting(
        time="seven days", seconds=604800.0, what="sitting, leaning back, kneeling, added up",
        solid=1.25, plywood=0.90 / 0.70, fibreboard=0.80 / 0.40,
    ),
    Lasting(
        time="ten minutes", seconds=600.0, what="one test load, a bed lifted or dragged",
        solid=1.60, plywood=0.90 / 0.70, fibreboard=0.80 / 0.40,
    ),
    Lasting(
        time="impact", seconds=0.0, what="a person dropping onto the bed",
        solid=2.00, plywood=1.10 / 0.70, fibreboard=1.10 / 0.40,
    ),
)  # fmt: skip
SOURCES: dict[Product, str] = {
    "solid": "NDS 2018, table 2.3.2, from memory",
    "plywood": "EN 1995-1-1:2004, table 3.1, plywood, service class 1, from memory",
    "fibreboard": "EN 1995-1-1:2004, table 3.1, MDF, service class 1, from memory",
}
_BY_TIME = {row.time: row for row in LASTINGS}


def duration_factor(time: LoadTime, product: Product = "solid") -> float:
    """What a product bears for that time, as a share of what it bears for ten years."""
    factor: float = getattr(_BY_TIME[time], product)
    return factor


def share_of_short_test(seconds: float) -> float:
    """Strength under a load of that many seconds, as a share of the five-minute test's.

    108.4 t^-0.04635 + 18.3 %. Refused: nothing; a test shorter than a second is not its field.
    Source: the hyperbolic curve of 1951 (Forest Products Laboratory), from memory
    """
    return float((108.4 * seconds**-0.04635 + 18.3) / 100)


def curve_factor(seconds: float) -> float:
    """The same curve as a ratio to ten years, to be held against the factors of the table."""
    return share_of_short_test(seconds) / share_of_short_test(TEN_YEARS_S)
