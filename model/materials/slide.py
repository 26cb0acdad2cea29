"""What a drawer runs on: the room it takes, how far it lets the drawer out, what it bears."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Literal

from model.materials.table import beside, row_of, shipped
from model.units import Kg, Mm, Places, Share

SlideKind = Literal["side-mount ball-bearing", "centre runner", "wooden runner"]


@dataclass(frozen=True, kw_only=True)
class Slide:
    """One kind of slide or runner.

    Each side of the box takes `thickness_mm` and a play between its two limits. `lengths_mm` are
    sold lengths, empty for runners that are cut to the box. `travel_share` is of the closed length.
    `room_below_mm`, `room_above_mm`: air between box and opening, to tilt the box in and out.
    `load_kg` is for a pair, standing still.
    """

    key: str
    kind: SlideKind
    name: str
    thickness_mm: Mm
    play_low_mm: Mm
    play_high_mm: Mm
    section_height_mm: Mm
    room_below_mm: Mm
    room_above_mm: Mm
    lengths_mm: Places
    travel_share: Share
    load_kg: Kg
    source: str
    note: str = ""

    @property
    def side_space_low_mm(self) -> Mm:
        """The narrowest space beside the box that does not crush the slide."""
        return self.thickness_mm + self.play_low_mm

    @property
    def side_space_high_mm(self) -> Mm:
        """The widest space beside the box that does not pull the slide apart."""
        return self.thickness_mm + self.play_high_mm

    @property
    def holds_the_drawer(self) -> bool:
        """Whether the slide itself stops the drawer from coming out; a runner needs a stop."""
        return self.kind == "side-mount ball-bearing"

    @property
    def is_cut_to_length(self) -> bool:
        """Whether the maker cuts it, so that any length can be had."""
        return not self.lengths_mm

    def longest_within(self, room: Mm) -> Mm | None:
        """The longest slide for a closed length of `room`; None when none is so short."""
        if self.is_cut_to_length:
            return room
        return max((length for length in self.lengths_mm if length <= room + 1e-6), default=None)


@lru_cache
def _shipped() -> dict[str, Slide]:
    return shipped("slides.csv", Slide)


def slides(own: tuple[Slide, ...] = ()) -> Mapping[str, Slide]:
    """All slides and runners by key, the maker's own after those of the trade."""
    return beside(_shipped(), own)


def slide(key: str, own: tuple[Slide, ...] = ()) -> Slide:
    """The slide or runner with that key."""
    return row_of(slides(own), key, "slide")
