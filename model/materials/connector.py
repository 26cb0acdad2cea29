"""What holds a rail to a post and lets go again: plates that hook in, and bolts."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Literal

from model.materials.table import beside, row_of, shipped
from model.units import Count, Mm, Newton

ConnectorKind = Literal["hook plate", "keyhole plate", "cross bolt", "bed bolt"]


@dataclass(frozen=True, kw_only=True)
class Connector:
    """One knock-down joint, a pair where it comes in pairs; what a kind does not have is zero.

    `pocket_depth_mm` is in the post, behind its plate; `lift_mm` the height a rail needs to be
    hung. `nut_from_end_mm` runs from the rail's end to the nut's centre; the counterbore is in the
    post's outer face. `load_n` is straight down on one joint.
    """

    key: str
    kind: ConnectorKind
    name: str
    plate_length_mm: Mm
    plate_width_mm: Mm
    plate_thickness_mm: Mm
    pocket_depth_mm: Mm
    lift_mm: Mm
    bolt_diameter_mm: Mm
    bolt_length_mm: Mm
    nut_diameter_mm: Mm
    nut_length_mm: Mm
    nut_from_end_mm: Mm
    counterbore_diameter_mm: Mm
    counterbore_depth_mm: Mm
    least_rail_thickness_mm: Mm
    least_rail_width_mm: Mm
    least_post_thickness_mm: Mm
    screw_gauge: str
    screw_length_mm: Mm | None
    screws_per_plate: Count
    load_n: Newton
    source: str
    note: str = ""

    @property
    def is_plate(self) -> bool:
        """Whether it hangs from plates let into post and rail, and so must be lifted in."""
        return self.plate_length_mm > 0


@dataclass(frozen=True, kw_only=True)
class BoltDrive:
    """What turns a bolt of one thread: the wrench for a hexagon head, the key for a socket head, as
    they are sold.
    """

    key: str
    name: str
    diameter_mm: Mm
    hexagon: str
    hex_key: str
    source: str
    note: str = ""


@lru_cache
def bolt_drives() -> Mapping[str, BoltDrive]:
    """What turns bolts, by their thread."""
    return shipped("bolt_drives.csv", BoltDrive)


@lru_cache
def _shipped() -> dict[str, Connector]:
    return shipped("connectors.csv", Connector)


def connectors(own: tuple[Connector, ...] = ()) -> Mapping[str, Connector]:
    """All knock-down joints by key, the maker's own after those of the trade."""
    return beside(_shipped(), own)


def connector(key: str, own: tuple[Connector, ...] = ()) -> Connector:
    """The knock-down joint with that key."""
    return row_of(connectors(own), key, "connector")
