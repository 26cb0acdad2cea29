"""What the trade uses up: coatings, glue, abrasives, fasteners by the box, and kinds of work.

The tables lie in `resources/`, each figure with its source; none has a price.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Literal

from model.materials.table import row_of, shipped
from model.units import Count, Mm

Litres = float
SquareMetres = float


@dataclass(frozen=True, kw_only=True)
class Coating:
    """What is spread on wood: how far a litre goes in one coat, and the can it is sold in."""

    key: str
    name: str
    m2_per_litre: float
    can_us_l: Litres
    can_metric_l: Litres
    source: str
    note: str = ""


@dataclass(frozen=True, kw_only=True)
class Glue:
    """What a joint's area takes, in litres on one face, and the bottle it is sold in."""

    key: str
    name: str
    litres_per_m2: float
    bottle_us_l: Litres
    bottle_metric_l: Litres
    source: str
    note: str = ""


@dataclass(frozen=True, kw_only=True)
class Abrasive:
    """One grit: how much wood a disc sands before it is dull, and on what it is used."""

    key: str
    grit: Count
    name: str
    m2_per_disc: SquareMetres
    on_solid: Literal["yes", "no"]
    on_sheets: Literal["yes", "no"]
    source: str
    note: str = ""


@dataclass(frozen=True, kw_only=True)
class Pack:
    """How many of a thing are sold together; of screws, those no longer than `up_to_mm`."""

    key: str
    name: str
    up_to_mm: Mm
    pack: Count
    source: str
    note: str = ""


@dataclass(frozen=True, kw_only=True)
class JointFasteners:
    """What a joint takes whose screws nobody has placed: at least `least`, and one more for every
    `apart_mm` along it. `key` is the joint's name.
    """

    key: str
    driven: Literal["wood screw", "pocket screw", "pin"]
    least: Count
    apart_mm: Mm
    source: str
    note: str = ""


@dataclass(frozen=True, kw_only=True)
class Operation:
    """A kind of work and the unit in which it is counted; what one takes is the maker's rate."""

    key: str
    name: str
    unit: str
    source: str
    note: str = ""


@lru_cache
def coatings() -> Mapping[str, Coating]:
    """Coatings by key, in the order in which they go on."""
    return shipped("coatings.csv", Coating)


@lru_cache
def glue() -> Glue:
    """The glue that joints are reckoned with."""
    return row_of(shipped("glues.csv", Glue), "pva", "glue")


@lru_cache
def abrasives() -> Mapping[str, Abrasive]:
    """Grits by key, the coarsest first; `between` is for between coats."""
    return shipped("abrasives.csv", Abrasive)


@lru_cache
def _packs() -> Mapping[str, Pack]:
    return shipped("packs.csv", Pack)


def pack_of(kind: str, length: Mm = 0.0) -> Pack:
    """How things of a kind are sold: the row of the kind that is long enough."""
    rows = [row for row in _packs().values() if row.key.startswith(kind)]
    return next(row for row in rows if length <= row.up_to_mm + 1e-6)


@lru_cache
def joint_fasteners() -> Mapping[str, JointFasteners]:
    """What joints take whose screws nobody has placed, by the joint's name."""
    return shipped("joint_fasteners.csv", JointFasteners)


@lru_cache
def operations() -> Mapping[str, Operation]:
    """Kinds of work by key, in the order of the shop."""
    return shipped("operations.csv", Operation)
