"""Screws by what they join: their sizes, their holes, and the length that suits a stock."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache

from model.errors import BadInput, CannotBuild
from model.materials.table import row_of, shipped
from model.units import Degrees, Mm, Places

# Half a step of 1/8 in: stock this far outside the table is still called by its first or last row.
_BEYOND: Mm = 1.5875


@dataclass(frozen=True, kw_only=True)
class WoodScrew:
    """One gauge; the key is its number. Pilot holes are for the root, in soft and in hard wood."""

    key: str
    name: str
    shank_mm: Mm
    root_mm: Mm
    pilot_softwood_mm: Mm
    pilot_hardwood_mm: Mm
    shank_hole_mm: Mm
    counterbore_mm: Mm
    head_mm: Mm
    lengths_mm: Places
    source: str
    note: str = ""


@dataclass(frozen=True, kw_only=True)
class PocketScrew:
    """The screw for one thickness of stock; `seat_mm` is from its head to the joint, along it."""

    key: str
    name: str
    stock_mm: Mm
    length_mm: Mm
    seat_mm: Mm
    angle_degrees: Degrees
    pocket_diameter_mm: Mm
    pilot_diameter_mm: Mm
    shank_mm: Mm
    source: str
    note: str = ""


@dataclass(frozen=True, kw_only=True)
class PullScrew:
    """A machine screw that reaches a pull through the front, or through front and box."""

    key: str
    name: str
    diameter_mm: Mm
    length_mm: Mm
    clearance_hole_mm: Mm
    source: str
    note: str = ""


@lru_cache
def screws() -> Mapping[str, WoodScrew]:
    """Wood screws by gauge: "6", "8", "10"."""
    return shipped("wood_screws.csv", WoodScrew)


@lru_cache
def pocket_screws() -> Mapping[str, PocketScrew]:
    """Pocket screws by thickness of stock, thinnest first."""
    return shipped("pocket_screws.csv", PocketScrew)


@lru_cache
def pull_screws() -> Mapping[str, PullScrew]:
    """Pull screws, shortest of each thread first."""
    return shipped("pull_screws.csv", PullScrew)


def wood_screw(gauge: str | int) -> WoodScrew:
    """The wood screw of that gauge, written `8` or `#8`."""
    return row_of(screws(), str(gauge).strip().removeprefix("#"), "screw")


def pocket_screw(stock_mm: Mm) -> PocketScrew:
    """The pocket screw for stock of a true thickness: the row nearest to it.

    18 mm plywood, which measures 17.7, so counts as 3/4 in; whether the point stays inside is a
    check of its own.
    """
    rows = tuple(pocket_screws().values())
    thinnest, thickest = rows[0].stock_mm - _BEYOND, rows[-1].stock_mm + _BEYOND
    if not thinnest <= stock_mm <= thickest:
        raise CannotBuild(
            "stock",
            "There is no pocket screw for stock of this thickness.",
        )
    return min(rows, key=lambda row: abs(row.stock_mm - stock_mm))


def pocket_screw_for(stock_mm: Mm) -> Mm:
    """Length of the pocket screw for stock of a true thickness.

    Source: common practice for 1/2, 3/4 and 1 1/2 in; the others from memory.
    """
    return pocket_screw(stock_mm).length_mm


def screw_no_longer_than(gauge: str | int, most: Mm) -> Mm:
    """The longest sold length of a gauge whose point stays inside `most`."""
    screw = wood_screw(gauge)
    fitting = [length for length in screw.lengths_mm if length <= most + 1e-6]
    if not fitting:
        raise CannotBuild(
            "screw",
            f"Even the shortest {screw.name} would come through.",
        )
    return max(fitting)


def pull_screw_for(grip_mm: Mm, least_thread_mm: Mm, thread: str = "8_32") -> PullScrew:
    """The shortest pull screw that passes `grip_mm` of wood and still bites into the pull.

    `thread` is "8_32" or "m4".
    """
    rows = [row for key, row in pull_screws().items() if key.startswith(thread + "_")]
    if not rows:
        raise BadInput("screw", f"There is no pull screw with the thread “{thread}”.")
    fitting = [row for row in rows if row.length_mm >= grip_mm + least_thread_mm - 1e-6]
    if not fitting:
        raise CannotBuild(
            "front_stock",
            "Front and box together are too thick for any pull screw.",
        )
    return min(fitting, key=lambda row: row.length_mm)
