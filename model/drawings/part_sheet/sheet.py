"""The drawing of one mark for a given room: at the largest scale that fits."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import NamedTuple

from model.drawings.dimensioning.told import Told
from model.drawings.paper import Drawing, Measure, Text
from model.drawings.part_sheet.arrange import arrangements
from model.drawings.part_sheet.block import Block
from model.drawings.part_sheet.blocks import LIMITS, Blocks
from model.drawings.part_sheet.grain_arrow import grain_of
from model.drawings.part_sheet.remarks import remarks
from model.drawings.scales import scales
from model.parts.marks import Mark
from model.units import Mm, Share

SHORTEST: Mm = 40.0  # on paper, of the longer side of the main view: a smaller one is a blot
_HAIR: Mm = 1e-6


class _Try(NamedTuple):
    """All views and sections in their places, and the scale of the long views."""

    block: Block
    scale: Share


@dataclass(frozen=True, kw_only=True)
class PartSheet:
    """The drawing of a mark, its lower left corner at (0, 0), as large as what is on it.

    `told` are all the words on it; its scale is that of its long views. It is no larger than the
    room that was given, unless `fits` is False: then it is as low as can be.
    """

    drawing: Drawing
    told: tuple[str, ...]
    fits: bool


class PartSheets:
    """The drawings of one mark for rooms of one width: what a room's height changes is only which
    of the tries fits, so each try is made once.

    Views are rolled in third-angle projection where None is said and the unit is the inch, else in
    first-angle.
    """

    def __init__(
        self, mark: Mark, told: Told, width: Mm, is_third_angle: bool | None = None
    ) -> None:
        third = told.unit == "inch" if is_third_angle is None else is_third_angle
        self._mark, self._width = mark, width
        self._tries = _tries(mark, told, width, third)
        self._made: list[_Try] = []
        self._drawn: dict[tuple[int, bool], PartSheet] = {}

    def scale(self, height: Mm) -> tuple[Share, bool]:
        """The scale for a room of this height, and whether the drawing fits there."""
        at, fits = self._best(height)
        return self._made[at].scale, fits

    def of_height(self, height: Mm) -> PartSheet:
        """The drawing for a room of this height, at the largest scale that fits in it."""
        key = self._best(height)
        if key not in self._drawn:
            self._drawn[key] = _sheet(self._made[key[0]], self._mark, fits=key[1])
        return self._drawn[key]

    def _best(self, height: Mm) -> tuple[int, bool]:
        """The place of the try for this height, and whether it fits."""
        for at, each in enumerate(self._all()):
            if each.block.width <= self._width + _HAIR and each.block.height <= height + _HAIR:
                return at, True
        if not self._made:
            name, wide = self._mark.mark, self._width
            raise ValueError(f"{name} is too long for a room of {wide:.0f} mm at any scale")
        return min(range(len(self._made)), key=self._excess), False

    def _excess(self, at: int) -> tuple[Mm, Mm]:
        block = self._made[at].block
        return max(block.width - self._width, 0.0), block.height

    def _all(self) -> Iterator[_Try]:
        """The tries in their order, the next one made when it is asked for."""
        yield from self._made
        for each in self._tries:
            self._made.append(each)
            yield each


def part_sheet(
    mark: Mark, told: Told, width: Mm, height: Mm, is_third_angle: bool | None = None
) -> PartSheet:
    """The drawing of a mark for one room on paper: see `PartSheets`."""
    return PartSheets(mark, told, width, is_third_angle).of_height(height)


def _tries(mark: Mark, told: Told, width: Mm, third: bool) -> Iterator[_Try]:
    """The drawing at ever smaller scales, its sections first large and then small."""
    blocks = Blocks(replace(mark.part, grain=grain_of(mark)), told, third)
    said = remarks(mark.part, told)
    length, longest = mark.part.size[0], max(mark.part.size)
    for k, scale in enumerate(each for each in scales(told.unit) if length * each <= width):
        if k and longest * scale < SHORTEST:
            return
        views = blocks.views(scale, width)
        for limit in LIMITS:
            for block in arrangements(views, blocks.sections(scale, limit), said, width):
                yield _Try(block, scale)


def _sheet(tried: _Try, mark: Mark, *, fits: bool) -> PartSheet:
    placed = tried.block.with_corner(0.0, 0.0)
    items = placed.items
    drawing = Drawing(
        width=placed.width, height=placed.height, scale=tried.scale, items=items,
        title=f"{mark.mark} {mark.name}",
    )  # fmt: skip
    told = tuple(item.words for item in items if isinstance(item, (Text, Measure)))
    return PartSheet(drawing=drawing, told=told, fits=fits)
