"""What one long view of a part is to show, and where its points lie on paper."""

from __future__ import annotations

from dataclasses import dataclass

from model.drawings.dimensioning.told import Told
from model.drawings.paper import Point
from model.drawings.part_sheet.faces import Look
from model.drawings.part_sheet.record import Group, Stub
from model.part import Part
from model.units import Mm, Share

WIDE_ENOUGH: Mm = 14.0  # on paper: heights can be shown beside the view itself


@dataclass(frozen=True, kw_only=True)
class Shown:
    """`groups` lie in the face of the view, `ends` are the part's tenons, `cuts` the letters of
    sections and where they are cut, `detail` that of the section along it. Only the main view
    (`is_main`) has the whole sizes.
    """

    part: Part
    look: Look
    scale: Share
    told: Told
    groups: tuple[Group, ...]
    ends: tuple[Stub, ...] = ()
    cuts: tuple[tuple[str, Mm], ...] = ()
    detail: str = ""
    is_main: bool = False
    title: str = ""

    @property
    def size(self) -> tuple[Mm, Mm]:
        """On paper; the lower left corner is (0, 0)."""
        size = self.part.size
        return (size[0] * self.scale, self.look.height(size) * self.scale)

    @property
    def is_wide(self) -> bool:
        """Whether heights are shown beside the view."""
        is_flat = self.look.up == 1 and not self.part.is_round
        return is_flat and self.size[1] >= WIDE_ENOUGH

    def paper(self, along: Mm, up: Mm) -> Point:
        """A point of the face: from the near end, and from the lower edge or the back."""
        size = self.part.size
        x = size[0] - along if self.look.is_turned else along
        y = up if self.look.up_sign > 0 else self.look.height(size) - up
        return (x * self.scale, y * self.scale)

    @property
    def sides(self) -> str:
        """Which end and which edge lie where on paper."""
        end = "right" if self.look.is_turned else "left"
        return f"{self.look.above} above, near end at the {end}"
