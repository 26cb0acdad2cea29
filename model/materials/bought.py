"""What bought things weigh, reckoned from the simple solid that stands for each."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from model.materials.table import shipped
from model.units import KgPerM3, Share


@dataclass(frozen=True, kw_only=True)
class BoughtWeight:
    """One kind of bought thing: `filled_share` of its simple solid is of this density.

    `key` is how its code begins: `SLIDE` stands for `SLIDE-711` and `SLIDE-711-inner`.
    """

    key: str
    name: str
    density_kg_m3: KgPerM3
    filled_share: Share
    source: str
    note: str = ""


@lru_cache
def bought_weights() -> dict[str, BoughtWeight]:
    """All kinds of bought things by the beginning of their codes."""
    return shipped("bought_weights.csv", BoughtWeight)


@lru_cache(maxsize=256)
def bought_density(code: str) -> KgPerM3:
    """Mass of a bought thing over the volume of its simple solid; 0 for a code without a row."""
    rows = bought_weights()
    key = next((key for key in rows if code.startswith(key)), "")
    return rows[key].density_kg_m3 * rows[key].filled_share if key else 0.0
