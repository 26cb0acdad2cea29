"""What is common to all woods: how far pieces of one wood spread about its average, what ten years
and safety take off, and how strength follows from specific gravity where no figure is published.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache

from model.materials.species import Species
from model.materials.table import row_of, shipped
from model.units import Mpa, Share

_FIVE_OF_A_HUNDRED = 1.645  # standard deviations below the mean of a normal distribution


@dataclass(frozen=True, kw_only=True)
class ClearFigure:
    """One figure of clear wood at 12 % moisture.

    `variation` is the coefficient of variation; None where the average itself is used. The line
    through all woods is `factor` x specific gravity ^ `power`, MPa; `least` is the share of it that
    the weakest wood beside the line still reaches.
    """

    key: str
    name: str
    variation: float | None
    hardwood_divisor: float
    softwood_divisor: float
    hardwood_factor: float
    hardwood_power: float
    hardwood_least: Share
    softwood_factor: float
    softwood_power: float
    softwood_least: Share
    source: str
    source_variation: str
    source_divisor: str
    source_relation: str
    source_least: str

    @property
    def fifth_percentile(self) -> Share:
        """The share of the average that 95 pieces of 100 reach.

        Source: 1 - 1.645 x coefficient of variation (ASTM D245; ASTM D2555)
        """
        return 1 - _FIVE_OF_A_HUNDRED * (self.variation or 0.0)

    def divisor(self, kind: str) -> float:
        """What ten years of load and safety take off, for hardwood or softwood."""
        return self.hardwood_divisor if kind == "hardwood" else self.softwood_divisor

    def least(self, kind: str) -> Share:
        """The share of the line that the weakest wood beside it reaches."""
        return self.hardwood_least if kind == "hardwood" else self.softwood_least

    def line(self, wood: Species) -> Mpa:
        """The average that woods of this wood's specific gravity have."""
        return self.line_at(wood.kind, wood.specific_gravity)

    def line_at(self, kind: str, specific_gravity: float) -> Mpa:
        """The average that hardwoods or softwoods of a specific gravity have.

        Source: Wood Handbook 2010 (FPL-GTR-190), table 5-11a, from memory
        """
        is_hard = kind == "hardwood"
        factor = self.hardwood_factor if is_hard else self.softwood_factor
        power = self.hardwood_power if is_hard else self.softwood_power
        return float(factor * specific_gravity**power)


@lru_cache
def clear_figures() -> Mapping[str, ClearFigure]:
    """Figures by key: `bending`, `shear`, `compression_across` and their like."""
    return shipped("clear_wood.csv", ClearFigure)


def clear_figure(key: str) -> ClearFigure:
    """The figure with that key."""
    return row_of(clear_figures(), key, "figure")
